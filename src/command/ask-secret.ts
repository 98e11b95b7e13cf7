const enter = new Set(['\r', '\n', '\u0004']);
const erase = new Set(['\u007f', '\b']);
const interrupt = '\u0003';

/**
 * The bytes of a line that is typed without being shown; where the input is no terminal, its first line. Ctrl-C ends the
 * program as it would anywhere.
 */
export async function askSecret(question: string): Promise<Uint8Array> {
  const { stdin, stderr } = process;
  if (!stdin.isTTY) return firstLine();
  stderr.write(question);
  stdin.setRawMode(true);
  try {
    return Buffer.from(await typed(), 'utf8');
  } finally {
    stdin.setRawMode(false);
    stdin.pause();
    stderr.write('\n');
  }
}

function typed(): Promise<string> {
  const { stdin } = process;
  const letters: string[] = [];
  return new Promise((done) => {
    const take = (text: string): void => {
      for (const letter of text) {
        if (letter === interrupt) {
          stdin.setRawMode(false);
          process.kill(process.pid, 'SIGINT');
        } else if (enter.has(letter)) {
          stdin.off('data', take);
          done(letters.join(''));
          return;
        } else if (erase.has(letter)) letters.pop();
        else if (letter >= ' ') letters.push(letter);
      }
    };
    stdin.setEncoding('utf8');
    stdin.on('data', take);
    stdin.resume();
  });
}

async function firstLine(): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for await (const piece of process.stdin) pieces.push(piece as Uint8Array);
  const bytes = Buffer.concat(pieces);
  const end = bytes.findIndex((byte) => byte === 10 || byte === 13);
  return end < 0 ? bytes : bytes.subarray(0, end);
}
