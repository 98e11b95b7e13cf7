import { cpSync, existsSync, mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { crosswalkToFill } from '../intake/crosswalk-to-fill.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import { makeFolder } from '../store/make-folder.js';
import { exitCodes } from './exit-codes.js';
import { say, sayProblems } from './terminal.js';

const ignored = `# Records of people's craft stay out of version control; the key that hides who they are stays out of this folder.
/exports/
/store/
`;

/** Sets up a folder for a season of one's own and says what to do next; a folder with anything in it is left as it is. */
export async function startCommand(folder: string): Promise<number> {
  const problem = obstacle(folder);
  if (problem !== null) {
    sayProblems([problem]);
    return exitCodes.problems;
  }
  const notebooks = fileURLToPath(new URL('../../notebooks', import.meta.url));
  await makeFolder(join(folder, 'exports'));
  mkdirSync(join(folder, 'notebooks'));
  for (const name of readdirSync(notebooks)
    .filter((file) => file.endsWith('.md'))
    .sort()) {
    cpSync(join(notebooks, name), join(folder, 'notebooks', name));
  }
  writeFileSync(join(folder, 'my-exports.crosswalk.yaml'), crosswalkToFill());
  writeFileSync(join(folder, '.gitignore'), ignored);
  say(`${folder} is set up. What to do next, in it:`);
  say(
    '1. Put your exported files into exports/, and make a key once, outside it: head -c 32 /dev/urandom > ~/season.key',
  );
  say(
    '2. rampbook draft exports --from exports --to drafted.crosswalk.yaml   (then answer what stands under "open"; my-exports.crosswalk.yaml has every field there is, to fill in by hand)',
  );
  say(
    '3. rampbook import drafted.crosswalk.yaml --from exports --store store --key ~/season.key   (then read store/set-aside.csv)',
  );
  say('4. rampbook desk notebooks --store store --open   (set the seasons and targets, make the notebooks yours)');
  say('5. rampbook report notebooks/season.md --store store --to reports');
  return exitCodes.fine;
}

function obstacle(folder: string): Problem | null {
  if (!existsSync(folder)) return null;
  const isFolder = statSync(folder).isDirectory();
  if (isFolder && readdirSync(folder).length === 0) return null;
  return {
    code: isFolder ? 'not-empty' : 'is-a-file',
    severity: 'stops',
    place: wholeFile(folder),
    seen: isFolder ? 'a folder with files in it' : 'a file',
    wanted: 'a new or empty folder',
    remedy: 'Give another name: nothing that is there is written over.',
  };
}
