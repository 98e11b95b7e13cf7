import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { type ImportResult, importExports } from '../../src/intake/import-exports.js';
import { type TextColumn, textAt } from '../../src/record/column.js';
import { readPast } from '../../src/store/read-past.js';
import { writeStore } from '../../src/store/write-store.js';
import { testKey } from '../intake/small-import.js';

const folder = mkdtempSync(join(tmpdir(), 'next-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// Every way in which a file's rows hang on another file: references, keys, double entries, the kind of craft that a part
// belongs to, outcomes against parts, sides, a wide checklist, clocks taken from stations, names of waters.
const crosswalk = `
crosswalk: parts
data_as_of: 2025-11-30 18:00
data_time_zone: America/Denver
aliases: aliases.csv
rules: { ambiguous-water: { severity: notes, because: many } }
files:
  - files: stations.csv
    table: stations
    columns: { id: { field: station }, zone: { field: time_zone } }
    constants: { name: Landing, setting: launch }
  - files: days-*.csv
    table: station_days
    columns: { site: { field: station }, day: { field: date, pattern: yyyy-MM-dd }, hours: { field: staff_hours } }
    constants: { state: open }
  - files: forms-*.csv
    table: inspections
    time_zone_of: station
    columns:
      id: { field: inspection }
      site: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      kind: { field: watercraft_type, codes: { P: paddlecraft, M: open motorboat } }
      len: { field: length_ft }
      hull: { field: craft, private: hash }
      result: { field: outcome, codes: { C: cleared, I: intercepted } }
    constants: { direction: arriving, extent: full }
    duplicates: [station, craft, started_at]
  - files: sheets-*.csv
    table: inspections
    time_zone: America/Denver
    columns:
      id: { field: inspection }
      site: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      kind: { field: watercraft_type, codes: { P: paddlecraft, M: open motorboat } }
      hull: { field: craft, private: hash }
      result: { field: outcome, codes: { C: cleared, I: intercepted } }
    constants: { direction: arriving, extent: full }
    duplicates: [station, craft, started_at]
    fold:
      table: checks
      columns: { hp: { component: hull below waterline, side: port }, bi: { component: bilge, side: none } }
      values: { "": { state: not checked }, "0": { state: clean }, X: { state: fouled, finding: mussels } }
  - files: waters.csv
    table: waterbodies
    columns: { id: { field: waterbody }, name: { field: name }, in: { field: region } }
    constants: { status: negative, status_from: 2020-01-01 }
  - files: trips-*.csv
    table: inspections
    time_zone: America/Denver
    columns:
      id: { field: inspection }
      site: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      last: { field: last_waterbody, match: aliases, region_column: last_in }
      next: { field: next_waterbody, match: aliases, region: MT }
    constants: { direction: arriving, extent: full, watercraft_type: rowboat, outcome: cleared }
  - files: checks-*.csv
    table: checks
    columns:
      insp: { field: inspection }
      part: { field: component }
      side: { field: side }
      state: { field: state }
      found: { field: finding }
`;

const readingAbsent = crosswalk.replace(
  'rules: {',
  'rules: { impossible-part: { severity: reads as absent, because: all is ticked },',
);

const headers = {
  stations: 'id,zone',
  days: 'site,day,hours',
  forms: 'id,site,start,kind,len,hull,result',
  sheets: 'id,site,start,kind,hull,result,hp,bi',
  waters: 'id,name,in',
  trips: 'id,site,start,last,last_in,next',
  checks: 'insp,part,side,state,found',
};
type Kind = keyof typeof headers;
const names = [
  ...(['stations', 'days-1', 'days-2', 'forms-1', 'forms-2', 'sheets-1', 'checks-1', 'checks-2'] as const),
  ...(['waters', 'trips-1', 'trips-2'] as const),
];
type Name = (typeof names)[number];
const kindOf = (name: Name) => name.split('-')[0] as Kind;

const some = (...texts: string[]) => fc.constantFrom(...texts);
const id = some('1', '2', '3', '4', '5', '6');
const site = some('A', 'A', 'B', 'Z');
const start = some('2025-05-01 08:00', '2025-05-01 09:00', '2024-07-01 10:00', '2025-02-30 08:00');
const hull = some('AB 1', 'CD 2', '');
const water = some('Long Lake', 'long lake', 'Lost Lake', 'Mud', 'w1', '');
const result = some('C', 'C', 'I', 'Q');
const cells: Readonly<Record<Kind, fc.Arbitrary<string[]>>> = {
  stations: fc.tuple(some('A', 'B'), some('America/Denver', 'America/Los_Angeles', 'Nowhere/Land')),
  days: fc.tuple(site, some('2025-05-01', '2025-05-02', '2025-5-40'), some('8', '', 'ten', '9,5')),
  forms: fc.tuple(id, site, start, some('P', 'M'), some('12', '', 'x'), hull, result),
  sheets: fc.tuple(id, site, start, some('P', 'M'), hull, result, some('', '0', 'X', '?'), some('', '0', 'X')),
  waters: fc.tuple(some('w1', 'w2', 'w3'), some('Long Lake', 'Mud'), some('MT', 'ID')),
  trips: fc.tuple(id, site, start, water, some('MT', 'ID', ''), water),
  checks: fc.tuple(
    id,
    some('bilge', 'hull below waterline', 'wing'),
    some('port', 'none'),
    some('clean', 'fouled'),
    some('mussels', ''),
  ),
};

/** Some rows have lost their first cell, or their last. */
const textOf = (name: Name) =>
  fc
    .array(fc.tuple(cells[kindOf(name)], fc.constantFrom('', '', '', '', 'first', 'last')), { maxLength: 7 })
    .map((rows) => {
      const lines = rows.map(([row, lost]) =>
        row.filter((_, at) => !(lost === 'first' && at === 0) && !(lost === 'last' && at === row.length - 1)).join(','),
      );
      return [headers[kindOf(name)], ...lines, ''].join('\n');
    });
const exports = fc.record(
  Object.fromEntries(names.map((name) => [name, textOf(name)])) as Record<Name, fc.Arbitrary<string>>,
);

const paths = {
  exports: join(folder, 'exports'),
  crosswalk: join(folder, 'parts.yaml'),
  aliases: join(folder, 'aliases.csv'),
};
const aliases = 'name,region,waterbody\nMud,MT,w2\nMud,ID,nowhere\n';
beforeEach(() => {
  rmSync(paths.exports, { recursive: true, force: true });
  mkdirSync(paths.exports);
  writeFileSync(paths.crosswalk, crosswalk);
  writeFileSync(paths.aliases, aliases);
});

const put = (name: Name, text: string) => writeFileSync(join(paths.exports, `${name}.csv`), text);

/** Imports what lies there, following a store or anew, into a store. */
async function importInto(store: string, follows: string | null, key = testKey): Promise<ImportResult> {
  const result = await importExports({
    crosswalks: [paths.crosswalk],
    from: paths.exports,
    key,
    progress: () => {},
    program: 'this',
    past: follows === null ? null : await readPast(follows),
  });
  expect(result.problems).toEqual([]);
  if (result.isNew) expect(await writeStore(store, result)).toEqual([]);
  return result;
}

const contents = (store: string) =>
  Object.fromEntries(readdirSync(store).map((name) => [name, readFileSync(join(store, name)).toString('latin1')]));

const plain: Record<Name, string> = {
  stations: 'id,zone\nA,America/Denver\n',
  'days-1': 'site,day,hours\nA,2025-05-01,8\n',
  'days-2': 'site,day,hours\nA,2025-05-01,9\n',
  'forms-1': 'id,site,start,kind,len,hull,result\n1,A,2025-05-01 08:00,M,12,AB 1,C\n2,A,2025-05-01 9,M,12,AB 1,C\n',
  'forms-2': 'id,site,start,kind,len,hull,result\n3,A,2025-05-01 08:00,M,,AB 1,C\n',
  'sheets-1': 'id,site,start,kind,hull,result,hp,bi\n4,A,2025-05-01 08:00,P,,C,X,\n',
  waters: 'id,name,in\nw1,Long Lake,MT\nw2,Long Lake,ID\n',
  'trips-1':
    'id,site,start,last,last_in,next\n5,A,2025-05-02 08:00,Long Lake,MT,Mud\n6,A,2025-05-02 09:00,Lost Lake,MT,\n',
  'trips-2': 'id,site,start,last,last_in,next\n8,A,2025-05-03 08:00,Lost Lake,MT,Lost Lake\n',
  'checks-1': 'insp,part,side,state,found\n1,bilge,none,clean,\n2,bilge,none,clean,\n7,bilge,none,clean,\n',
  'checks-2': 'insp,part,side,state,found\n3,hull below waterline,port,fouled,mussels\n',
};

test('following an earlier import gives the bytes of a new one, whatever file changed', async () => {
  await fc.assert(
    fc.asyncProperty(
      exports,
      exports,
      fc.subarray([...names], { minLength: 1, maxLength: 3 }),
      fc.boolean(),
      async (before, after, changed, asAbsent) => {
        writeFileSync(paths.crosswalk, asAbsent ? readingAbsent : crosswalk);
        for (const name of ['followed', 'anew']) rmSync(join(folder, name), { recursive: true, force: true });
        for (const name of names) put(name, before[name]);
        await importInto(join(folder, 'followed'), null);
        for (const name of changed) put(name, after[name]);
        await importInto(join(folder, 'followed'), join(folder, 'followed'));
        await importInto(join(folder, 'anew'), null);
        expect(contents(join(folder, 'followed'))).toEqual(contents(join(folder, 'anew')));
      },
    ),
    { numRuns: 12, seed: 20250601 },
  );
});

test('a late file is read alone; what waited for it comes in, and a repeated import changes nothing', async () => {
  const store = join(folder, 'late');
  for (const name of names) if (name !== 'forms-2') put(name, plain[name]);
  const first = await importInto(store, null);
  expect(first.sum.files.find(({ file }) => file === 'checks-2.csv')).toMatchObject({ kept: 0, setAside: 1 });
  put('forms-2', plain['forms-2'].replace('AB 1', 'EF 3'));
  const second = await importInto(store, store);
  expect(second.filesRead).toEqual(['forms-2.csv']);
  expect(second.sum.files.find(({ file }) => file === 'checks-2.csv')).toMatchObject({ kept: 1, setAside: 0 });
  const before = contents(store);
  const third = await importInto(store, store);
  expect([third.isNew, third.filesRead]).toEqual([false, []]);
  expect(third.sum).toEqual(second.sum);
  expect(contents(store)).toEqual(before);
});

test('a new version of a file replaces its rows, and a file taken away takes its rows along', async () => {
  const store = join(folder, 'version');
  for (const name of names) put(name, plain[name]);
  await importInto(store, null);
  put('forms-1', plain['forms-1'].replace('2,A,2025-05-01 9,', '9,A,2025-05-01 09:00,'));
  const result = await importInto(store, store);
  expect(result.filesRead).toContain('forms-1.csv');
  expect(result.records.inspections.columns.get('inspection')).toMatchObject({ dictionary: ['', '1', '9', '4', '5'] });
  unlinkSync(join(paths.exports, 'days-2.csv'));
  const fewer = await importInto(store, store);
  expect(fewer.sum.files.map(({ file }) => file)).not.toContain('days-2.csv');
  expect(fewer.filesRead).toEqual([]);
});

test('a look read as absent follows the kind of craft, though its own file is not read again', async () => {
  const [store, anew] = [join(folder, 'absent'), join(folder, 'absent-anew')];
  writeFileSync(paths.crosswalk, readingAbsent);
  for (const name of names) put(name, plain[name]);
  const stateOf = async (form: string) => {
    put('forms-2', form);
    rmSync(anew, { recursive: true, force: true });
    await importInto(anew, null);
    const { records, sum, filesRead } = await importInto(store, store);
    expect(contents(store)).toEqual(contents(anew));
    const { notes, kept } = sum.files.find(({ file }) => file === 'checks-2.csv')!;
    const { columns, origin } = records.checks;
    const row = origin.fileOf.indexOf(origin.files.indexOf('checks-2.csv'));
    return { state: textAt(columns.get('state') as TextColumn, row), notes, kept, filesRead };
  };
  const motorboat = plain['forms-2'].replace('AB 1', 'EF 3');
  put('forms-2', motorboat);
  put('checks-2', 'insp,part,side,state,found\n3,live well,none,clean,\n');
  await importInto(store, null);
  const paddled = motorboat.replace(',M,', ',P,');
  const asRead = { kept: 1, notes: {}, state: 'clean' };
  const asAbsent = { kept: 1, notes: { 'impossible-part': 1 }, state: 'absent' };
  expect(await stateOf(paddled)).toEqual({ ...asAbsent, filesRead: ['forms-2.csv', 'checks-2.csv'] });
  expect(await stateOf(`${paddled}9,A,2025-05-04 08:00,P,,,C\n`)).toEqual({ ...asAbsent, filesRead: ['forms-2.csv'] });
  expect(await stateOf(motorboat)).toEqual({ ...asRead, filesRead: ['forms-2.csv'] });
});

test('names of waters are matched again when a list of waters or the aliases changed, and only then', async () => {
  const store = join(folder, 'waters');
  for (const name of names) if (name !== 'forms-2') put(name, plain[name]);
  const first = await importInto(store, null);
  expect(first.unmatched.map(({ name, times }) => [name, times])).toEqual([['Lost Lake', 2]]);
  put('forms-2', plain['forms-2']);
  const late = await importInto(store, store);
  expect(late.filesRead).toEqual(['forms-2.csv']);
  expect(late.unmatched).toEqual(first.unmatched);
  put('trips-2', `${plain['trips-2']}9,A,2025-05-03 09:00,Lost Lake,MT,\n`);
  const changed = await importInto(store, store);
  expect(changed.filesRead).toEqual(['trips-2.csv']);
  expect(changed.unmatched.map(({ name, times }) => [name, times])).toEqual([['Lost Lake', 3]]);
  put('waters', `${plain.waters}w3,Lost Lake,MT\n`);
  const listed = await importInto(store, store);
  expect(listed.filesRead).toEqual(['waters.csv', 'trips-1.csv', 'trips-2.csv']);
  expect(listed.unmatched).toEqual([]);
  writeFileSync(paths.aliases, `${aliases}Lost Lake,ID,w2\n`);
  expect((await importInto(store, store)).filesRead).toHaveLength(names.length);
});

test('another crosswalk, program or key has files read again; without private columns the key is no matter', async () => {
  const store = join(folder, 'under');
  for (const name of names) put(name, plain[name]);
  await importInto(store, null);
  const keyed = await importInto(store, store, new Uint8Array(16).fill(8));
  expect([...keyed.filesRead].sort()).toEqual(['forms-1.csv', 'forms-2.csv', 'sheets-1.csv']);
  writeFileSync(paths.crosswalk, `${crosswalk}# with another thought\n`);
  expect((await importInto(store, store, new Uint8Array(16).fill(8))).filesRead).toHaveLength(names.length);
  const past = await readPast(store);
  const other = await importExports({
    crosswalks: [paths.crosswalk],
    from: paths.exports,
    key: new Uint8Array(16).fill(8),
    progress: () => {},
    program: 'another',
    past,
  });
  expect(other.filesRead).toHaveLength(names.length);
});

test('a store that cannot be followed is no hindrance: everything is read again', async () => {
  const store = join(folder, 'hurt');
  for (const name of names) put(name, plain[name]);
  const first = await importInto(store, null);
  writeFileSync(join(store, 'readings.json'), '{');
  const again = await importInto(store, store);
  expect([again.isNew, again.filesRead.length]).toEqual([true, names.length]);
  expect(again.sum).toEqual(first.sum);
});
