import { expect, test } from 'vitest';
import { asideOf, importSmall, notesOf, valuesOf } from './small-import.js';

const crosswalk = `
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
      result: { field: outcome }
    constants: { direction: roadside, extent: full }
    fold:
      table: checks
      columns:
        hull_p: { component: hull below waterline, side: port }
        hull_s: { component: hull below waterline, side: starboard }
        well: { component: live well }
      values:
        "": { state: not checked }
        "0": { state: clean }
        "X": { state: absent }
        "ZM/sight": { state: fouled, finding: mussels, found_by: sight }
        "?": { state: clean, finding: mud }
  - files: more.csv
    table: checks
    columns: { no: { field: inspection }, part: { field: component }, side: { field: side }, state: { field: state } }
`;

const forms = (rows: readonly string[], more: readonly string[] = []) =>
  importSmall(crosswalk, {
    'stations.csv': 'at\nA\n',
    'forms.csv': `no,at,start,kind,result,hull_p,hull_s,well\n${rows.map((row) => `${row}\n`).join('')}`,
    'more.csv': `no,part,side,state\n${more.map((row) => `${row}\n`).join('')}`,
  });

test('each cell of a wide checklist becomes a look of its row, blank and absent told apart', async () => {
  const result = await forms([
    '1,A,2025-05-01 08:00,open motorboat,intercepted,ZM/sight,0,',
    '2,A,2025-05-01 09:00,rowboat,cleared,,0,X',
  ]);
  const column = (field: string) => valuesOf(result, 'checks', field);
  expect(column('inspection')).toEqual(['1', '1', '1', '2', '2', '2']);
  expect(column('component').slice(0, 3)).toEqual(['hull below waterline', 'hull below waterline', 'live well']);
  expect(column('side').slice(0, 3)).toEqual(['port', 'starboard', 'none']);
  expect(column('state')).toEqual(['fouled', 'clean', 'not checked', 'not checked', 'clean', 'absent']);
  expect(column('finding')).toEqual(['mussels', null, null, null, null, null]);
  expect(column('found_by')).toEqual(['sight', null, null, null, null, null]);
  expect(result.sum.files[1]).toMatchObject({ read: 2, kept: 2, setAside: 0, folded: 6 });
  expect([...result.records.checks.origin.lineOf]).toEqual([2, 2, 2, 3, 3, 3]);
  expect(notesOf(result)).toEqual([]);
});

test('one bad mark sets the whole row aside, with all its looks', async () => {
  const result = await forms([
    '1,A,2025-05-01 08:00,open motorboat,cleared,0,zm,0',
    '2,A,2025-05-01 09:00,rowboat,cleared,0,0,0',
    '3,A,2025-05-01 10:00,rowboat,cleared,0,0,X',
    '4,Z,2025-05-01 10:00,rowboat,cleared,0,0,X',
  ]);
  expect(asideOf(result)).toEqual(['2 hull_s unknown-code', '3 well impossible-part', '5 at unknown-reference']);
  expect(valuesOf(result, 'checks', 'inspection')).toEqual(['3', '3', '3']);
  expect(result.sum.files[1]).toMatchObject({ read: 4, kept: 1, setAside: 3, folded: 3 });
});

test('contradictions are noted at the row of the form', async () => {
  const result = await forms([
    '1,A,2025-05-01 08:00,rowboat,intercepted,0,0,X',
    '2,A,2025-05-01 09:00,rowboat,cleared,ZM/sight,0,X',
  ]);
  expect(notesOf(result)).toEqual(['2 result outcome-without-part', '3 result part-without-outcome']);
});

test('a look that the form holds already is a repeated key in another file', async () => {
  const result = await forms(
    ['1,A,2025-05-01 08:00,rowboat,cleared,0,0,X'],
    ['1,hull below waterline,port,clean', '1,hull below waterline,centre,clean'],
  );
  expect(asideOf(result)).toEqual(['2 no duplicate-key']);
  expect(result.records.checks.rowCount).toBe(4);
});

test('a mark that says something was found on a part not fouled is noted', async () => {
  const result = await forms(['1,A,2025-05-01 08:00,rowboat,cleared,?,0,X']);
  expect(notesOf(result)).toEqual(['2 hull_p finding-without-fouling']);
});
