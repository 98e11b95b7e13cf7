import type { CellReading } from './cell-reading.js';
import { InstantCell } from './date-cell.js';
import type { Draft } from './draft.js';
import { type Fault, fault } from './fault.js';
import { bareCell } from './prepare-cell.js';

/** More than half a day is a slip of the hand, and no wait over midnight; common practice, no source. */
const longest = 12 * 3_600_000;

/**
 * Moves a moment that was put together from a date and a time of day to the next day, where it lies before the moment that
 * it must follow and would come at most half a day after it: forms that write one date let the clock run over midnight.
 */
export function moveToNextDay(reading: CellReading, draft: Draft, row: number): Fault {
  const { nextDayIfBefore } = reading.rule;
  const cell = bareCell(reading.cell);
  if (nextDayIfBefore === undefined || !(cell instanceof InstantCell)) return fault.none;
  const earlier = draft.columns.get(nextDayIfBefore)?.values[row] ?? Number.NaN;
  const { values } = cell.column;
  const written = values[row]!;
  if (!(written < earlier)) return fault.none;
  const found = cell.putNextDay(row);
  if (found !== fault.none) values[row] = Number.NaN;
  else if (values[row]! < earlier || values[row]! - earlier > longest) values[row] = written;
  return found;
}
