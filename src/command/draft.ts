import { statSync } from 'node:fs';
import { rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { aliasFileOf, type DraftedCrosswalk, draftCrosswalk } from '../intake/draft/draft-crosswalk.js';
import type { FileProposal } from '../intake/draft/proposal.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import { unmatchedRows } from '../store/write-ledger.js';
import { exitCodes } from './exit-codes.js';
import { say, sayProblems, sayTable } from './terminal.js';

/** The words of `rampbook draft`. */
export interface DraftWords {
  readonly files: readonly string[];
  readonly to: string;
  readonly from?: string;
}

/** The folder below which all the files lie; a folder that was named itself where there is no other file. */
function sharedFolder(files: readonly string[]): string {
  const isFolder = (file: string) => statSync(file, { throwIfNoEntry: false })?.isDirectory() === true;
  const folders = files.map((file) => (isFolder(file) ? resolve(file) : dirname(resolve(file))).split(sep));
  const [first] = folders;
  const shared = first!.findIndex((name, at) => folders.some((folder) => folder[at] !== name));
  return first!.slice(0, shared < 0 ? undefined : shared).join(sep) || sep;
}

function cannotWrite(to: string, mistake: unknown): Problem | null {
  const code = mistake instanceof Error && 'code' in mistake ? mistake.code : null;
  if (typeof code !== 'string') return null;
  const exists = code === 'EEXIST';
  return {
    code: exists ? 'file-exists' : 'cannot-write',
    severity: 'stops',
    place: wholeFile(to),
    seen: exists ? 'a file' : code,
    wanted: 'a new file',
    remedy: exists ? 'Name another file: a draft never overwrites one.' : 'Look at the path and the rights there.',
  };
}

/** Writes a new file; where that fails, says why and takes away the one written before it. */
async function writeNew(file: string, text: string, before: string | null = null): Promise<Problem | null> {
  try {
    await writeFile(file, text, { flag: 'wx' });
    return null;
  } catch (mistake) {
    if (before !== null) await rm(before);
    const problem = cannotWrite(file, mistake);
    if (problem === null) throw mistake;
    return problem;
  }
}

function sayDraft(to: string, from: string, files: readonly FileProposal[], questions: readonly string[]): void {
  const count = ({ columns, combined, fold }: FileProposal) =>
    columns.length + (fold?.columns.length ?? 0) + new Set(combined.flatMap((one) => one.columns)).size;
  const openOf = ({ questions, columns, combined }: FileProposal) =>
    questions.length + [...columns, ...combined].reduce((sum, one) => sum + one.questions.length, 0);
  sayTable([
    ['files', 'taken for', 'columns', 'open questions'],
    ...files.map((file) => [file.patterns.join(', '), file.table.name, String(count(file)), String(openOf(file))]),
    ...(questions.length === 0 ? [] : [['all of them', '', '', String(questions.length)]]),
  ]);
  say();
  say(`Wrote ${to}. Nothing in it was decided: read every line, and answer what stands under "open".`);
  say('Until then it refuses to import.');
  say(`Paths in it start from ${from}: import it with --from ${from}`);
}

/** Drafts a crosswalk from exported files and writes it to a new file. */
export async function draftCommand({ files, to, from }: DraftWords): Promise<number> {
  const folder = from === undefined ? sharedFolder(files) : resolve(from);
  const paths = files.map((file) => relative(folder, resolve(file)).split(sep).join('/'));
  const name = basename(to).replace(/(?:\.crosswalk)?\.ya?ml$/u, '');
  const drafted: DraftedCrosswalk = await draftCrosswalk(folder, paths, name);
  if ('problems' in drafted) {
    sayProblems(drafted.problems);
    return exitCodes.problems;
  }
  const { text, unmatched } = drafted;
  const aliases = unmatched.length === 0 ? null : join(dirname(to), aliasFileOf(name));
  const problem =
    (aliases === null ? null : await writeNew(aliases, [...unmatchedRows(unmatched)].join(''))) ??
    (await writeNew(to, text, aliases));
  if (problem !== null) {
    sayProblems([problem]);
    return exitCodes.problems;
  }
  sayDraft(to, from ?? (relative('', folder) || '.'), drafted.files, drafted.questions);
  if (aliases !== null) {
    say(
      `Wrote ${aliases}: ${unmatched.length} names of waters in these rows match none. Fill in the column waterbody.`,
    );
  }
  return exitCodes.fine;
}
