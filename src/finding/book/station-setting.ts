import { setting } from '../../record/codes.js';
import { type TextColumn, textAt } from '../../record/column.js';
import type { Records, RecordTable } from '../../record/records.js';
import { textOf } from './columns-of.js';
import { codedColumn, translateCodes } from './derived-fields.js';

/** The settings of stations in showing order. */
export const settings: readonly string[] = setting.codes.map(({ code }) => code);

/** The setting of the station that each row of a table names. */
export function stationSetting(records: Records, table: RecordTable): TextColumn {
  const keys = textOf(records.stations, 'station');
  const recorded = textOf(records.stations, 'setting');
  const codeByStation = new Map<string, number>();
  for (let row = 0; row < records.stations.rowCount; row++) {
    const where = textAt(recorded, row);
    if (where !== null) codeByStation.set(textAt(keys, row) ?? '', settings.indexOf(where) + 1);
  }
  const { codes, dictionary } = textOf(table, 'station');
  const settingOf = dictionary.map((station) => codeByStation.get(station) ?? 0);
  return codedColumn(settings, translateCodes(codes, settingOf));
}
