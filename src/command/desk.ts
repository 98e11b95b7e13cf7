import { spawn } from 'node:child_process';
import { statSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import { notebookPath } from './desk-folder.js';
import { DeskSeason } from './desk-season.js';
import { exitCodes } from './exit-codes.js';
import { startDesk } from './start-desk.js';
import { say, sayProblems } from './terminal.js';

/** The words of `rampbook desk` and `rampbook watch`. */
export interface DeskWords {
  /** The folder of notebooks, or the one notebook to watch. */
  readonly place: string;
  readonly store: string;
  readonly port?: string;
  readonly open?: boolean;
}

/** Serves a folder's notebooks to be worked at in a browser on this machine, until it is stopped. */
export async function deskCommand(words: DeskWords): Promise<number> {
  const found = statSync(words.place, { throwIfNoEntry: false });
  if (found?.isDirectory() !== true) {
    const seen = found === undefined ? 'nothing' : 'a file';
    return stop([
      problem('not-a-folder', words.place, seen, 'a folder of notebooks', 'Name the folder the notebooks are in.'),
    ]);
  }
  return serve(words, words.place, null);
}

/** Shows one notebook's report in a browser on this machine and follows every save, until it is stopped. */
export async function watchCommand(words: DeskWords): Promise<number> {
  const [folder, name] = [dirname(words.place), basename(words.place)];
  if (notebookPath(folder, name) === null) {
    const remedy = 'Name a file in UTF-8 that ends in .md and is no link to another folder.';
    return stop([problem('no-such-file', words.place, 'no such notebook', 'a notebook: a CommonMark file', remedy)]);
  }
  return serve(words, folder, name);
}

async function serve({ store, port, open }: DeskWords, folder: string, only: string | null): Promise<number> {
  const wished = Number(port ?? '0');
  if (!Number.isInteger(wished) || wished < 0 || wished > 65_535) {
    return stop([
      problem('bad-port', '--port', port ?? '', 'a whole number from 0 to 65535', 'Leave it out for any free one.'),
    ]);
  }
  const season = await DeskSeason.open(store);
  if ('problems' in season) return stop(season.problems);
  let server: Awaited<ReturnType<typeof startDesk>>;
  try {
    server = await startDesk(folder, season, wished, only);
  } catch (error) {
    const seen = (error as NodeJS.ErrnoException).code === 'EADDRINUSE' ? 'a port in use' : String(error);
    return stop([problem('no-port', `127.0.0.1:${wished}`, seen, 'a free port', 'Give another --port, or none.')]);
  }
  const address = only === null ? server.address : `${server.address}${encodeURIComponent(only)}/report`;
  say(only === null ? `The desk of ${folder} is open at` : `The report of ${only} is open at`);
  say(`  ${address}`);
  say('for this machine only, as long as this runs. Keep the address to yourself; stop with Ctrl + C.');
  if (open === true) openInBrowser(address);
  await new Promise<void>((resolve) => {
    process.once('SIGINT', resolve);
    process.once('SIGTERM', resolve);
  });
  await server.close();
  return exitCodes.fine;
}

function openInBrowser(address: string): void {
  const [command, ...before] =
    process.platform === 'darwin' ? ['open'] : process.platform === 'win32' ? ['explorer.exe'] : ['xdg-open'];
  spawn(command!, [...before, address], { stdio: 'ignore', detached: true })
    .on('error', () => say('No browser could be opened: open the address yourself.'))
    .unref();
}

function problem(code: string, place: string, seen: string, wanted: string, remedy: string): Problem {
  return { code, severity: 'stops', place: wholeFile(place), seen, wanted, remedy };
}

function stop(problems: readonly Problem[]): number {
  sayProblems(problems);
  return exitCodes.problems;
}
