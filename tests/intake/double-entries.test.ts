import { expect, test } from 'vitest';
import { asideOf, importSmall, notesOf, stationCrosswalk, stationFiles } from './small-import.js';

const twice = [
  '1,L1,2025-05-01 08:00,,M,AB12,C,N',
  '2,L1,2025-05-01 08:00,,M, ab12 ,C,N',
  '3,L1,2025-05-01 08:01,,M,AB12,C,N',
  '4,L1,2025-05-01 08:00,,M,AB12,C,N',
];
const keeping = (keep: string) =>
  stationCrosswalk.replace(
    'duplicates: [station, craft, started_at]',
    `duplicates: { alike: [station, craft, started_at], keep: ${keep} }`,
  );

test.each([
  ['first', ['3  double-entry', '5  double-entry'], []],
  ['last', ['2  double-entry', '3  double-entry'], []],
  ['neither', ['2  double-entry', '3  double-entry', '5  double-entry'], []],
  ['both', [], ['3  double-entry', '5  double-entry']],
])('of entries of one event, the crosswalk keeps %s', async (keep, aside, notes) => {
  const result = await importSmall(keeping(keep), stationFiles({ inspections: twice }));
  expect(asideOf(result)).toEqual(aside);
  expect(notesOf(result)).toEqual(notes);
  for (const { read, kept, setAside } of result.sum.files) expect(kept + setAside).toBe(read);
});

test('every pair is listed with both places, whatever became of it', async () => {
  const result = await importSmall(keeping('both'), stationFiles({ inspections: twice }));
  const pair = { file: 'inspections.csv', line: 2, laterFile: 'inspections.csv', keep: 'both' };
  const alike = ['station', 'craft', 'started_at'];
  expect(result.doubleEntries).toEqual([
    { ...pair, laterLine: 3, alike },
    { ...pair, laterLine: 5, alike },
  ]);
  expect(result.notes[0]!.reason).toBe(
    'the same station, craft, started_at as inspections.csv:2 and inspections.csv:5',
  );
});

test.each([
  ['a code', 'standing_water'],
  ['a moment', 'finished_at'],
  ['a text', 'craft'],
  ['a day', 'last_on_water'],
])('rows that both lack %s are not known to be alike', async (_, field) => {
  const rows = ['1,L1,2025-05-01 08:00,,M,,C,', '2,L1,2025-05-01 08:00,,M,,C,'];
  const crosswalk =
    field === 'last_on_water'
      ? stationCrosswalk.replace('{ field: craft, private: hash }', '{ field: last_on_water, pattern: yyyy-MM-dd }')
      : stationCrosswalk;
  const alike = (fields: string) => crosswalk.replace('[station, craft, started_at]', `[${fields}]`);
  const files = stationFiles({ inspections: rows });
  expect((await importSmall(alike('station, started_at'), files)).doubleEntries).toHaveLength(1);
  expect((await importSmall(alike(`station, started_at, ${field}`), files)).doubleEntries).toEqual([]);
});

test('looks of the entry that is left out follow it', async () => {
  const result = await importSmall(
    keeping('last'),
    stationFiles({ inspections: twice.slice(0, 2), checks: ['1,bilge,none,clean,', '2,bilge,none,clean,'] }),
  );
  expect(asideOf(result)).toEqual(['2  double-entry', '2 insp parent-set-aside']);
});
