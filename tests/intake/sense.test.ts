import { expect, test } from 'vitest';
import { isPrefixOnly, prefixOf, regionOfPrefix } from '../../src/intake/registration.js';
import { importSmall, notesOf, valuesOf } from './small-import.js';

const daysCrosswalk = `
crosswalk: days
definition_changes:
  - { table: inspections, field: standing_water, season: 2025, was: running water, is: damp counts too }
files:
  - files: s.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: launch, time_zone: America/Denver }
  - files: d.csv
    table: station_days
    columns:
      at: { field: station }
      day: { field: date, pattern: yyyy-MM-dd }
      open: { field: state, codes: { O: open, X: closed } }
      hours: { field: staff_hours }
  - files: i.csv
    table: inspections
    time_zone: America/Denver
    columns:
      no: { field: inspection }
      at: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      wet: { field: standing_water, codes: { Y: yes, N: no } }
      home: { field: home_region }
    constants: { direction: arriving, extent: full, watercraft_type: rowboat, outcome: cleared }
`;

const importDays = (days: readonly string[], inspections: readonly string[], crosswalk = daysCrosswalk) =>
  importSmall(crosswalk, {
    's.csv': 'at\nA\n',
    'd.csv': `at,day,open,hours\n${days.join('\n')}\n`,
    'i.csv': `no,at,start,wet,home\n${inspections.join('\n')}\n`,
  });

test('an inspection on a day recorded as closed is noted, by the station’s own calendar', async () => {
  const result = await importDays(
    ['A,2025-05-01,X,', 'A,2025-05-02,O,8'],
    // 23:30 in Denver is the next day in Greenwich.
    ['1,A,2025-05-01 23:30,N,', '2,A,2025-05-02 00:10,N,'],
  );
  expect(notesOf(result)).toEqual(['2 start inspected-while-closed']);
  expect(result.records.inspections.rowCount).toBe(2);
});

test('an open day without hours and without an inspection is noted; closed is not zero', async () => {
  const result = await importDays(
    ['A,2025-05-01,O,', 'A,2025-05-02,O,', 'A,2025-05-03,O,8', 'A,2025-05-04,X,'],
    ['1,A,2025-05-02 08:10,N,'],
  );
  expect(notesOf(result)).toEqual([
    '2 open open-without-trace',
    '2 hours hours-not-recorded',
    '3 hours hours-not-recorded',
  ]);
});

const starts = (count: number, minuteOf: (index: number) => number, season = 2025, wet = (_: number) => 'N') =>
  Array.from({ length: count }, (_, index) => {
    const day = String(1 + (index % 28)).padStart(2, '0');
    const minute = String(minuteOf(index)).padStart(2, '0');
    return `${season}-${index},A,${season}-05-${day} 08:${minute},${wet(index)},`;
  });

test('starts that heap at :00 and :30 are noted once for each station and file; a few are not', async () => {
  // Ten of a hundred are three times the one in thirty expected, and no more; eleven are more.
  const heaped = (many: number) => (index: number) => (index < many ? (index % 2) * 30 : 1 + (index % 29));
  expect(notesOf(await importDays([], starts(100, heaped(10))))).toEqual([]);
  const result = await importDays([], starts(100, heaped(11)));
  expect(notesOf(result)).toEqual(['2 start clock-heaping']);
  expect(result.notes[0]).toMatchObject({ seen: '11 of 100' });
  expect(notesOf(await importDays([], starts(99, heaped(99))))).toEqual([]);
});

test('a share that moves threefold between seasons is noted with the change that explains it', async () => {
  const wet = (many: number) => (index: number) => (index < many ? 'Y' : 'N');
  const seasons = (before: number, after: number) => [
    ...starts(100, (index) => 1 + (index % 28), 2024, wet(before)),
    ...starts(100, (index) => 1 + (index % 28), 2025, wet(after)),
  ];
  const still = await importDays([], seasons(10, 29));
  expect(notesOf(still)).toEqual([]);
  const moved = await importDays([], seasons(10, 30));
  expect(notesOf(moved)).toEqual(['102 wet share-jump']);
  expect(moved.notes[0]!.seen).toBe('10 of 100 in 2024, 30 of 100 in 2025');
  expect(moved.notes[0]!.reason).toContain('declared: it was "running water" and is "damp counts too"');
  const unexplained = await importDays([], seasons(30, 10), daysCrosswalk.replace('season: 2025', 'season: 2023'));
  expect(unexplained.notes[0]!.reason).toContain('no change of definition is declared');
  // Under twenty uses tell nothing.
  expect(notesOf(await importDays([], seasons(1, 19)))).toEqual([]);
});

test('a registration prefix where a postal code should stand is noted', async () => {
  const rows = ['CF', 'CA', 'MI', 'MS', 'QW', ''].map((home, index) => `${index},A,2025-05-01 08:1${index},N,${home}`);
  expect(notesOf(await importDays([], rows))).toEqual(['2 home registration-prefix']);
});

// 33 CFR part 173, appendix A, as read at law.cornell.edu: the prefixes named there that differ from the postal code.
test.each([
  ['CF', 'CA'],
  ['CL', 'CO'],
  ['DL', 'DE'],
  ['HA', 'HI'],
  ['KA', 'KS'],
  ['MS', 'MA'],
  ['MC', 'MI'],
  ['MI', 'MS'],
  ['NB', 'NE'],
  ['CM', 'MP'],
  ['WN', 'WA'],
  ['WS', 'WI'],
  ['MT', 'MT'],
  ['GU', 'GU'],
])('the registration prefix %s is that of %s', (prefix, region) => {
  expect(regionOfPrefix(prefix)).toBe(region);
});

test('postal codes that no state uses as a prefix are none', () => {
  for (const postal of ['CA', 'CO', 'DE', 'HI', 'KS', 'MA', 'NE', 'WA', 'WI', 'MP', 'BC']) {
    expect(regionOfPrefix(postal)).toBe(null);
  }
  expect(isPrefixOnly('MI')).toBe(false);
});

test('a prefix is two letters before the digits, however spaced', () => {
  // 33 CFR 174.23: two capital letters, then digits and letters.
  expect(['CF 1234 AB', 'cf-1234-ab', 'CF1234AB', 'CFX 12', '1234', ''].map(prefixOf)).toEqual([
    'CF',
    'CF',
    'CF',
    null,
    null,
    null,
  ]);
});

test('a region is read from the registration’s prefix, and the registration never leaves the export', async () => {
  const crosswalk = daysCrosswalk.replace(
    'home: { field: home_region }',
    'home: { field: home_region, region_from: registration, codes: { QW: QW, ZZ: } }',
  );
  const homes = ['CF 1234 AB', 'MS1234CD', 'QW 77 AA', 'ZZ 1 A', '', 'CA 1234 ZX'];
  const rows = homes.map((home, index) => `${index},A,2025-05-01 08:1${index},N,${home}`);
  const result = await importDays([], rows, crosswalk);
  expect(valuesOf(result, 'inspections', 'home_region')).toEqual(['CA', 'MA', 'QW', null, null]);
  // CA is California's postal code and nobody's prefix: refused, not guessed.
  expect(result.setAside.map(({ line, code, seen }) => `${line} ${code} ${seen}`)).toEqual([
    '7 unknown-prefix withheld',
  ]);
  expect(JSON.stringify([result.setAside, result.setAsideRows, result.notes])).not.toContain('1234');
});
