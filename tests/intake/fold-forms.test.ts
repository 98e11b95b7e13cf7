import { describe, expect, test } from 'vitest';
import { asideOf, importSmall, valuesOf } from './small-import.js';

const crosswalk = (fold: string, dialect = '{}') => `
crosswalk: wide
files:
  - files: stations.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: roadside, time_zone: UTC }
  - files: forms-*.csv
    table: inspections
    dialect: ${dialect}
    time_zone: UTC
    columns:
      no: { field: inspection }
      at: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      kind: { field: watercraft_type }
    constants: { direction: roadside, extent: full, outcome: cleared }
    fold:
      table: checks
${fold}
`;
const start = '2025-05-01 08:00';
const looks = (result: Awaited<ReturnType<typeof importSmall>>) => {
  const [of, component, side, state] = ['inspection', 'component', 'side', 'state'].map((name) =>
    valuesOf(result, 'checks', name),
  );
  return of!.map((no, row) => `${no} ${component![row]}, ${side![row]}: ${state![row]}`);
};
const stations = { 'stations.csv': 'at\nA\n' };

describe('columns named by a pattern', () => {
  const byName = `
      names: ["{component} ({side})", "{component}"]
      components: { Hull: hull below waterline, Well: live well, Prop: propeller }
      sides: { P: port, S: starboard }
      values: { "": { state: not checked }, ok: { state: clean }, x: { state: absent } }`;

  test('are those that each file has, though the files differ', async () => {
    const result = await importSmall(crosswalk(byName), {
      ...stations,
      'forms-1.csv': `no,at,start,kind,Hull (P),Hull (S),Well\n1,A,${start},rowboat,ok,,x\n`,
      'forms-2.csv': `no,at,start,kind,Prop\n2,A,${start},open motorboat,ok\n`,
    });
    expect(looks(result)).toEqual([
      '1 hull below waterline, port: clean',
      '1 hull below waterline, starboard: not checked',
      '1 live well, none: absent',
      '2 propeller, none: clean',
    ]);
  });

  test('follow loose headings where those are declared', async () => {
    const result = await importSmall(crosswalk(byName, '{ headers: loose }'), {
      ...stations,
      'forms-1.csv': `No,AT,start,kind,HULL  (p)\n1,A,${start},rowboat,?\n`,
    });
    expect(asideOf(result)).toEqual(['2 HULL  (p) unknown-code']);
  });

  test('that name no part, or one twice, stop the file', async () => {
    const codesOf = async (header: string, fold = byName) =>
      (await importSmall(crosswalk(fold), { ...stations, 'forms-1.csv': `no,at,start,kind${header}\n` })).problems.map(
        ({ code, seen }) => `${code} ${seen}`,
      );
    expect(await codesOf(',Hull (P),Keel')).toEqual(['unknown-column Keel']);
    expect(await codesOf('')).toEqual(['missing-column no column of a part']);
    const twice = byName.replace(
      'Hull: hull below waterline',
      'Hull: hull below waterline, Bottom: hull below waterline',
    );
    expect(await codesOf(',Hull (P),Bottom (P)', twice)).toEqual(['repeated-column Bottom (P)']);
    expect(await codesOf(',Hull (P)', byName.replace(/ *sides:.*\n/, ''))).toEqual([
      'crosswalk-bad-pattern {component} ({side})',
    ]);
  });
});

describe('a column that names the parts found', () => {
  const listed = `
      lists:
        found:
          between: ";"
          parts: { hull-p: { component: hull below waterline, side: port }, prop: propeller, well: live well }
          named: { state: fouled, finding: mussels }
          otherwise: { state: clean }
          none: [None]`;
  const forms = (cells: readonly string[], kind = 'open motorboat') =>
    importSmall(crosswalk(listed), {
      ...stations,
      'forms-1.csv': `no,at,start,kind,found\n${cells.map((cell, row) => `${row + 1},A,${start},${kind},${cell}\n`).join('')}`,
    });

  test('gives a look for each part: named, not named, or not checked where it is blank', async () => {
    const result = await forms(['prop; hull-p', 'None', '']);
    expect(looks(result)).toEqual([
      '1 hull below waterline, port: fouled',
      '1 propeller, none: fouled',
      '1 live well, none: clean',
      '2 hull below waterline, port: clean',
      '2 propeller, none: clean',
      '2 live well, none: clean',
      '3 hull below waterline, port: not checked',
      '3 propeller, none: not checked',
      '3 live well, none: not checked',
    ]);
    expect(result.sum.files[1]).toMatchObject({ read: 3, kept: 3, folded: 9 });
  });

  test('never calls a part clean that the craft cannot carry, and sets a row aside that names one', async () => {
    const result = await forms(['hull-p', 'prop'], 'rowboat');
    expect(looks(result)).toEqual([
      '1 hull below waterline, port: fouled',
      '1 propeller, none: absent',
      '1 live well, none: absent',
    ]);
    expect(asideOf(result)).toEqual(['3 found impossible-part']);
  });

  test('is remarked on once where it names no known part', async () => {
    expect(asideOf(await forms(['prop; keel']))).toEqual(['2 found unknown-code']);
  });
});
