import { expect, test } from 'vitest';
import { importSmall, notesCrosswalk, valuesOf } from './small-import.js';

const crosswalk = notesCrosswalk
  .replace('    columns:', '    missing: { "": blank, N/A: not applicable, unknown: not known }\n    columns:')
  .replace('note: { field: note }', 'note: { field: note, missing: ["", None] }\n      fund: { field: fund }');
const rows = ['a,x,g,1', 'b,,,2', 'c,None,N/A,3', 'd,N/A,unknown,4', 'e,0,unknown,5', 'f,,None,oops'];
const text = `no,note,fund,dollars\n${rows.map((row) => `${row}\n`).join('')}`;

test('what is missing is told apart by what its text means, and what is declared for one column holds there alone', async () => {
  const result = await importSmall(crosswalk, { 'notes.csv': text });
  expect(valuesOf(result, 'spending', 'note')).toEqual(['x', null, null, 'N/A', '0']);
  expect(valuesOf(result, 'spending', 'fund')).toEqual(['g', null, null, null, null]);
  expect(result.sum.files[0]!.missing).toEqual({
    note: { blank: 2, None: 1 },
    fund: { blank: 1, 'not applicable': 1, 'not known': 2 },
  });
});

test('counts come together wherever a file is cut into ranges, rows left out not among them', async () => {
  const leaving = crosswalk.replace(
    '    columns:',
    '    leave_out: [{ last_rows: 1, because: foot }, { first_cell: "e*", because: test }]\n    columns:',
  );
  const whole = await importSmall(leaving, { 'notes.csv': text }, { threads: 1 });
  expect(whole.sum.files[0]).toMatchObject({ read: 6, kept: 4, leftOut: 2 });
  expect(whole.sum.files[0]!.missing).toEqual({
    note: { blank: 1, None: 1 },
    fund: { blank: 1, 'not applicable': 1, 'not known': 1 },
  });
  for (const range of [1, 7, 20]) {
    const cut = await importSmall(leaving, { 'notes.csv': text }, { threads: 1, range });
    expect(cut.sum).toEqual(whole.sum);
    expect(cut.remembered.readings[0]!.leftOut).toEqual(whole.remembered.readings[0]!.leftOut);
  }
});

test('codes count what their map calls missing', async () => {
  const result = await importSmall(
    `
crosswalk: units
files:
  - files: u.csv
    table: decontaminations
    time_zone: UTC
    columns:
      no: { field: wash }
      how: { field: method, codes: { S: hot spray, "?": , "": } }
      at: { field: ordered_at, pattern: yyyy-MM-dd HH:mm }
    constants: { inspection: x }
`,
    { 'u.csv': 'no,how,at\n1,S,2025-05-01 08:00\n2,?,2025-05-01 08:00\n3,,2025-05-01 08:00\n4,?,2025-05-01 08:00\n' },
  );
  expect(result.sum.files[0]!.missing).toEqual({ method: { '?': 2, blank: 1 } });
});
