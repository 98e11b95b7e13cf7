import { describe, expect, test } from 'vitest';
import { readDatePattern } from '../../src/intake/date-pattern.js';
import { readCrosswalk } from '../../src/intake/read-crosswalk.js';

/** The mistakes in a crosswalk, as `line:column code seen`. */
const mistakes = (text: string) =>
  readCrosswalk('c.yaml', text).problems.map(({ place, code, seen }) =>
    `${place.line}:${place.column} ${code} ${seen}`.trim(),
  );

const sound = `crosswalk: small
files:
  - files: s.csv
    table: stations
    columns:
      id: { field: station }
      name: { field: name }
      kind: { field: setting, codes: { R: launch } }
      zone: { field: time_zone }
`;

test('a sound crosswalk has no mistakes', () => {
  expect(mistakes(sound)).toEqual([]);
});

test('every mistake is told at its line and column, all at once', () => {
  expect(
    mistakes(`crosswalk: small
abuot: a slip
files:
  - files: s.csv
    table: stations
    dialect: { delimeter: comma, encoding: latin-1 }
    time_zone: America/Dever
    columns:
      id: { feild: station }
      name: { field: nmae }
      kind: { field: setting, codes: { R: lanch } }
      zone: { field: time_zone, pattern: yyyy }
      own: { field: waterbody, private: keep }
  - files: x.csv
    table: statoins
    columns: {}
`),
  ).toEqual([
    '2:1 crosswalk-unknown-setting abuot',
    '9:13 crosswalk-unknown-setting feild',
    '9:7 crosswalk-missing-setting id',
    '10:22 crosswalk-unknown-field nmae',
    '11:43 crosswalk-unknown-code lanch',
    '12:42 crosswalk-useless-setting pattern',
    '13:41 crosswalk-wrong-value keep',
    '5:12 crosswalk-missing-field nothing',
    '5:12 crosswalk-missing-field nothing',
    '7:16 crosswalk-wrong-value America/Dever',
    '6:16 crosswalk-unknown-setting delimeter',
    '6:44 crosswalk-wrong-value latin-1',
    '15:12 crosswalk-unknown-table statoins',
  ]);
});

test('the nearest known name is offered', () => {
  const { problems } = readCrosswalk('c.yaml', sound.replace('field: name', 'field: names'));
  expect(problems[0]!.remedy).toContain('Did you mean "name"?');
});

test('text that is no YAML is told where it breaks off', () => {
  const [first] = mistakes('crosswalk: small\nfiles: [a, b\n');
  expect(first).toMatch(/^\d+:\d+ crosswalk-not-yaml/);
  expect(mistakes('')).toContain('1:1 crosswalk-wrong-shape nothing');
  expect(mistakes('- a\n- b\n')).toContain('1:1 crosswalk-wrong-shape a list');
});

test('a field may have one source only, and a part of a wide checklist one column', () => {
  expect(
    mistakes(sound.replace('name: { field: name }', 'name: { field: name }\n      label: { field: name }')),
  ).toEqual(['8:7 crosswalk-twice label']);
});

test('codes by season need a season, and seasons that do not overlap', () => {
  const seasonal = (codes: string) => sound.replace('{ R: launch }', `{ R: ${codes} }`);
  expect(mistakes(seasonal('{ 2023-2024: launch, 2024-: border }'))).toEqual([
    '8:64 crosswalk-wrong-value 2024-',
    '6:7 crosswalk-missing-setting nothing',
  ]);
  expect(mistakes(seasonal('{ soon: launch }'))[0]).toBe('8:45 crosswalk-wrong-value soon');
});

test('codes by season are refused where they would be passed over: beside region_from', () => {
  const home = (settings: string) => `crosswalk: small
files:
  - files: i.csv
    table: inspections
    columns:
      home: { field: home_region${settings} }
      begun: { field: started_at, pattern: "yyyy-MM-dd HH:mm" }
    season_of: started_at
`;
  const told = (text: string) => mistakes(text).filter((mistake) => mistake.startsWith('6:'));
  const codes = ', codes: { QW: QW, ZZ: { 2024: AA, 2025-: BB } }';
  expect(told(home(`, region_from: registration${codes}`))).toEqual(['6:79 crosswalk-useless-setting ZZ']);
  expect(told(home(codes))).toEqual([]);
  expect(told(home(', region_from: registration, codes: { QW: QW, ZZ: }'))).toEqual([]);
});

test('a name or craft is never read without being hashed', () => {
  const crosswalk = `crosswalk: small
files:
  - files: r.csv
    table: rechecks
    columns:
      i: { field: inspection }
      c: { field: component }
      s: { field: side }
      t: { field: state }
      who: { field: inspector }
`;
  expect(mistakes(crosswalk)).toEqual(['10:7 crosswalk-missing-setting nothing']);
});

test('times need a pattern and a zone', () => {
  const crosswalk = (pattern: string) => `crosswalk: small
files:
  - files: d.csv
    table: station_days
    columns:
      at: { field: station }
      day: { field: date, pattern: yyyy-MM-dd }
      from: { field: opened_at${pattern} }
    constants: { state: open }
`;
  expect(mistakes(crosswalk(''))).toEqual(['8:7 crosswalk-missing-setting nothing']);
  expect(mistakes(crosswalk(', pattern: yyyy-MM-dd HH:mm'))).toEqual(['4:12 crosswalk-missing-setting nothing']);
  expect(mistakes(crosswalk(', pattern: "yyyy-MM-dd HH:mmXXX"'))).toEqual([]);
});

test('a zone is taken from the station only where every row has one', () => {
  const crosswalk = `crosswalk: small
files:
  - files: w.csv
    table: decontaminations
    time_zone_of: station
    columns:
      no: { field: wash }
      i: { field: inspection }
      at: { field: ordered_at, pattern: yyyy-MM-dd HH:mm }
`;
  expect(mistakes(crosswalk)).toEqual(['5:19 crosswalk-wrong-value station']);
  const ofBoth = sound.replace(
    '    table: stations',
    '    table: stations\n    time_zone: UTC\n    time_zone_of: station',
  );
  expect(mistakes(ofBoth)).toContain('5:16 crosswalk-useless-setting time_zone');
});

test('constants are held to their field', () => {
  const withConstants = (constants: string) => `${sound}    constants: ${constants}\n`;
  expect(mistakes(withConstants('{ lanes: 2, season_opens: 05-01 }'))).toEqual([]);
  expect(mistakes(withConstants('{ lanes: 0.5, gates: 2 }'))).toEqual([
    '10:25 crosswalk-wrong-value 0.5',
    '10:30 crosswalk-unknown-field gates',
  ]);
  expect(mistakes(withConstants('{ season_opens: in May }'))).toEqual(['10:32 crosswalk-wrong-value in May']);
});

test('a field is combined from one column at least', () => {
  const crosswalk = sound.replace('    columns:', '    combine: { lanes: { columns: [] } }\n    columns:');
  expect(mistakes(crosswalk)).toEqual(['5:34 crosswalk-wrong-value nothing']);
});

describe('a date pattern', () => {
  // Letters by Unicode Technical Standard 35, part 4, Date Format Patterns.
  test.each([
    ['yyyy-MM-dd', 'date'],
    ["d 'de' M 'de' yyyy", 'date'],
    ["yyyy-MM-dd'T'HH:mm:ssXXX", 'instant'],
    ['MM/dd/yyyy h:mm a', 'instant'],
  ] as const)('%s is one', (text, kind) => {
    expect(typeof readDatePattern(text, kind)).toBe('object');
  });

  test.each([
    ['yyyy-mm-dd', 'date', 'it has no month'],
    ['dd.MM.yyy', 'date', '"yyy" is none of the letters'],
    ['yyyy-MM-dd', 'instant', 'it has no hour'],
    ['yyyy-MM-dd hh:mm', 'instant', 'a 12-hour clock needs both hh and a'],
    ['yyyy-MM-dd HH:mm a', 'instant', 'a 12-hour clock needs both hh and a'],
    ['yyyy-MM-dd dd', 'date', 'it names the day twice'],
    ["yyyy-MM-dd'T", 'date', 'a quote is not closed'],
  ] as const)('%s is none', (text, kind, why) => {
    expect(readDatePattern(text, kind)).toContain(why);
  });
});
