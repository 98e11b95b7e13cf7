import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { crosswalkToFill } from '../intake/crosswalk-to-fill.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import { makeFolder } from '../store/make-folder.js';
import { exitCodes } from './exit-codes.js';
import { ownNotebook } from './own-notebook.js';
import { say, sayProblems } from './terminal.js';

const ignored = `# Records of people's craft stay out of version control; the key that hides who they are stays out of this folder.
/exports/
/store/
`;

/** The season a folder is for: the one given, or the year in the folder's name, or else this year. */
function seasonOf(folder: string, given: string | undefined): number | Problem {
  const text = given ?? /(?<!\d)20\d\d(?!\d)/u.exec(basename(resolve(folder)))?.[0];
  if (text === undefined) return new Date().getFullYear();
  if (/^20\d\d$/u.test(text)) return Number(text);
  return {
    code: 'not-a-year',
    severity: 'stops',
    place: wholeFile('--season'),
    seen: text,
    wanted: 'a year of this century',
    remedy: 'Write it as in --season 2026.',
  };
}

/** Sets up a folder for a season of one's own and says what to do next; a folder with anything in it is left as it is. */
export async function startCommand(folder: string, given?: string): Promise<number> {
  const season = seasonOf(folder, given);
  const problem = typeof season === 'number' ? obstacle(folder) : season;
  if (typeof season !== 'number' || problem !== null) {
    sayProblems(problem === null ? [] : [problem]);
    return exitCodes.problems;
  }
  const notebooks = fileURLToPath(new URL('../../notebooks', import.meta.url));
  await makeFolder(join(folder, 'exports'));
  mkdirSync(join(folder, 'notebooks'));
  for (const name of readdirSync(notebooks)
    .filter((file) => file.endsWith('.md'))
    .sort()) {
    const text = readFileSync(join(notebooks, name), 'utf8');
    writeFileSync(join(folder, 'notebooks', name), ownNotebook(name, text, season));
  }
  writeFileSync(join(folder, 'my-exports.crosswalk.yaml'), crosswalkToFill());
  writeFileSync(join(folder, '.gitignore'), ignored);
  say(`${folder} is set up for the season ${season} (--season says otherwise). What to do next, in it (cd ${folder}):`);
  say(
    '1. Copy your exported files into exports/, and make a key once, outside it: head -c 32 /dev/urandom > ~/season.key',
  );
  say(
    '2. rampbook draft exports --from exports --to drafted.crosswalk.yaml   (then answer what stands under "open"; my-exports.crosswalk.yaml has every field there is, to fill in by hand)',
  );
  say(
    '3. rampbook import drafted.crosswalk.yaml --from exports --store store --key ~/season.key   (then read store/set-aside.csv)',
  );
  say(
    '4. rampbook report notebooks/season.md --store store --to reports   (then the others; what each still asks you for stands at the head of its page)',
  );
  say('5. rampbook desk notebooks --store store --open   (fill in what is asked, and make the notebooks yours)');
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
