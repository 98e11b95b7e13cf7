import { program } from './program.js';

await program(process.argv.slice(2)).then((exitCode) => {
  process.exitCode = exitCode;
});
