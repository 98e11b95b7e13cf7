import { type BookTable, waitEnding } from '../record/book.js';
import type { SurvivalCurve } from '../statistic/survival/curve.js';
import { kaplanMeier } from '../statistic/survival/kaplan-meier.js';

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
  const column = table.column(field);
  if (column.kind !== 'wait') throw new Error(`${field} of ${table.name} is no wait`);
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

/** The share still waiting over time; craft that left unwashed are followed until they left. */
export function waitCurve({ minutes, cause }: WaitTimes): SurvivalCurve {
  return kaplanMeier(
    minutes,
    cause.map((code) => (code === waitCause.done ? 1 : 0)),
  );
}
