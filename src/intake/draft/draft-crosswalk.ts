import { inTable, type Problem, wholeFile } from '../../problem/problem.js';
import { filesBelow } from '../exported-files.js';
import { holdsFiles } from '../source/container.js';
import { membersOf } from '../source/members.js';
import { SourceError } from '../source/text-source.js';
import type { UnmatchedWater } from '../waters/alias.js';
import { fileKinds } from './file-kinds.js';
import { type DraftedFile, knownLists } from './known-list.js';
import { questionsOnLists } from './lists-wanted.js';
import type { FileProposal } from './proposal.js';
import { proposeFile, zoneOf } from './propose-file.js';
import { proposeKeys } from './propose-keys.js';
import { proposeSeasons } from './propose-seasons.js';
import { proposeWaters } from './propose-waters.js';
import { readSample } from './read-sample.js';
import type { Sample } from './sample.js';
import { writeDraft } from './write-draft.js';

/** A crosswalk drafted from exports, or the problems for which there is none. */
export type DraftedCrosswalk =
  | {
      readonly text: string;
      readonly files: readonly FileProposal[];
      /** The names of waters that match none, to be filled in as `aliasFileOf` names the file; empty where all match. */
      readonly unmatched: readonly UnmatchedWater[];
      /** What is asked of the draft as a whole. */
      readonly questions: readonly string[];
    }
  | { readonly problems: readonly Problem[] };

function notFound(file: string, from: string): Problem {
  return {
    code: 'no-such-file',
    severity: 'stops',
    place: wholeFile(file),
    seen: 'no file',
    wanted: `an exported file below ${from}`,
    remedy: 'Look at the path.',
  };
}

const momentAsked =
  'Up to which moment do these exports tell? Craft not yet released then are counted as held, not as quick.';

/** A heading that stands twice, by which no column could be named; null where each stands once. */
function repeated({ file, headerLine, headings }: Sample): Problem | null {
  const at = headings.findIndex((heading, place) => headings.indexOf(heading) < place);
  if (at < 0) return null;
  const remedy = 'Rename one of the two columns in the export.';
  const place = inTable(file, headerLine, at + 1, null);
  return {
    code: 'repeated-column',
    severity: 'stops',
    place,
    seen: headings[at]!,
    wanted: 'each heading once',
    remedy,
  };
}

/** Whether a file is a heading or a sentence alone, as a sheet of notes is. */
function holdsNoTable({ headings, rows }: Sample): boolean {
  return headings.length === 1 && rows.length === 0;
}

const noTable = {
  code: 'empty-file',
  seen: 'one cell',
  wanted: 'a table',
  remedy: 'Leave the file out, or export it again.',
} as const;

/** The files meant by a path: itself, or what lies in the folder, archive or workbook of that name. */
async function meant(from: string, path: string, below: readonly string[]): Promise<readonly string[]> {
  const isMeant = (file: string) => file === path || path === '' || file.startsWith(`${path}/`);
  const files: string[] = [];
  for (const file of below) {
    if (!holdsFiles(file)) files.push(...[file].filter(isMeant));
    else if (isMeant(file)) files.push(...(await membersOf(from, file)));
    else if (path.startsWith(`${file}/`)) files.push(...(await membersOf(from, file)).filter(isMeant));
  }
  return files;
}

/** What cannot be read of a file, where it is not the program that is mistaken. */
function problemOf(mistake: unknown, file: string): Problem {
  if (!(mistake instanceof SourceError)) throw mistake;
  return { ...mistake.fault, severity: 'stops', place: wholeFile(file) };
}

/** The name of the file of aliases beside a drafted crosswalk. */
export function aliasFileOf(name: string): string {
  return `${name}.aliases.csv`;
}

/** Names met in several files, each once, the most frequent first. */
function inOneList(names: readonly UnmatchedWater[]): readonly UnmatchedWater[] {
  const all = new Map<string, UnmatchedWater>();
  for (const one of names) {
    const key = JSON.stringify([one.name, one.region]);
    all.set(key, { ...one, times: one.times + (all.get(key)?.times ?? 0) });
  }
  const sorted = [...all].sort(([a, { times }], [b, { times: others }]) => others - times || (a < b ? -1 : 1));
  return sorted.map(([, one]) => one);
}

/**
 * A crosswalk for exported files, drafted from a bounded part of each. The paths lie below the folder of exports; a folder,
 * archive or workbook stands for all the files in it.
 */
export async function draftCrosswalk(from: string, paths: readonly string[], name: string): Promise<DraftedCrosswalk> {
  const below = (await filesBelow(from)) ?? [];
  const problems: Problem[] = [];
  const files = new Set<string>();
  for (const path of paths) {
    const found = await meant(from, path, below).catch((mistake: unknown) => problemOf(mistake, path));
    if ('code' in found) problems.push(found);
    else if (found.length === 0) problems.push(notFound(path, from));
    else for (const file of found) files.add(file);
  }
  const samples: Sample[] = [];
  const passedOver: string[] = [];
  for (const file of problems.length > 0 ? [] : files) {
    try {
      const sample = await readSample(from, file);
      const twice = repeated(sample);
      if (holdsNoTable(sample)) passedOver.push(file);
      else if (twice !== null) problems.push(twice);
      else if (sample.headings.length > 0) samples.push(sample);
      else {
        const remedy = 'Leave the file out, or export it again.';
        problems.push({ ...notFound(file, from), code: 'empty-file', seen: 'no header', wanted: 'a header', remedy });
      }
    } catch (mistake) {
      problems.push(problemOf(mistake, file));
    }
  }
  if (samples.length === 0) problems.push(...passedOver.map((file) => ({ ...notFound(file, from), ...noTable })));
  if (problems.length > 0) return { problems };
  const kinds = fileKinds(samples);
  const zone = zoneOf(kinds);
  const drafted = kinds.map((kind): DraftedFile => ({ kind, proposal: proposeFile(kind, zone) }));
  const lists = knownLists(drafted);
  const unmatched: UnmatchedWater[] = [];
  const proposals = drafted.map((file) => {
    const keyed = { ...file, proposal: proposeKeys(file, lists) };
    const matched = proposeWaters({ ...keyed, proposal: proposeSeasons(keyed) }, lists);
    unmatched.push(...matched.unmatched);
    return matched.proposal;
  });
  const aliases = inOneList(unmatched);
  const aliasFile = aliases.length === 0 ? null : aliasFileOf(name);
  const hasWashes = proposals.some(({ table }) => table.name === 'decontaminations');
  const questions = [...(hasWashes ? [momentAsked] : []), ...questionsOnLists(drafted, lists)];
  return {
    text: writeDraft(name, proposals, aliasFile, questions, passedOver),
    files: proposals,
    unmatched: aliases,
    questions,
  };
}
