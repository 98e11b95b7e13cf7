import { type BookTable, type WaitColumn, waitEnding } from '../record/book.js';
import type { SurvivalCurve } from '../statistic/survival/curve.js';
import { kaplanMeier } from '../statistic/survival/kaplan-meier.js';
import type { RowRule } from './counted-rows.js';

/** How a followed wait ended, in the numbers that cumulative incidence takes. */
export const waitCause = { open: 0, done: 1, left: 2 } as const;

/** The known waits among some rows. */
export interface WaitTimes {
  readonly minutes: Float64Array;
  readonly cause: Uint8Array;
  /** The station-day of each. */
  readonly cluster: Uint32Array;
  readonly done: number;
  readonly open: number;
  readonly left: number;
  /** Not begun, or a moment not recorded. */
  readonly unknown: number;
}

const causeOf: Readonly<Record<number, number>> = {
  [waitEnding.ended]: waitCause.done,
  [waitEnding.open]: waitCause.open,
  [waitEnding.otherwise]: waitCause.left,
};

/** The waits of a field among some rows, those that are unknown counted apart. */
export function waitTimes(table: BookTable, field: string, rows: Uint32Array): WaitTimes {
  const column = waitColumn(table, field);
  const minutes: number[] = [];
  const causes: number[] = [];
  const clusters: number[] = [];
  const counts: [number, number, number] = [0, 0, 0];
  for (const row of rows) {
    const cause = causeOf[column.ending[row]!];
    if (cause === undefined) continue;
    minutes.push(column.minutes[row]!);
    causes.push(cause);
    clusters.push(table.clusterOf?.[row] ?? row);
    counts[cause as 0 | 1 | 2]++;
  }
  const [open, done, left] = counts;
  return {
    minutes: Float64Array.from(minutes),
    cause: Uint8Array.from(causes),
    cluster: Uint32Array.from(clusters),
    done,
    open,
    left,
    unknown: rows.length - minutes.length,
  };
}

/** Which rows a stage of a wash is known of, how it ended, and which were followed for so long. */
export interface WaitRules {
  readonly followed: RowRule;
  readonly done: RowRule;
  /** Those still open at the cut-off, and those that left: both are followed until then, and censored. */
  readonly open: RowRule;
  readonly left: RowRule;
  readonly unknown: RowRule;
  readonly atRisk: (minutes: number) => RowRule;
}

/** The rows of each kind of ending of a stage. */
export function waitRules(table: BookTable, stage: string): WaitRules {
  const { ending, minutes } = waitColumn(table, stage);
  const ended = (words: string, how: number): RowRule => ({ words, holds: (row) => ending[row] === how });
  const isFollowed = (row: number): boolean => causeOf[ending[row]!] !== undefined;
  return {
    followed: { words: `washes whose ${stage} had begun and is known`, holds: isFollowed },
    done: ended(`washes whose ${stage} was seen to end`, waitEnding.ended),
    open: ended(`washes whose ${stage} still went on at the cut-off, followed until then`, waitEnding.open),
    left: ended('washes whose craft left unwashed, followed until then', waitEnding.otherwise),
    unknown: { words: `washes whose ${stage} has no known length`, holds: (row) => !isFollowed(row) },
    atRisk: (least) => ({
      words: `washes whose ${stage} still went on and was followed just before ${least} minutes`,
      holds: (row) => isFollowed(row) && minutes[row]! >= least,
    }),
  };
}

function waitColumn(table: BookTable, field: string): WaitColumn {
  const column = table.column(field);
  if (column.kind !== 'wait') throw new Error(`${field} of ${table.name} is no wait`);
  return column;
}

/** The share still waiting over time; craft that left unwashed are followed until they left. */
export function waitCurve({ minutes, cause }: WaitTimes): SurvivalCurve {
  return kaplanMeier(
    minutes,
    cause.map((code) => (code === waitCause.done ? 1 : 0)),
  );
}
