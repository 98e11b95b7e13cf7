import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importExports } from '../../src/intake/import-exports.js';
import { asideOf, importSmall, inFolder, notesOf, testKey, valuesOf } from './small-import.js';

const crosswalk = `
crosswalk: days
files:
  - files: s.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: launch, time_zone: America/Denver }
  - files: "open-*.csv"
    table: station_days
    columns:
      at: { field: station }
      day: { field: date, pattern: yyyy-MM-dd }
      open: { field: state, codes: { O: open, X: closed } }
  - files: pay.csv
    table: station_days
    completes: other files
    columns:
      at: { field: station }
      day: { field: date, pattern: yyyy-MM-dd }
      hours: { field: staff_hours }
      dollars: { field: staff_cost }
`;
const files = (pay: readonly string[], more: Readonly<Record<string, string>> = {}) => ({
  's.csv': 'at\nA\n',
  'open-2024.csv': 'at,day,open\nA,2024-05-01,O\nA,2024-05-02,X\n',
  'open-2025.csv': 'at,day,open\nA,2025-05-01,O\n',
  'pay.csv': `at,day,hours,dollars\n${pay.join('\n')}\n`,
  ...more,
});

describe('rows that complete rows of other files', () => {
  test('put their values there, and are left out with a reason, so that the rows add up', async () => {
    const result = await importSmall(crosswalk, files(['A,2025-05-01,8,200', 'A,2024-05-01,12.5,300']));
    expect(result.problems).toEqual([]);
    expect(asideOf(result)).toEqual([]);
    expect(valuesOf(result, 'station_days', 'date')).toHaveLength(3);
    expect(valuesOf(result, 'station_days', 'staff_hours')).toEqual([12.5, null, 8]);
    expect(valuesOf(result, 'station_days', 'staff_cost')).toEqual([300, null, 200]);
    const pay = result.sum.files.find(({ file }) => file === 'pay.csv');
    expect(pay).toMatchObject({ read: 2, kept: 0, setAside: 0, leftOut: 2 });
    expect(pay!.leftOutBecause).toEqual({ 'its values stand in the row of the same station and date': 2 });
  });

  test('are set aside where no row has their key, or another one told the same before', async () => {
    const rows = ['A,2024-05-03,8,200', 'A,2024-05-01,8,200', 'A,2024-05-01,4,100', 'B,2024-05-01,4,100'];
    const result = await importSmall(crosswalk, files(rows));
    expect(asideOf(result)).toEqual(['2 at nothing-to-complete', '4 at told-twice', '5 at unknown-reference']);
    expect(valuesOf(result, 'station_days', 'staff_hours')).toEqual([8, null, null]);
    expect(result.sum.files.find(({ file }) => file === 'pay.csv')).toMatchObject({ read: 4, setAside: 3, leftOut: 1 });
  });

  test('tell nothing that a file tells of its own rows', async () => {
    const own = crosswalk.replace(
      'state, codes: { O: open, X: closed } }',
      'state, codes: { O: open, X: closed } }\n      h: { field: staff_hours }',
    );
    const result = await importSmall(own, {
      ...files(['A,2024-05-01,8,200']),
      'open-2024.csv': 'at,day,open,h\nA,2024-05-01,O,6\n',
      'open-2025.csv': 'at,day,open,h\nA,2025-05-01,O,7\n',
    });
    expect(asideOf(result)).toEqual(['2 at told-twice']);
    expect(valuesOf(result, 'station_days', 'staff_hours')).toEqual([6, 7]);
  });

  test('hold the rows to the rules of what they bring', async () => {
    const result = await importSmall(crosswalk, files(['A,2024-05-01,8,200']));
    // The open day of 2025 has no hours, which only the columns of the ledger could have told.
    expect(notesOf(result)).toEqual(['2  hours-not-recorded']);
  });

  test('of a season that is withdrawn are left out with it, and come back with it', async () => {
    const pay = ['A,2024-05-01,8,200', 'A,2025-05-01,4,100', 'A,2025-05-09,4,100'];
    await inFolder({ ...files(pay), 'days.crosswalk.yaml': crosswalk }, async (folder) => {
      const request = {
        crosswalks: [join(folder, 'days.crosswalk.yaml')],
        from: folder,
        key: testKey,
        progress: () => {},
      };
      const result = await importExports({ ...request, withdraw: [2024] });
      expect(asideOf(result)).toEqual(['4 at nothing-to-complete']);
      expect(valuesOf(result, 'station_days', 'staff_hours')).toEqual([4]);
      expect(result.sum.files.find(({ file }) => file === 'pay.csv')!.leftOutBecause).toEqual({
        'its season, 2024, is withdrawn': 1,
        'its values stand in the row of the same station and date': 1,
      });
    });
  });

  test('are of tables that nothing refers to', async () => {
    const stations = crosswalk.replace('table: stations', 'table: stations\n    completes: other files');
    expect((await importSmall(stations, files([]))).problems.map(({ code }) => code)).toEqual([
      'crosswalk-useless-setting',
    ]);
  });
});
