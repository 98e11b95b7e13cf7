import { expect, test } from 'vitest';
import { asideOf, importSmall, notesOf, stationCrosswalk, stationFiles, valuesOf } from './small-import.js';

const washes = `
  - files: washes.csv
    table: decontaminations
    time_zone: America/Denver
    columns:
      no: { field: wash }
      insp: { field: inspection }
      ordered: { field: ordered_at, pattern: yyyy-MM-dd HH:mm }
`;

const importWashes = (crosswalk: string, rows: readonly string[]) =>
  importSmall(crosswalk, {
    ...stationFiles({ inspections: ['1,L1,2024-06-01 08:00,,M,H1,I,'] }),
    'washes.csv': `no,insp,ordered\n${rows.join('\n')}\n`,
  });

test('a wash ordered long after the inspection that it names, or before it, belongs to another craft', async () => {
  const rows = [
    'W1,1,2024-06-01 08:20',
    'W2,1,2025-06-01 08:20',
    'W3,1,2024-05-01 08:20',
    // Clocks of a station and its wash unit may differ, and a craft may wait for days.
    'W4,1,2024-06-01 07:50',
    'W5,1,2024-06-30 08:00',
  ];
  const result = await importWashes(stationCrosswalk + washes, rows);
  expect(asideOf(result)).toEqual(['3 ordered wash-apart', '4 ordered wash-apart']);
  expect(valuesOf(result, 'decontaminations', 'wash')).toEqual(['W1', 'W4', 'W5']);
  const noted = `${stationCrosswalk}${washes}\nrules: { wash-apart: { severity: notes, because: orders are entered late } }\n`;
  expect(notesOf(await importWashes(noted, rows))).toEqual([
    '2 result outcome-without-part',
    '3 ordered wash-apart',
    '4 ordered wash-apart',
  ]);
});

test('a prefix keeps numbers apart that begin anew, in the rows and in what refers to them', async () => {
  const year = (text: string, to: string) =>
    text
      .replace('inspections.csv', `inspections-${to}.csv`)
      .replace('washes.csv', `washes-${to}.csv`)
      .replace('id: { field: inspection }', `id: { field: inspection, prefix: "${to}-" }`)
      .replace('insp: { field: inspection }', `insp: { field: inspection, prefix: "${to}-" }`);

  const inspections = stationCrosswalk.slice(
    stationCrosswalk.indexOf('  - files: inspections.csv'),
    stationCrosswalk.indexOf('  - files: checks.csv'),
  );
  const head = stationCrosswalk.slice(0, stationCrosswalk.indexOf('  - files: inspections.csv'));
  const both = inspections + washes;
  const header = 'id,site,start,end,kind,hull,result,wet\n';
  const result = await importSmall(head + year(both, '2024') + year(both, '2025'), {
    'stations.csv': 'id\nL1\n',
    'inspections-2024.csv': `${header}1,L1,2024-06-01 08:00,,M,H1,I,\n`,
    'inspections-2025.csv': `${header}1,L1,2025-06-01 08:00,,M,H2,I,\n,L1,2025-06-02 08:00,,M,H2,I,\n`,
    'washes-2024.csv': 'no,insp,ordered\nW1,1,2024-06-01 08:20\n',
    'washes-2025.csv': 'no,insp,ordered\nW2,1,2025-06-01 08:20\n',
  });
  expect(valuesOf(result, 'inspections', 'inspection')).toEqual(['2024-1', '2025-1']);
  expect(valuesOf(result, 'decontaminations', 'inspection')).toEqual(['2024-1', '2025-1']);
  // A blank cell has no number, with a prefix or without.
  expect(asideOf(result)).toEqual(['3 id missing-value']);
});

test('a prefix goes with names and numbers of forms only', async () => {
  const codesOf = async (settings: string, column: string) => {
    const crosswalk = stationCrosswalk.replace(column, settings);
    return (await importSmall(crosswalk, stationFiles({}))).problems.map(({ code }) => code);
  };
  const hull = 'hull: { field: craft, private: hash }';
  expect(await codesOf('hull: { field: craft, private: hash, prefix: A }', hull)).toEqual([
    'crosswalk-useless-setting',
  ]);
  const start = 'start: { field: started_at, pattern: yyyy-MM-dd HH:mm }';
  expect(await codesOf('start: { field: started_at, pattern: yyyy-MM-dd HH:mm, prefix: A }', start)).toEqual([
    'crosswalk-useless-setting',
  ]);
});
