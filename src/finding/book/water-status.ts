import { waterStatus } from '../../record/codes.js';
import { numberAt, type TextColumn, textAt } from '../../record/column.js';
import type { Records } from '../../record/records.js';
import { numbersOf, textOf } from './columns-of.js';
import { codedColumn } from './derived-fields.js';
import type { LocalTimes } from './local-time.js';

/** The statuses of waters in showing order. */
export const waterStatuses = waterStatus.codes.map(({ code }) => code);

interface StatusFrom {
  readonly from: number;
  readonly code: number;
}

/** The dated statuses of each water, earliest first. */
function statusesByWater(records: Records): Map<string, StatusFrom[]> {
  const waters = textOf(records.waterbodies, 'waterbody');
  const statuses = textOf(records.waterbodies, 'status');
  const starts = numbersOf(records.waterbodies, 'status_from');
  const found = new Map<string, StatusFrom[]>();
  for (let row = 0; row < records.waterbodies.rowCount; row++) {
    const water = textAt(waters, row);
    const status = textAt(statuses, row);
    const from = numberAt(starts, row);
    if (water === null || status === null || from === null) continue;
    const list = found.get(water) ?? [];
    list.push({ from, code: waterStatuses.indexOf(status) + 1 });
    found.set(water, list);
  }
  for (const list of found.values()) list.sort((a, b) => a.from - b.from);
  return found;
}

/** The status that each inspection's last water had on its day; missing before the water's first dated status. */
export function lastStatus(records: Records, local: LocalTimes): TextColumn {
  const { codes: waters, dictionary } = textOf(records.inspections, 'last_waterbody');
  const byWater = statusesByWater(records);
  const none: readonly StatusFrom[] = [];
  const statuses = dictionary.map((water) => byWater.get(water) ?? none);
  const codes = new Uint8Array(waters.length);
  for (let row = 0; row < codes.length; row++) {
    if (local.minute[row]! < 0) continue;
    const day = local.day[row]!;
    for (const { from, code } of statuses[waters[row]!]!) if (from <= day) codes[row] = code;
  }
  return codedColumn(waterStatuses, codes);
}
