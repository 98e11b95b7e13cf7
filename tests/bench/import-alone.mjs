// Reads, checks and links the load, ledger and all, and stores nothing, as the database beside it does. Words: the folder of
// the built program, a crosswalk, and the folder of the load.
import { pathToFileURL } from 'node:url';

const [built, crosswalk, folder] = process.argv.slice(2);
const { importExports } = await import(pathToFileURL(`${built}/intake/import-exports.js`).href);
const result = await importExports({
  crosswalks: [crosswalk],
  from: folder,
  key: new Uint8Array(16).fill(7),
  progress: () => {},
});
if (result.problems.length > 0) throw new Error(JSON.stringify(result.problems));
process.stdout.write(
  `${result.sum.files.map(({ read, kept, setAside }) => [read, kept, setAside].join(' ')).join('\n')}\n`,
);
