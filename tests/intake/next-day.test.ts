import { expect, test } from 'vitest';
import { asideOf, importSmall, valuesOf } from './small-import.js';

const crosswalk = `
crosswalk: nights
files:
  - files: s.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: border, time_zone: America/Denver }
  - files: i.csv
    table: inspections
    time_zone: America/Denver
    combine:
      finished_at: { columns: [day, out], pattern: yyyy-MM-dd HH:mm, next_day_if_before: started_at }
      started_at: { columns: [day, in], pattern: yyyy-MM-dd HH:mm }
    columns: { no: { field: inspection } }
    constants: { station: A, direction: roadside, extent: full, watercraft_type: rowboat, outcome: cleared }
`;

const nights = (rows: readonly string[], text = crosswalk) =>
  importSmall(text, { 's.csv': 'at\nA\n', 'i.csv': `no,day,in,out\n${rows.join('\n')}\n` });

const ends = async (rows: readonly string[]) =>
  valuesOf(await nights(rows), 'inspections', 'finished_at').map((moment) => new Date(Number(moment)).toISOString());

test('a clock that ran over midnight is of the next day, where its crosswalk says so', async () => {
  // Denver is six hours behind Greenwich in summer, and seven from 2 November 2025 on (IANA time zone database).
  expect(await ends(['1,2025-06-14,23:50,00:10', '2,2025-06-14,08:00,08:10', '3,2025-06-14,12:05,12:05'])).toEqual([
    '2025-06-15T06:10:00.000Z',
    '2025-06-14T14:10:00.000Z',
    '2025-06-14T18:05:00.000Z',
  ]);
  expect(await ends(['1,2025-11-01,23:50,00:10', '2,2025-11-01,23:50,02:30'])).toEqual([
    '2025-11-02T06:10:00.000Z',
    '2025-11-02T09:30:00.000Z',
  ]);
});

test('a slip of the hand is no night, and a time that was shown twice is still in doubt', async () => {
  const result = await nights(['1,2025-06-14,15:00,14:50', '2,2025-11-01,23:50,01:30']);
  expect(asideOf(result)).toEqual(['2 out wrong-order', '3 out ambiguous-local-time']);
  const plain = await nights(['1,2025-06-14,23:50,00:10'], crosswalk.replace(', next_day_if_before: started_at', ''));
  expect(asideOf(plain)).toEqual(['2 out wrong-order']);
});

test('only a moment that follows another may be told so', async () => {
  const codesOf = async (from: string, to: string) =>
    (await nights([], crosswalk.replace(from, to))).problems.map(({ code }) => code);
  expect(await codesOf('next_day_if_before: started_at', 'next_day_if_before: released_at')).toEqual([
    'crosswalk-wrong-value',
  ]);
  expect(await codesOf('HH:mm }\n    columns', 'HH:mm, next_day_if_before: finished_at }\n    columns')).toEqual([
    'crosswalk-useless-setting',
  ]);
});
