import { describe, expect, test } from 'vitest';
import { readCrosswalk } from '../../src/intake/read-crosswalk.js';
import { readAliasFile } from '../../src/intake/waters/read-alias-file.js';
import { WaterNames } from '../../src/intake/waters/water-names.js';
import { importSmall, notesOf, valuesOf } from './small-import.js';

const crosswalk = `
crosswalk: waters
aliases: aliases.csv
files:
  - files: w.csv
    table: waterbodies
    columns:
      id: { field: waterbody }
      name: { field: name }
      state: { field: region }
    constants: { status: negative, status_from: 2020-01-01 }
  - files: s.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: launch, time_zone: UTC }
  - files: i.csv
    table: inspections
    time_zone: UTC
    columns:
      no: { field: inspection }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      last: { field: last_waterbody, match: aliases, region_column: last_state }
      next: { field: next_waterbody, match: aliases, region: MT }
    constants: { station: A, direction: arriving, extent: full, watercraft_type: rowboat, outcome: cleared }
`;

const waters = 'id,name,state\nlong-mt,Long Lake,MT\nlong-id,Long Lake,ID\nheron,Heron Lake,MT\n';

const importNames = (
  aliases: string,
  rows: readonly string[],
  text = crosswalk,
  options: Parameters<typeof importSmall>[2] = {},
) =>
  importSmall(
    text,
    {
      'w.csv': waters,
      's.csv': 'at\nA\n',
      'aliases.csv': `name,region,waterbody,times\n${aliases}`,
      'i.csv': `no,start,last,last_state,next\n${rows
        .map((row, index) => `${index},2025-05-01 08:1${index % 10},${row}`)
        .join('\n')}\n`,
    },
    options,
  );

test('a name means its water in its own region, never in another', async () => {
  const result = await importNames('Lg Lk,MT,long-mt,\n', [
    'Long Lake,MT,',
    ' long  lake ,ID,',
    '"LONG, LAKE",MT,Heron Lake',
    'Lg. Lk,MT,',
    'Lg Lk,ID,',
    'heron,,',
    ',,',
    'Long Lake,,',
    'Heron Lake,ID,',
  ]);
  expect(valuesOf(result, 'inspections', 'last_waterbody')).toEqual([
    'long-mt',
    'long-id',
    'long-mt',
    'long-mt',
    'heron',
    null,
  ]);
  expect(valuesOf(result, 'inspections', 'next_waterbody')[2]).toBe('heron');
  expect(result.setAside.map(({ line, column, code, reason }) => [line, column, code, reason])).toEqual([
    [6, 'last', 'unmatched-water', 'known in MT, and not in ID'],
    [9, 'last', 'ambiguous-water', 'known in ID, MT, and the cell tells no region'],
    [10, 'last', 'unmatched-water', 'known in MT, and not in ID'],
  ]);
  for (const { read, kept, setAside } of result.sum.files) expect(kept + setAside).toBe(read);
});

test('names that matched none are listed by how often they were met, ready to be filled in', async () => {
  const rows = ['Lost Lake,MT,', 'Hron Lake,MT,', 'Lost Lake,MT,', 'Lost Lake,ID,', 'Lost Lake,MT,'];
  const result = await importNames('', rows);
  expect(result.unmatched).toEqual([
    { name: 'Lost Lake', region: 'MT', times: 3, nearest: 'Long Lake', why: 'no water of that name is known' },
    { name: 'Hron Lake', region: 'MT', times: 1, nearest: 'Heron Lake', why: 'no water of that name is known' },
    { name: 'Lost Lake', region: 'ID', times: 1, nearest: 'Long Lake', why: 'no water of that name is known' },
  ]);
  const filled = await importNames('Lost Lake,MT,heron,3\nHron Lake,MT,heron,1\nLost Lake,ID,,1\n', rows);
  expect(filled.unmatched.map(({ name, region, times }) => [name, region, times])).toEqual([['Lost Lake', 'ID', 1]]);
  expect(valuesOf(filled, 'inspections', 'last_waterbody')).toEqual(['heron', 'heron', 'heron', 'heron']);
});

test('a crosswalk may keep rows whose water is not known, with the water missing', async () => {
  const lenient = crosswalk.replace(
    'files:\n',
    'rules: { unmatched-water: { severity: notes, because: many } }\nfiles:\n',
  );
  const result = await importNames('', ['Lost Lake,MT,'], lenient);
  expect(notesOf(result)).toEqual(['2 last unmatched-water']);
  expect(valuesOf(result, 'inspections', 'last_waterbody')).toEqual([null]);
});

describe('a list of names', () => {
  test('refuses a name that stands for two waters of one region', () => {
    const names = new WaterNames(
      [
        { name: 'Mud Lake', region: 'MT', waterbody: 'mud-1' },
        { name: 'mud lake', region: 'mt', waterbody: 'mud-2' },
      ],
      new Set(),
    );
    expect(names.match('Mud Lake', 'MT')).toEqual({ kind: 'ambiguous', why: 'stands for mud-1 and mud-2' });
  });

  test('uses an alias without a region only for cells that tell none', () => {
    const names = new WaterNames([{ name: 'the big one', region: '', waterbody: 'big' }], new Set());
    expect(names.match('The Big One', '')).toEqual({ kind: 'water', waterbody: 'big' });
    expect(names.match('The Big One', 'MT').kind).toBe('unmatched');
  });
});

test('a file of aliases without its columns, or with a ragged row, stops the import at its line', () => {
  const read = (text: string) => readAliasFile('a.csv', Buffer.from(text)).problems.map(({ place }) => place.line);
  expect(read('water,state\n')).toEqual([1]);
  expect(read('name,region,waterbody\na,MT,b\nc,MT\n')).toEqual([3]);
  expect(read('')).toEqual([1]);
});

test('the file of aliases lies beside the crosswalk, or the import stops', async () => {
  const result = await importNames('', [], crosswalk.replace('aliases.csv', 'nowhere.csv'));
  expect(result.problems.map(({ code, seen }) => `${code} ${seen}`)).toEqual(['no-such-file nowhere.csv']);
});

test('aliases may stand in the crosswalk itself, and match only fields that name waters', () => {
  const mistakes = (text: string) => readCrosswalk('c.yaml', text).problems.map(({ code, seen }) => `${code} ${seen}`);
  const listed = 'aliases:\n  - { name: Long, region: MT, waterbody: long-mt }';
  expect(mistakes(crosswalk.replace('aliases: aliases.csv', listed))).toEqual([]);
  expect(mistakes(crosswalk.replace('field: last_waterbody', 'field: home_region'))).toEqual([
    'crosswalk-useless-setting match',
  ]);
  expect(mistakes(crosswalk.replace('region: MT', 'region: MT, region_column: x'))).toEqual([
    'crosswalk-useless-setting region',
  ]);
});

test('names are matched alike wherever a file is cut into ranges, and the same exports give the same answer', async () => {
  const rows = Array.from(
    { length: 40 },
    (_, index) => `${index % 3 ? 'Long Lake' : 'Lost Lake'},${index % 2 ? 'MT' : 'ID'},`,
  );
  const whole = await importNames('', rows);
  const cut = await importNames('', rows, crosswalk, { range: 100, chunk: 64 });
  expect(valuesOf(cut, 'inspections', 'last_waterbody')).toEqual(valuesOf(whole, 'inspections', 'last_waterbody'));
  expect(cut.unmatched).toEqual(whole.unmatched);
  expect(cut.setAside).toEqual(whole.setAside);
});
