import { expect, test } from 'vitest';
import { asideOf, importSmall, valuesOf } from './small-import.js';

const crosswalk = `
crosswalk: days
files:
  - files: s.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: launch, time_zone: America/Denver }
  - files: d.csv
    table: station_days
    time_zone: America/Denver
    combine:
      opened_at: { columns: [day, from], pattern: yyyy-MM-dd HH:mm, missing: [closed], partly_blank: missing }
      state: { columns: [from], codes: { closed: closed, "06:00": open, "": not recorded } }
    columns:
      at: { field: station }
      day: { field: date, pattern: yyyy-MM-dd }
`;
const rows = ['A,2025-05-01,06:00', 'A,2025-05-02,closed', 'A,2025-05-03,'];
const read = (text: string) => importSmall(text, { 's.csv': 'at\nA\n', 'd.csv': `at,day,from\n${rows.join('\n')}\n` });

test('a date without its time of day leaves the moment missing where the crosswalk says so, and the row is kept', async () => {
  const result = await read(crosswalk);
  expect(asideOf(result)).toEqual([]);
  // 06:00 in Denver is 12:00 in Greenwich in summer (IANA time zone database).
  expect(valuesOf(result, 'station_days', 'opened_at')).toEqual([Date.UTC(2025, 4, 1, 12), null, null]);
  expect(valuesOf(result, 'station_days', 'state')).toEqual(['open', 'closed', 'not recorded']);
});

test('without that word the row is set aside, and a field that is needed cannot do without', async () => {
  expect(asideOf(await read(crosswalk.replace(', partly_blank: missing', '')))).toEqual([
    '3 from missing-value',
    '4 from missing-value',
  ]);
  const needed = crosswalk
    .replace('opened_at', 'date')
    .replace('      day: { field: date, pattern: yyyy-MM-dd }\n', '      day: { ignore: told above }\n');
  expect((await read(needed)).problems.map(({ code }) => code)).toContain('crosswalk-useless-setting');
});
