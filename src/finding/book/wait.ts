import { type WaitColumn, waitEnding } from '../../record/book.js';
import { type NumberColumn, numberAt } from '../../record/column.js';
import type { RecordTable } from '../../record/records.js';
import { codeOf, numbersOf, textOf } from './columns-of.js';

/** The moments of a wash, in their order. */
const moments = ['ordered_at', 'started_at', 'finished_at', 'released_at'] as const;
/** The field of one moment of a wash. */
export type WashMoment = (typeof moments)[number];

/** Minutes and ending of one wait; `unknown` carries no minutes. */
interface Wait {
  readonly minutes: number;
  readonly ending: number;
}

const unknown: Wait = { minutes: 0, ending: waitEnding.unknown };

function waitOf(from: number, to: number | null, ending: number): Wait {
  return to === null || to < from ? unknown : { minutes: (to - from) / 60_000, ending };
}

/**
 * From one moment of a wash to a later one. It ended where both are recorded; otherwise, where the craft left unwashed,
 * at its leaving (at the cut-off where that was not recorded); it is open where nothing later is recorded, with the
 * minutes up to the cut-off; and unknown where its beginning was not recorded, where its end was passed but not
 * recorded, or where the order of times is impossible.
 */
export function washWait(table: RecordTable, from: WashMoment, to: WashMoment, asOf: number | null): WaitColumn {
  const starts = numbersOf(table, from);
  const ends = numbersOf(table, to);
  const released = numbersOf(table, 'released_at');
  const later = moments.slice(moments.indexOf(to) + 1).map((name): NumberColumn => numbersOf(table, name));
  const ending = textOf(table, 'ending');
  const left = codeOf(ending, 'left unwashed');
  const letGo = codeOf(ending, 'released');

  const at = (row: number): Wait => {
    const start = numberAt(starts, row);
    if (start === null) return unknown;
    const end = numberAt(ends, row);
    const leaving = ending.codes[row] === left;
    // A craft that left unwashed was released, too: its leaving is no wash finished.
    if (end !== null && !(leaving && to === 'released_at')) return waitOf(start, end, waitEnding.ended);
    if (leaving) return waitOf(start, numberAt(released, row) ?? asOf, waitEnding.otherwise);
    const passed = ending.codes[row] === letGo || later.some((column) => numberAt(column, row) !== null);
    return passed ? unknown : waitOf(start, asOf, waitEnding.open);
  };

  const minutes = new Float64Array(table.rowCount);
  const endings = new Uint8Array(table.rowCount);
  for (let row = 0; row < table.rowCount; row++) {
    const wait = at(row);
    minutes[row] = wait.minutes;
    endings[row] = wait.ending;
  }
  return { kind: 'wait', minutes, ending: endings };
}
