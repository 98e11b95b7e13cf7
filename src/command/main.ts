import { program } from './program.js';

// Whoever reads the answer may stop before its end, as `head` does.
process.stdout.on('error', (mistake: NodeJS.ErrnoException) => {
  if (mistake.code !== 'EPIPE') throw mistake;
  process.exit();
});

await program(process.argv.slice(2)).then((exitCode) => {
  process.exitCode = exitCode;
});
