import type { TextColumn } from '../../record/column.js';
import type { RecordTable } from '../../record/records.js';
import { dateOfDay } from './calendar.js';
import { codeOf, numbersOf, textOf } from './columns-of.js';
import { answer, yesNoColumn } from './derived-fields.js';
import type { LocalTimes } from './local-time.js';

/**
 * Whether an inspection is the first full one of its craft in its season: the earliest start, of equal starts the
 * earlier record. Missing where the craft or the day is not known; paper checks are never the first.
 */
export function firstOfSeason(inspections: RecordTable, local: LocalTimes): TextColumn {
  const craft = textOf(inspections, 'craft');
  const extent = textOf(inspections, 'extent');
  const starts = numbersOf(inspections, 'started_at').values;
  const full = codeOf(extent, 'full');
  const answers = new Uint8Array(inspections.rowCount);
  const firstBySeason = new Map<number, Int32Array>();
  for (let row = 0; row < answers.length; row++) {
    const code = craft.codes[row]!;
    if (code === 0 || local.minute[row]! < 0) continue;
    answers[row] = answer.no;
    if (extent.codes[row] !== full) continue;
    const season = dateOfDay(local.day[row]!).year;
    let first = firstBySeason.get(season);
    if (first === undefined) {
      first = new Int32Array(craft.dictionary.length).fill(-1);
      firstBySeason.set(season, first);
    }
    const held = first[code]!;
    if (held === -1 || starts[row]! < starts[held]!) first[code] = row;
  }
  for (const first of firstBySeason.values()) for (const row of first) if (row !== -1) answers[row] = answer.yes;
  return yesNoColumn(answers);
}
