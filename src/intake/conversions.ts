import type { TableName } from '../record/field.js';

/** Cells of one column with the settings under which they are read. */
export interface ConversionExample {
  readonly about: string;
  readonly table: TableName;
  readonly field: string;
  /** The settings of the column, as a crosswalk writes them after the field. */
  readonly column: string;
  /** Settings of the file that bear on it, as a crosswalk writes them; blank for none. */
  readonly file: string;
  readonly cells: readonly string[];
}

function example(
  about: string,
  [table, field]: readonly [TableName, string],
  column: string,
  cells: readonly string[],
  file = '',
): ConversionExample {
  return { about, table, field, column, file, cells };
}

const length = ['inspections', 'length_ft'] as const;
const temperature = ['decontaminations', 'contact_temp_f'] as const;
const flush = ['decontaminations', 'flush_minutes'] as const;
const cost = ['wash_units', 'capital_cost'] as const;
const amount = ['spending', 'amount'] as const;
const year = ['spending', 'fiscal_year'] as const;
const day = ['wash_units', 'in_service_on'] as const;
const moment = ['inspections', 'started_at'] as const;
const wet = ['inspections', 'standing_water'] as const;
const zone = 'time_zone: America/Denver';

/** What cells become, by example: the table that `rampbook conversions` prints is computed from these by the reader itself. */
export const conversionExamples: readonly ConversionExample[] = [
  example('plain numbers', length, '', ['22', '22.5', '+22', '022', '0', '', '22 ft', '1e2', '300'], ''),
  example('decimal commas', length, '', ['22,5', '22.5'], 'decimal: comma'),
  example('marks between thousands', cost, '', ['41,500.50', '41500.5', '41,50'], 'thousands: comma'),
  example('marks between thousands', cost, '', ['41.500,5', '41 500'], 'decimal: comma, thousands: point'),
  example('a unit of the file', length, 'unit: metres', ['6.7056', '6.7056 m']),
  example('a unit of the file', temperature, 'unit: degrees C', ['60']),
  example('units in the cell', length, 'unit: written', ['22 ft', `22'6"`, '22 ft 6 in', '6.7056 m', '22', '22 years']),
  example('units in the cell', length, 'unit: written or feet', ['22', '264 in']),
  example('units in the cell', temperature, 'unit: written', ['140 °F', '140F', '60 °C', '60 deg C']),
  example('units in the cell', flush, 'unit: written', ['5 min', '300 s', '0.5 h', '1 h 5 min']),
  example('units in the cell', cost, 'unit: written', ['$41,500', '41500 USD'], 'thousands: comma'),
  example('units in the cell', amount, 'unit: written', ['($41,500)', '-$41,500'], 'thousands: comma'),
  example('whole numbers by code', year, 'codes: { FY25: 2025 }', ['FY25', '2025', 'FY26']),
  example('dates in their order', day, 'pattern: MM/dd/yyyy', ['06/14/2025', '6/14/2025', '14/06/2025', '02/29/2025']),
  example('dates in their order', day, 'pattern: d.M.yy', ['14.6.25', '31.6.25']),
  example('months by name', day, 'pattern: d-MMM-yyyy', ['5-Jun-2025', '5-JUN-2025']),
  example('months by name', day, 'pattern: "MMMM d, yyyy"', ['June 5, 2025', 'Jun 5, 2025']),
  example('months by name', day, 'pattern: [d MMMM yyyy, "d\'er\' MMMM yyyy"]', ['5 août 2025', '1er août 2025']),
  example('months by name', day, 'pattern: d MMM yyyy', ['5 févr. 2025', '5 sept 2025']),
  example('days that are counted', day, 'pattern: serial 1900', ['45822', '60', '45822.25']),
  example('days that are counted', day, 'pattern: serial 1904', ['44360']),
  example('24-hour clocks', moment, 'pattern: yyyy-MM-dd HH:mm', ['2025-06-14 06:30', '2025-06-14 24:00'], zone),
  example('clocks without a colon', moment, 'pattern: yyyy-MM-dd Hmm', ['2025-06-14 630', '2025-06-14 1830'], zone),
  example('12-hour clocks', moment, 'pattern: "yyyy-MM-dd h:mm a"', ['2025-06-14 6:30 PM', '2025-06-14 6:30pm'], zone),
  example(
    '12-hour clocks',
    moment,
    'pattern: "yyyy-MM-dd h:mm a"',
    ['2025-06-14 12:05 AM', '2025-06-14 18:30 PM'],
    zone,
  ),
  example(
    'clocks set forward and back',
    moment,
    'pattern: yyyy-MM-dd HH:mm',
    ['2025-03-09 02:30', '2025-11-02 01:30'],
    zone,
  ),
  example(
    'clocks set forward and back',
    moment,
    'pattern: yyyy-MM-dd HH:mm',
    ['2025-11-02 01:30'],
    `${zone}, repeated: second`,
  ),
  example('times with their offset', moment, 'pattern: "yyyy-MM-dd\'T\'HH:mm:ssXXX"', [
    '2025-06-14T06:30:00-06:00',
    '2025-06-14T12:30:00Z',
  ]),
  example(
    'several forms in one column',
    moment,
    'pattern: [sheet date, MM/dd/yyyy HH:mm]',
    ['2025-06-14T06:30:00', '06/14/2025 06:30'],
    zone,
  ),
  example('yes and no', wet, 'spelt: plainly', ['Y', 'Yes', 'TRUE', '1', 'x', 'N', 'false', '0', '', 'maybe']),
  example('yes and no', wet, 'spelt: { yes: [wet, damp], no: [dry] }', ['wet', 'damp', 'dry', 'Dry']),
  example('codes', ['inspections', 'hauled_by'], 'codes: { O: owner, H: commercial, "?": }', ['O', '?', 'o', 'X']),
  example('codes in any case', ['inspections', 'hauled_by'], 'codes: { O: owner }, case: any', ['o', 'O']),
  example('several values in a cell', length, 'several: { between: ";", take: first }', ['22; 24', '22']),
  example('several values in a cell', length, 'several: { between: ";", take: only }', ['22; 24', '22; 22']),
  example('a value within a text', temperature, 'within: "*temp {number} F*"', ['pump 2, temp 140 F', 'pump 2', '']),
  example('a value within a text', temperature, 'within: { text: "*temp {number}*", otherwise: missing }', ['pump 2']),
  example('texts that stand for missing', length, '', ['', 'N/A', '0', 'None'], 'missing: ["", N/A]'),
  example(
    'texts that stand for missing',
    length,
    'missing: { None: nobody asked }',
    ['', 'N/A', 'None'],
    'missing: ["", N/A]',
  ),
];
