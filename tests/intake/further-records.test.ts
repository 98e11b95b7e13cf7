import { describe, expect, test } from 'vitest';
import { asideOf, importSmall, valuesOf } from './small-import.js';

const crosswalk = (also: string) => `
crosswalk: forms
files:
  - files: stations.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: roadside, time_zone: UTC }
  - files: forms.csv
    table: inspections
    time_zone: UTC
    missing: ["", "-"]
    columns:
      no: { field: inspection }
      at: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      owner: { private: drop }
    constants: { direction: roadside, extent: full, outcome: cleared, watercraft_type: rowboat }
    leave_out: [{ column: at, is: [TEST], because: practice }]
    also:
${also}
`;
const washes = `
      - table: decontaminations
        where: wash
        columns:
          wash: { field: wash }
          no: { field: inspection }
          ordered: { field: ordered_at, pattern: yyyy-MM-dd HH:mm }
          temp: { field: contact_temp_f, unit: written }`;
const forms = (rows: readonly string[], also = washes) =>
  importSmall(crosswalk(also), {
    'stations.csv': 'at\nA\n',
    'forms.csv': `no,at,start,owner,wash,ordered,temp\n${rows.map((row) => `${row}\n`).join('')}`,
  });
const start = '2025-05-01 08:00';

describe('a row that holds an inspection and its wash', () => {
  test('gives both, and the sum of each table says which rows had none', async () => {
    const result = await forms([
      `1,A,${start},Ann,W1,2025-05-01 08:10,140 °F`,
      `2,A,${start},Bob,,,`,
      `3,A,${start},Cy,-,,`,
      `4,TEST,${start},Di,W4,2025-05-01 08:10,140 °F`,
    ]);
    expect(result.problems).toEqual([]);
    expect(valuesOf(result, 'inspections', 'inspection')).toEqual(['1', '2', '3']);
    expect(valuesOf(result, 'decontaminations', 'inspection')).toEqual(['1']);
    expect(result.sum.files.slice(1)).toMatchObject([
      { file: 'forms.csv', table: 'inspections', read: 4, kept: 3, setAside: 0, leftOut: 1 },
      { file: 'forms.csv', table: 'decontaminations', read: 4, kept: 1, setAside: 0, leftOut: 3 },
    ]);
    expect(result.sum.files[2]!.leftOutBecause).toEqual({ 'no decontaminations in the row': 2, practice: 1 });
  });

  test('keeps private cells out of every ledger, whichever record is at fault', async () => {
    const result = await forms([`1,A,${start},Ann,W1,soon,140 °F`, `2,A,soon,Bob,W2,2025-05-01 08:10,warm`, '3,A,Cy']);
    expect(asideOf(result)).toEqual([
      '3 start not-a-time',
      '4  ragged-row',
      '2 ordered not-a-time',
      '3 no parent-set-aside',
      '3 temp not-a-number',
      '4  ragged-row',
    ]);
    expect(JSON.stringify(result.setAsideRows)).not.toMatch(/Ann|Bob|Cy/);
    expect(valuesOf(result, 'inspections', 'inspection')).toEqual(['1']);
  });

  test('may hold several, each in its own table', async () => {
    const recheck = `
      - table: rechecks
        where: temp
        columns: { no: { field: inspection } }
        constants: { component: waterline, side: port, state: clean }`;
    const result = await forms([`1,A,${start},Ann,W1,2025-05-01 08:10,140 °F`], washes + recheck);
    expect(result.problems).toEqual([]);
    expect(valuesOf(result, 'rechecks', 'component')).toEqual(['waterline']);
  });
});

test('a further record must name a column of the file that says where it is', async () => {
  const codesOf = async (also: string) => (await forms([], also)).problems.map(({ code }) => code);
  expect(await codesOf(washes.replace('where: wash', 'where: wish'))).toEqual(['crosswalk-unknown-column']);
  expect(await codesOf(washes.replace('        where: wash\n', ''))).toEqual(['crosswalk-missing-setting']);
});
