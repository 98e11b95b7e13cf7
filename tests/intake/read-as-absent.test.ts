import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { foulingSites } from '../../src/finding/fouling-sites.js';
import { ask, cells } from '../finding/read-finding.js';
import { asideOf, importSmall, notesOf, stationCrosswalk, stationFiles, valuesOf } from './small-import.js';

const rule = 'rules: { impossible-part: { severity: reads as absent, because: crews tick OK for every part } }';
const withRule = (crosswalk: string) => crosswalk.replace('files:', `${rule}\nfiles:`);

// That rowboats and paddlecraft carry no live well is the catalogue's, common practice without a source.
const wide = withRule(`
crosswalk: wide
files:
  - files: stations.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: roadside, time_zone: UTC }
  - files: forms.csv
    table: inspections
    time_zone: UTC
    columns:
      no: { field: inspection }
      at: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      kind: { field: watercraft_type }
    constants: { direction: roadside, extent: full, outcome: cleared }
    fold:
      table: checks
      columns: { hull: { component: hull below waterline, side: port }, well: { component: live well } }
      values:
        "": { state: not checked }
        OK: { state: clean }
        mud: { state: fouled, finding: mud }
        "?": { state: clean, finding: mud }
`);
const forms = (rows: readonly string[], options: Parameters<typeof importSmall>[2] = {}, crosswalk = wide) =>
  importSmall(
    crosswalk,
    {
      'stations.csv': 'at\nA\n',
      'forms.csv': `no,at,start,kind,hull,well\n${rows.map((row, at) => `${at + 1},A,2025-05-01 08:00,${row}\n`).join('')}`,
    },
    options,
  );

test('a form that ticks OK for a part which the craft lacks is kept; the part is absent, noted and counted', async () => {
  const result = await forms(['rowboat,OK,OK', 'open motorboat,OK,OK', 'rowboat,OK,']);
  expect(asideOf(result)).toEqual([]);
  expect(notesOf(result)).toEqual(['2 well impossible-part']);
  expect(result.notes[0]).toMatchObject({ seen: 'OK', reason: expect.stringContaining('read as absent') });
  expect(valuesOf(result, 'checks', 'state')).toEqual(['clean', 'absent', 'clean', 'clean', 'clean', 'not checked']);
  expect(result.sum.files[1]).toMatchObject({ read: 3, kept: 3, folded: 6, notes: { 'impossible-part': 1 } });
  expect(result.sum.ruleChanges).toEqual([
    {
      crosswalk: 'wide',
      code: 'impossible-part',
      usual: 'sets aside',
      set: 'reads as absent',
      limits: '',
      because: 'crews tick OK for every part',
    },
  ]);
});

test('such a part is in no denominator, where under notes it is among the craft carrying it and looked at', async () => {
  const rows = ['rowboat,OK,OK', 'open motorboat,OK,OK', 'open motorboat,OK,', 'rowboat,OK,OK'];
  const sites = async (severity: string) => {
    const { records, sum } = await forms(rows, {}, wide.replace('severity: reads as absent', `severity: ${severity}`));
    return cells(ask(foulingSites, openBook(records, sum)), 'component', 'carrying', 'looked');
  };
  expect(await sites('reads as absent')).toContainEqual(['live well', 2, 1]);
  expect(await sites('reads as absent')).toContainEqual(['hull below waterline', 4, 4]);
  expect(await sites('notes')).toContainEqual(['live well', 4, 3]);
});

test('a form that found something on such a part is set aside, whatever it calls the part', async () => {
  const result = await forms(['rowboat,OK,mud', 'rowboat,OK,?', 'rowboat,mud,OK']);
  expect(asideOf(result)).toEqual(['2 well impossible-part', '3 well impossible-part']);
  expect(notesOf(result)).toEqual(['4 well impossible-part']);
  expect(valuesOf(result, 'checks', 'state')).toEqual(['fouled', 'absent']);
});

test('forms read in ranges by several threads say the same', async () => {
  const rows = Array.from({ length: 40 }, (_, at) => (at % 3 === 0 ? 'rowboat,OK,OK' : 'open motorboat,OK,mud'));
  const [whole, parts] = [await forms(rows), await forms(rows, { range: 300, threads: 2 })];
  expect(parts.notes).toHaveLength(14);
  expect(parts.notes).toEqual(whole.notes);
  expect(valuesOf(parts, 'checks', 'state')).toEqual(valuesOf(whole, 'checks', 'state'));
});

test('a list whose named parts are clean reads those as absent that the craft lacks', async () => {
  const fold = /fold:[\s\S]*$/u;
  const listed = wide.replace(
    fold,
    `fold:
      table: checks
      lists:
        seen:
          between: ";"
          parts: { hull: { component: hull below waterline, side: port }, well: live well }
          named: { state: clean }
          otherwise: { state: not checked }
`,
  );
  const result = await importSmall(listed, {
    'stations.csv': 'at\nA\n',
    'forms.csv': 'no,at,start,kind,seen\n1,A,2025-05-01 08:00,rowboat,hull;well\n',
  });
  expect(asideOf(result)).toEqual([]);
  expect(notesOf(result)).toEqual(['2 seen impossible-part']);
  expect(valuesOf(result, 'checks', 'state')).toEqual(['clean', 'absent']);
});

test('a table with a row a part keeps such a row as absent where it tells of nothing found', async () => {
  const result = await importSmall(
    withRule(stationCrosswalk),
    stationFiles({
      inspections: ['1,L1,2025-05-01 08:00,,P,,C,N', '2,L1,2025-05-01 09:00,,M,,C,N'],
      checks: [
        '1,live well,none,clean,',
        '1,bait well,none,fouled,mud',
        '1,bilge,none,clean,mud',
        '1,ballast tank,none,not checked,',
        '2,live well,none,clean,',
      ],
    }),
  );
  expect(asideOf(result)).toEqual(['3 part impossible-part', '4 part impossible-part']);
  expect(notesOf(result)).toEqual(['2 part impossible-part']);
  expect(valuesOf(result, 'checks', 'state')).toEqual(['absent', 'not checked', 'clean']);
  expect(result.sum.files[2]).toMatchObject({ read: 5, kept: 3, setAside: 2, notes: { 'impossible-part': 1 } });
});
