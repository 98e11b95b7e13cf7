import { checkState, finding } from '../../record/codes.js';
import { matchCodes } from './code-match.js';
import type { ColumnProfile } from './column-profile.js';
import { partNamed } from './part-words.js';
import type { FoldedValueProposal, FoldProposal } from './proposal.js';

/** Fewer columns than this are no checklist. */
const least = 3;
const mostMarks = 80;

interface Candidate {
  readonly profile: ColumnProfile;
  readonly component: string;
  readonly side: string;
  readonly likeness: number;
}

/** The texts that several of the columns share: the marks of one checklist. */
function sharedMarks(candidates: readonly Candidate[]): ReadonlySet<string> {
  const columns = new Map<string, number>();
  for (const { profile } of candidates) {
    for (const [text] of profile.values) columns.set(text, (columns.get(text) ?? 0) + 1);
  }
  return new Set(
    [...columns].filter(([, count]) => count >= 2 && count * 5 >= candidates.length).map(([text]) => text),
  );
}

function proposeValues(columns: readonly Candidate[]): readonly FoldedValueProposal[] {
  const times = new Map<string, number>([['', 0]]);
  for (const { profile } of columns) {
    times.set('', times.get('')! + profile.rows - profile.filled);
    for (const [text, count] of profile.values) times.set(text, (times.get(text) ?? 0) + count);
  }
  // Longer texts are no marks, and may name people.
  const isMark = (text: string) => text.length <= 16 && !/\d{5}/u.test(text);
  const values = [...times].filter(([text]) => isMark(text)).sort(([, a], [, b]) => b - a);
  const filled = values.reduce((sum, [text, count]) => sum + (text === '' ? 0 : count), 0);
  const marks: ColumnProfile = { heading: '', rows: filled, filled, values: values.filter(([text]) => text !== '') };
  const states = matchCodes(marks, checkState);
  const found = matchCodes(marks, finding);
  return values.slice(0, mostMarks).map(([text, count]): FoldedValueProposal => {
    if (text === '') return { text, times: count, state: 'not checked', finding: null };
    const state = states?.codes.get(text) ?? null;
    const what = state === null ? (found?.codes.get(text) ?? null) : null;
    return { text, times: count, state: what === null ? state : 'fouled', finding: what };
  });
}

/** The columns of a wide checklist: many headings that name parts, with marks in common; null where there is none. */
export function proposeFold(profiles: readonly ColumnProfile[]): FoldProposal | null {
  const named = profiles.flatMap((profile): readonly Candidate[] => {
    const part = profile.values.length <= mostMarks ? partNamed(profile.heading) : null;
    return part === null ? [] : [{ profile, ...part }];
  });
  if (named.length < least) return null;
  const marks = sharedMarks(named);
  const taken = new Set<string>();
  const columns = named.filter(({ profile, component, side, likeness }) => {
    // Rare marks may be its own; one in fifty cells or more must be a mark of the others too.
    const usual = profile.values.filter(([, times]) => times * 50 >= profile.filled);
    const isMarked = profile.filled === 0 ? likeness >= 0.75 : usual.every(([text]) => marks.has(text));
    const part = `${component} ${side}`;
    if (!isMarked || taken.has(part)) return false;
    taken.add(part);
    return true;
  });
  if (columns.length < least) return null;
  return {
    columns: columns.map(({ profile, component, side, likeness }) => ({
      column: profile.heading,
      component,
      side,
      sureness: likeness >= 0.95 ? 'sure' : likeness >= 0.75 ? 'likely' : 'unsure',
    })),
    values: proposeValues(columns),
    why: `${columns.length} headings name parts, and their cells share the same marks`,
  };
}
