import { expect, test } from 'vitest';
import { asideOf, importSmall, notesOf, stationCrosswalk, stationFiles, valuesOf } from './small-import.js';

const at = (rows: Parameters<typeof stationFiles>[0]) => importSmall(stationCrosswalk, stationFiles(rows));
const sound = '1,L1,2025-05-01 08:00,2025-05-01 08:10,M,AB12,C,N';

test('rows read are rows kept and rows set aside, for every file', async () => {
  const result = await at({
    inspections: [sound, '2,L1,2025-05-01 09:00,,M,,C', '3,L9,2025-05-01 10:00,,M,,C,N', '4,L1,soon,,Q,,C,N'],
    checks: ['1,bilge,none,clean,', '2,bilge,none,clean,', '9,bilge,none,clean,', '1,bilge,none,clen,'],
  });
  expect(result.sum.files.map(({ file, read, kept, setAside }) => [file, read, kept, setAside])).toEqual([
    ['stations.csv', 1, 1, 0],
    ['inspections.csv', 4, 1, 3],
    ['checks.csv', 4, 1, 3],
  ]);
  // A row may have several problems, and is set aside once.
  expect(result.setAside.filter(({ file, line }) => file === 'inspections.csv' && line === 5)).toHaveLength(2);
  expect(result.setAsideRows.map(({ file, line }) => `${file}:${line}`)).toEqual([
    'inspections.csv:3',
    'inspections.csv:4',
    'inspections.csv:5',
    'checks.csv:3',
    'checks.csv:4',
    'checks.csv:5',
  ]);
  expect(result.sum.files[1]!.problems).toEqual({
    'not-a-time': 1,
    'ragged-row': 1,
    'unknown-code': 1,
    'unknown-reference': 1,
  });
});

test('a row whose parent was set aside follows it; one that points nowhere is called so', async () => {
  const result = await at({
    inspections: ['1,L1,2025-05-01 08:00', '2,L1,2025-05-01 09:00,,Q,,C,N', '3,L9,2025-05-01 09:00,,M,,C,N'],
    checks: ['1,bilge,none,clean,', '2,bilge,none,clean,', '3,bilge,none,clean,', '4,bilge,none,clean,'],
  });
  expect(
    result.setAside.filter(({ file }) => file === 'checks.csv').map(({ line, code }) => `${line} ${code}`),
  ).toEqual(['2 parent-set-aside', '3 parent-set-aside', '4 parent-set-aside', '5 unknown-reference']);
});

test('a repeated key is set aside where an earlier row was kept, not where that one was set aside too', async () => {
  const result = await at({
    inspections: [
      '1,L1,2025-05-01 08:00,,M,,C,N',
      '1,L1,2025-05-01 09:00,,M,,C,N',
      '2,L1,2025-05-01 09:00,,Q,,C,N',
      '2,L1,2025-05-01 09:00,,M,,C,N',
    ],
  });
  expect(asideOf(result)).toEqual(['3 id duplicate-key', '4 kind unknown-code']);
});

test('a look recorded twice is set aside, whether the two stand together or apart', async () => {
  const result = await at({
    inspections: [sound, '2,L1,2025-05-01 09:00,,M,,C,N'],
    checks: [
      '1,bilge,none,clean,',
      '1,bilge,none,clean,',
      '2,bilge,none,clean,',
      '1,bilge,none,not checked,',
      '1,anchor,none,clean,',
      '2,anchor,none,clean,',
      '2,anchor,none,clean,',
    ],
  });
  expect(asideOf(result)).toEqual(['3 insp duplicate-key', '5 insp duplicate-key', '8 insp duplicate-key']);
});

test('one event under two numbers is a double entry; craft that nobody knows are never alike', async () => {
  const result = await at({
    inspections: [
      '1,L1,2025-05-01 08:00,,M,AB12,C,N',
      '2,L1,2025-05-01 08:00,,M, ab12 ,C,N',
      '3,L1,2025-05-01 08:01,,M,AB12,C,N',
      '4,L1,2025-05-01 08:00,,M,,C,N',
      '5,L1,2025-05-01 08:00,,M,,C,N',
    ],
  });
  expect(asideOf(result)).toEqual(['3  double-entry']);
});

test('an end before its beginning and an inspection over twelve hours are set aside; none at all is not', async () => {
  const result = await at({
    inspections: [
      '1,L1,2025-05-01 08:00,2025-05-01 07:59,M,,C,N',
      '2,L1,2025-05-01 08:00,2025-05-01 20:01,M,,C,N',
      '3,L1,2025-05-01 08:00,2025-05-01 20:00,M,,C,N',
      '4,L1,2025-05-01 08:00,2025-05-01 08:00,M,,C,N',
      '5,L1,2025-05-01 08:00,,M,,C,N',
    ],
  });
  expect(asideOf(result)).toEqual(['2 end wrong-order', '3 end over-long']);
});

test('a look at a part that the craft cannot have is set aside; saying that it is absent is not', async () => {
  const result = await at({
    inspections: ['1,L1,2025-05-01 08:00,,P,,C,N'],
    checks: [
      '1,live well,none,clean,',
      '1,bait well,none,fouled,mud',
      '1,anchor,none,absent,',
      '1,bilge,none,not checked,',
      '1,hull below waterline,centre,clean,',
    ],
  });
  expect(asideOf(result)).toEqual(['2 part impossible-part', '3 part impossible-part']);
});

test('outcome and parts that contradict each other are noted, and kept', async () => {
  const result = await at({
    inspections: [
      '1,L1,2025-05-01 08:00,,M,,I,N',
      '2,L1,2025-05-01 09:00,,M,,C,N',
      '3,L1,2025-05-01 10:00,,M,,I,N',
      '4,L1,2025-05-01 11:00,,M,,C,N',
    ],
    checks: [
      '1,bilge,none,clean,',
      '2,bilge,none,fouled,mussels',
      '3,bilge,none,fouled,mussels',
      '4,bilge,none,fouled,mud',
    ],
  });
  expect(asideOf(result)).toEqual([]);
  expect(notesOf(result)).toEqual(['2 result outcome-without-part', '3 result part-without-outcome']);
  expect(result.sum.files[1]!.notes).toEqual({ 'outcome-without-part': 1, 'part-without-outcome': 1 });
});

test('a part with two sides of which one is recorded is noted', async () => {
  const result = await at({
    inspections: [sound],
    checks: [
      '1,waterline,port,clean,',
      '1,bunks,port,clean,',
      '1,bunks,starboard,not checked,',
      '1,seams and welds,starboard,clean,mud',
    ],
  });
  expect(notesOf(result)).toEqual(['2 side one-side-only', '5 side one-side-only', '5 found finding-without-fouling']);
});

test('notes on a row that is set aside in the end are left out', async () => {
  const result = await at({ inspections: [sound], checks: ['9,bilge,none,clean,mud'] });
  expect(notesOf(result)).toEqual([]);
});

test('a code means what it meant in its season', async () => {
  const result = await at({
    inspections: [
      '1,L1,2024-12-31 23:59,,M,,C,D',
      '2,L1,2025-01-01 00:00,,M,,C,D',
      '3,L1,2022-05-01 08:00,,M,,C,D',
      '4,L1,soon,,M,,C,D',
    ],
  });
  expect(valuesOf(result, 'inspections', 'standing_water')).toEqual(['no', 'yes']);
  expect(asideOf(result)).toEqual(['4 wet unknown-code', '5 start not-a-time']);
  expect(result.setAside[0]!.reason).toContain('only in 2023-2024, 2025-');
});

test('every kept row knows its file and line, and a reference has the number of its key', async () => {
  const result = await at({
    inspections: ['1,L1,soon,,M,,C,N', '2,L1,2025-05-01 08:00,,M,,C,N', '3,L1,2025-05-01 08:00,,M,,C,N'],
    checks: ['3,bilge,none,clean,', '2,bilge,none,clean,', '1,bilge,none,clean,'],
  });
  const { inspections, checks } = result.records;
  expect(inspections.origin.files[inspections.origin.fileOf[0]!]).toBe('inspections.csv');
  expect([...inspections.origin.lineOf]).toEqual([3, 4]);
  expect(valuesOf(result, 'checks', 'inspection')).toEqual(['3', '2']);
  const keys = inspections.columns.get('inspection')!;
  const links = checks.columns.get('inspection')!;
  if (keys.kind !== 'text' || links.kind !== 'text') throw new Error('keys are texts');
  expect([...links.codes]).toEqual([keys.codes[1], keys.codes[0]]);
});

test('every table and every field is there, missing where no export gave it', async () => {
  const result = await at({ inspections: [sound] });
  expect(Object.keys(result.records)).toHaveLength(9);
  expect(result.records.spending.rowCount).toBe(0);
  for (const table of Object.values(result.records)) {
    expect([...table.columns.keys()]).toEqual(table.definition.fields.map(({ name }) => name));
  }
  expect(valuesOf(result, 'inspections', 'risk')).toEqual([null]);
  expect(valuesOf(result, 'inspections', 'length_ft')).toEqual([null]);
});

test('open days without hours are noted; a wash in the wrong order or over 30 days is set aside', async () => {
  const crosswalk = `
crosswalk: days
files:
  - files: s.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: launch, time_zone: UTC }
  - files: d.csv
    table: station_days
    time_zone: UTC
    columns:
      at: { field: station }
      day: { field: date, pattern: yyyy-MM-dd }
      open: { field: state, codes: { O: open, X: closed } }
      hours: { field: staff_hours }
      from: { field: opened_at, pattern: yyyy-MM-dd HH:mm }
      till: { field: closed_at, pattern: yyyy-MM-dd HH:mm }
  - files: i.csv
    table: inspections
    time_zone: UTC
    columns: { no: { field: inspection }, at: { field: station }, start: { field: started_at, pattern: yyyy-MM-dd HH:mm } }
    constants: { direction: arriving, extent: full, watercraft_type: rowboat, outcome: cleared }
  - files: w.csv
    table: decontaminations
    time_zone: UTC
    columns:
      no: { field: wash }
      i: { field: inspection }
      ordered: { field: ordered_at, pattern: yyyy-MM-dd HH }
      began: { field: started_at, pattern: yyyy-MM-dd HH }
      done: { field: finished_at, pattern: yyyy-MM-dd HH }
      gone: { field: released_at, pattern: yyyy-MM-dd HH }
`;
  const result = await importSmall(crosswalk, {
    's.csv': 'at\nA\n',
    'd.csv': `at,day,open,hours,from,till
A,2025-05-01,O,,,
A,2025-05-02,X,,,
A,2025-05-03,O,8,2025-05-03 18:00,2025-05-03 08:00
A,2025-05-01,O,8,,
`,
    'i.csv': 'no,at,start\n1,A,2025-05-01 08:00\n',
    'w.csv': `no,i,ordered,began,done,gone
1,1,2025-05-01 08,2025-05-01 09,2025-05-01 10,2025-05-31 10
2,1,2025-05-01 08,,2025-05-01 07,
3,1,2025-05-01 08,2025-05-01 09,2025-06-05 10,
4,1,2025-05-01 08,2025-05-01 09,,2025-05-01 08
5,1,2025-05-01 08,,,
`,
  });
  expect(notesOf(result)).toEqual(['2 hours hours-not-recorded']);
  expect(asideOf(result)).toEqual([
    '4 till wrong-order',
    '5 at duplicate-key',
    '3 done wrong-order',
    '4 done over-long',
    '5 gone wrong-order',
  ]);
});
