import type { Change } from './changed-copy.js';
import type { Outcome } from './tried-changes.js';

/** How many changes were made, and how many of them the tests noticed. */
export interface Score {
  readonly all: number;
  readonly noticed: number;
  /** A change after which a test does not end is noticed, too. */
  readonly tooLong: number;
  readonly missed: number;
  /** Of those missed, changes that no test comes by. */
  readonly unrun: number;
}

/** Adds up what became of changes. */
export function scoreOf(outcomes: readonly Outcome[]): Score {
  const count = (wanted: Outcome) => outcomes.filter((outcome) => outcome === wanted).length;
  const [noticed, tooLong, unrun] = [count('noticed'), count('too long'), count('unrun')];
  return { all: outcomes.length, noticed, tooLong, missed: count('missed') + unrun, unrun };
}

/** A change as `file:line:column before → after`, on one line; the source is that of its file. */
export function toldChange(file: string, source: string, { location: { start, end }, replacement }: Change): string {
  const lines = source.split('\n').slice(start.line, end.line + 1);
  const last = lines.length - 1;
  lines[last] = lines[last]!.slice(0, end.column);
  lines[0] = lines[0]!.slice(start.column);
  const short = (text: string) => text.replace(/\s+/g, ' ').slice(0, 100);
  return `${file}:${start.line + 1}:${start.column + 1} ${short(lines.join(' '))} → ${short(replacement)}`;
}
