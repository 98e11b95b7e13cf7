import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ImportResult } from '../../src/intake/import-exports.js';
import { importSmall, notesCrosswalk, stationCrosswalk, stationFiles } from './small-import.js';

/** All that an import gives; its ledgers as lists, since the makers of their lines are alike only in what they make. */
async function all(importing: Promise<ImportResult>): Promise<unknown> {
  return { ...(await importing), ledgers: null };
}

// Every kind of row that takes another path through the reader, or moves where a range may begin.
const pieces = [
  'a,x,1\n',
  'b,y,2\r\n',
  'c,z,3\r',
  'd,"q, ""q""",4\n',
  'e,"over\nlines\r\nand\rmore",5\n',
  'f,"a line, like a row\ng,x,6\n",7\n',
  'h,"open,8\n',
  'i,"shut"badly,9\n',
  'j,too,many,10\n',
  'k,few\n',
  '\n',
  '\r\n\r\n',
  '  \n',
  'no,note,dollars\n',
  'l,ü,11\n',
  'm,not,a number\n',
  '"n",x,1\n',
  'a,again,1\n',
];

test('no result depends on where a file is cut into ranges', async () => {
  const rows = fc.array(fc.constantFrom(...pieces), { minLength: 1, maxLength: 24 });
  const cuts = fc.record({ range: fc.integer({ min: 1, max: 60 }), chunk: fc.integer({ min: 1, max: 40 }) });
  await fc.assert(
    fc.asyncProperty(rows, cuts, fc.constantFrom('', '\n', '\r\n', 'z,last,1'), async (some, cut, end) => {
      const files = { 'notes.csv': `\uFEFFno,note,dollars\r\n${some.join('')}${end}` };
      const whole = await all(importSmall(notesCrosswalk, files));
      expect(await all(importSmall(notesCrosswalk, files, cut))).toEqual(whole);
    }),
    { numRuns: 150 },
  );
});

test('keys, links, codes by season, clocks of stations and checklists come together across ranges', async () => {
  const days = Array.from({ length: 40 }, (_, day) => day);
  const wide = stationCrosswalk.replace(
    '    duplicates:',
    '    fold:\n      table: checks\n      columns:\n        prop: { component: propeller, side: none }\n' +
      '      values: { "": { state: not checked }, C: { state: clean }, M: { state: fouled, finding: mussels } }\n    duplicates:',
  );
  const files = {
    ...stationFiles({ checks: days.map((day) => `i${(day * 7) % 45},anchor,none,clean,`) }),
    'inspections.csv': `id,site,start,end,kind,hull,result,wet,prop\n${days
      .map((day) => {
        const date = `2025-0${1 + (day % 9)}-1${day % 10}`;
        const site = day % 13 === 0 ? 'L9' : 'L1';
        return `i${day % 37},${site},${date} 08:00,${date} 08:2${day % 10},${'PMQ'[day % 3]},h${day % 5},${'CI'[day % 2]},${'YND'[day % 3]},${'CM'[day % 2]}\n`;
      })
      .join('')}`,
  };
  for (const crosswalk of [wide, wide.replace('    time_zone: America/Denver\n', '    time_zone_of: station\n')]) {
    const whole = await importSmall(crosswalk, files);
    expect(whole.problems).toEqual([]);
    expect(whole.setAside.length).toBeGreaterThan(10);
    for (const range of [30, 100, 333]) {
      expect(await all(importSmall(crosswalk, files, { range }))).toEqual({ ...whole, ledgers: null });
    }
  }
});

test('no result depends on how many threads read', async () => {
  const rows = Array.from({ length: 300 }, (_, row) => pieces[row % pieces.length]);
  const files = { 'notes.csv': `no,note,dollars\n${rows.join('')}` };
  const whole = await importSmall(notesCrosswalk, files, { threads: 1 });
  expect(whole.setAside.length).toBeGreaterThan(50);
  expect(await all(importSmall(notesCrosswalk, files, { threads: 3, range: 200 }))).toEqual({
    ...whole,
    ledgers: null,
  });
});

test('no result depends on which thread reads which file', async () => {
  const inspections = Array.from({ length: 90 }, (_, at) => {
    const time = `2025-07-${10 + (at % 20)} 0${at % 10}`;
    return `i${at % 80},${at % 9 === 0 ? 'L7' : 'L1'},${time}:00,${time}:30,${'PMX'[at % 3]},h${at % 7},C,${'YND'[at % 3]}`;
  });
  const checks = Array.from(
    { length: 200 },
    (_, at) => `i${(at * 3) % 99},anchor,none,${at % 5 === 0 ? 'odd' : 'clean'},`,
  );
  const files = stationFiles({
    inspections: [...inspections, 'i1,short', 'i88,L1,2025-07-10 05:00,2025-07-10 04:00,P,h1,C,Y'],
    checks: ['i2,"two\nlines",none,clean,', 'i4,propeller,none,clean,mud', ...checks],
  });
  const whole = await importSmall(stationCrosswalk, files, { threads: 1 });
  expect(whole.problems).toEqual([]);
  expect(whole.setAside.length).toBeGreaterThan(50);
  // Rules that a row breaks by itself, in either file.
  expect(whole.setAside.map(({ code }) => code)).toContain('wrong-order');
  expect(whole.notes.map(({ code }) => code)).toContain('finding-without-fouling');
  expect(await all(importSmall(stationCrosswalk, files, { threads: 2 }))).toEqual({ ...whole, ledgers: null });
});
