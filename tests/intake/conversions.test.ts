import { expect, test } from 'vitest';
import { conversionExamples } from '../../src/intake/conversions.js';
import { convertExample } from '../../src/intake/convert-example.js';
import { sheetExamples } from '../../src/intake/source/sheet-examples.js';

const all = conversionExamples.flatMap((example) =>
  convertExample(example).map(({ cell, becomes }) => ({ ...example, cell, becomes })),
);
const of = (field: string, column: string, cell: string, file = '') =>
  all.find((one) => one.field === field && one.column === column && one.cell === cell && one.file.startsWith(file))
    ?.becomes;

test('the documented conversions are those of definitions, calendars and time zones', () => {
  // NIST SP 811, appendix B: 1 ft = 0.3048 m, so that 6.7056 m are 22 ft; 60 °C are 140 °F.
  expect(of('length_ft', 'unit: written', '6.7056 m')).toBe('22 feet');
  expect(of('contact_temp_f', 'unit: written', '60 °C')).toBe('140 degrees F');
  // Ledgers set what was paid back in brackets: common practice of bookkeeping, no source.
  expect(of('amount', 'unit: written', '($41,500)')).toBe(of('amount', 'unit: written', '-$41,500'));
  expect(of('amount', 'unit: written', '($41,500)')).toBe('-41500 dollars');
  expect(of('fiscal_year', 'codes: { FY25: 2025 }', 'FY25')).toBe(of('fiscal_year', 'codes: { FY25: 2025 }', '2025'));
  // IANA time zone database: Denver is 6 hours behind UTC in summer, 7 in winter, and changed its clocks on these days.
  const zone = 'time_zone: America/Denver';
  expect(of('started_at', 'pattern: "yyyy-MM-dd h:mm a"', '2025-06-14 6:30 PM', zone)).toBe('2025-06-15T00:30:00Z');
  expect(of('started_at', 'pattern: yyyy-MM-dd HH:mm', '2025-03-09 02:30', zone)).toBe('no-such-local-time');
  expect(of('started_at', 'pattern: yyyy-MM-dd HH:mm', '2025-11-02 01:30', `${zone}, repeated`)).toBe(
    '2025-11-02T08:30:00Z',
  );
  // 2025 is no leap year; 5 July 1998 is day 35981 counted from 1900 (article Q180162).
  expect(of('in_service_on', 'pattern: MM/dd/yyyy', '02/29/2025')).toBe('not-a-date');
  expect((Date.UTC(2025, 5, 14) - Date.UTC(1998, 6, 5)) / 86_400_000 + 35_981).toBe(45_822);
  expect(of('in_service_on', 'pattern: serial 1900', '45822')).toBe('2025-06-14');
});

test('every example says something, and none twice', () => {
  const names = all.map(({ field, column, file, cell }) => JSON.stringify([field, column, file, cell]));
  expect(new Set(names).size).toBe(names.length);
  expect(all.every(({ becomes }) => becomes !== '')).toBe(true);
});

test('numbers of sheets are documented as they are read', () => {
  const texts = sheetExamples().map(({ text }) => text);
  expect(texts).toEqual([
    '22.5',
    '6.7',
    '0.5',
    '00123',
    '2025-06-14',
    '2025-06-14',
    '2025-06-14T06:30:00',
    '2025-06-14T06:30:00',
    '06:30:00',
    '36:00:00',
    '60',
  ]);
});
