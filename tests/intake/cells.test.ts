import { describe, expect, test } from 'vitest';
import { cellsOf } from './one-column.js';
import { asideOf, importSmall, valuesOf } from './small-import.js';

describe('numbers', () => {
  test('are read to the nearest double, as ECMAScript reads the same text', async () => {
    const texts = ['0', '7', '+7', '007', '41500', '9.50', '0.1', '123456.789', '4999999.99999999999999'];
    expect(await cellsOf('{ field: capital_cost }', texts)).toEqual(texts.map(Number));
  });

  test('with a decimal comma take no point', async () => {
    expect(await cellsOf('{ field: running_cost }', ['9,5', '9.5', '1,234,5'], '    decimal: comma')).toEqual([
      9.5,
      'not-a-number',
      'not-a-number',
    ]);
  });

  test('are nothing else', async () => {
    const texts = ['hot', '22 ft', '1O.5', '1e3', '0x10', '.', '5.', '.5', '-', '1,000', '1 000', 'Infinity', '½'];
    expect(new Set(await cellsOf('{ field: capital_cost }', texts))).toEqual(new Set(['not-a-number']));
  });

  test('outside their bounds set the row aside, the bounds themselves do not', async () => {
    expect(await cellsOf('{ field: expected_life }', ['0.5', '60', '0.49', '60.1', '-1'])).toEqual([
      0.5,
      60,
      'out-of-range',
      'out-of-range',
      'out-of-range',
    ]);
  });

  test('declared missing are missing, whatever they look like', async () => {
    expect(await cellsOf('{ field: capital_cost }', ['', 'NA', '-9', ' ', '0'])).toEqual([null, null, null, null, 0]);
  });

  test('in another unit are converted', async () => {
    // 1 year is 12 months.
    expect(await cellsOf('{ field: expected_life, unit: months }', ['18'])).toEqual([1.5]);
  });
});

describe('metres and degrees Celsius', () => {
  test('become feet and degrees Fahrenheit by their definitions', async () => {
    // NIST SP 811, appendix B: 1 ft = 0.3048 m exactly; t(°F) = 1.8 t(°C) + 32 exactly.
    const result = await importSmall(
      `
crosswalk: units
files:
  - files: i.csv
    table: inspections
    time_zone: UTC
    columns:
      no: { field: inspection }
      at: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      len: { field: length_ft, unit: metres }
    constants: { direction: arriving, extent: full, watercraft_type: rowboat, outcome: cleared }
  - files: s.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: launch, time_zone: UTC }
  - files: w.csv
    table: decontaminations
    time_zone: UTC
    columns:
      no: { field: wash }
      i: { field: inspection }
      start: { field: ordered_at, pattern: yyyy-MM-dd HH:mm }
      t: { field: contact_temp_f, unit: degrees C }
`,
      {
        's.csv': 'at\nA\n',
        'i.csv': 'no,at,start,len\n1,A,2025-05-01 08:00,6.096\n',
        'w.csv': 'no,i,start,t\n1,1,2025-05-01 08:00,60\n',
      },
    );
    expect(valuesOf(result, 'inspections', 'length_ft')).toEqual([20]);
    expect(valuesOf(result, 'decontaminations', 'contact_temp_f')).toEqual([140]);
  });
});

describe('dates', () => {
  const days = (text: string) => Date.parse(`${text}T00:00:00Z`) / 86_400_000;

  test('are counted in days from 1970, in whatever order they are written', async () => {
    expect(await cellsOf('{ field: in_service_on, pattern: MM/dd/yyyy }', ['01/01/1970', '02/29/2024'])).toEqual([
      0,
      days('2024-02-29'),
    ]);
    expect(await cellsOf('{ field: in_service_on, pattern: d.M.yy }', ['1.12.25', '31.1.99'])).toEqual([
      days('2025-12-01'),
      days('2099-01-31'),
    ]);
    expect(await cellsOf('{ field: in_service_on, pattern: yyyyMMdd }', ['20250630'])).toEqual([days('2025-06-30')]);
  });

  test('that no calendar has set the row aside', async () => {
    // The Gregorian rule: 2000 and 2024 are leap years, 1900 and 2025 are not.
    const texts = ['2025-02-29', '1900-02-29', '2025-02-30', '2025-06-31', '2025-13-01', '2025-00-10', '2025-01-00'];
    expect(new Set(await cellsOf('{ field: in_service_on, pattern: yyyy-MM-dd }', texts))).toEqual(
      new Set(['not-a-date']),
    );
    expect(await cellsOf('{ field: in_service_on, pattern: yyyy-MM-dd }', ['2000-02-29'])).toEqual([
      days('2000-02-29'),
    ]);
  });

  test('in another form are no dates', async () => {
    const texts = ['2025-6-1', '06/01/2025', '2025-06-01 ', '2025-06-01x', 'soon', '0225-06-01'];
    expect(await cellsOf('{ field: in_service_on, pattern: yyyy-MM-dd }', texts)).toEqual([
      'not-a-date',
      'not-a-date',
      days('2025-06-01'),
      'not-a-date',
      'not-a-date',
      'out-of-range',
    ]);
  });
});

describe('codes', () => {
  test('are those of the map and no others, and the nearest known one is named', async () => {
    const crosswalk = `
crosswalk: codes
files:
  - files: units.csv
    table: wash_units
    columns:
      no: { field: unit }
      cell: { field: kind, codes: { PORT: portable, FIX: fixed } }
`;
    const result = await importSmall(crosswalk, { 'units.csv': 'no,cell\n1,PORT\n2, FIX \n3,POR\n4,portable\n5,\n' });
    expect(valuesOf(result, 'wash_units', 'kind')).toEqual(['portable', 'fixed']);
    expect(asideOf(result)).toEqual(['4 cell unknown-code', '5 cell unknown-code', '6 cell missing-value']);
    expect(result.setAside[0]!.remedy).toContain('Did you mean "PORT"?');
  });

  test('without a map are the canonical ones', async () => {
    const crosswalk = `
crosswalk: codes
files:
  - files: units.csv
    table: wash_units
    columns:
      no: { field: unit }
      cell: { field: kind }
`;
    const result = await importSmall(crosswalk, { 'units.csv': 'no,cell\n1,fixed\n2,FIX\n' });
    expect(valuesOf(result, 'wash_units', 'kind')).toEqual(['fixed']);
    expect(asideOf(result)).toEqual(['3 cell unknown-code']);
  });
});

test('a text that must be written in one way sets the row aside when it is not', async () => {
  const result = await importSmall(
    `
crosswalk: texts
files:
  - files: s.csv
    table: stations
    columns: { id: { field: station }, opens: { field: season_opens }, zone: { field: time_zone }, lanes: { field: lanes } }
    constants: { name: A, setting: launch }
`,
    {
      's.csv':
        'id,opens,zone,lanes\nA,05-01,America/Denver,1\nB,May 1,America/Denver,1\nC,05-01,America/Dever,1\nD,,UTC,1.5\n',
    },
  );
  expect(asideOf(result)).toEqual(['3 opens does-not-match', '4 zone unknown-time-zone', '5 lanes not-a-whole-number']);
});
