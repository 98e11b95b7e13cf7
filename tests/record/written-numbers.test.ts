import { expect, test } from 'vitest';
import { showNumber, showResult, unitInHead } from '../../src/notebook/shown.js';
import {
  currentLocale,
  type LocaleName,
  numberWritings,
  writtenDays,
  writtenIn,
  writtenNumber,
  writtenWords,
} from '../../src/record/written-numbers.js';
import { number } from '../report/sample-notebook.js';

const locales = Object.keys(numberWritings) as LocaleName[];

// Unicode CLDR as this machine's ICU has it, through Intl.
test.each(locales)('numbers in %s are as CLDR writes them', (locale) => {
  for (const value of [0, 7, 999, 1234, 1234567.5, 0.25, -9876.54]) {
    const decimals = String(value).split('.')[1]?.length ?? 0;
    const reference = new Intl.NumberFormat(locale, { minimumFractionDigits: decimals }).format(value);
    expect(writtenIn(locale, () => writtenNumber(value.toFixed(decimals)))).toBe(reference.replace('-', '−'));
  }
});

test.each(locales)('money in %s has its sign where CLDR has it', (locale) => {
  const style = { style: 'currency', currency: locale === 'en-US' ? 'USD' : 'CAD', minimumFractionDigits: 2 } as const;
  const reference = new Intl.NumberFormat(locale, style).format(1234.5);
  const money = number(1234.5, { unit: 'dollars' });
  expect(writtenIn(locale, () => showResult(money, 'dollars and cents'))).toBe(reference);
});

test.each(locales)('days in %s are as CLDR writes them', (locale) => {
  const dateStyle = numberWritings[locale].day === 'named' ? 'medium' : 'short';
  const reference = new Intl.DateTimeFormat(locale, { dateStyle, timeZone: 'UTC' });
  for (const day of ['2025-01-05', '2024-02-29', '2025-05-31', '2025-11-30', '1999-12-01']) {
    expect(writtenIn(locale, () => writtenDays(day))).toBe(reference.format(new Date(`${day}T00:00Z`)));
  }
});

test('days within words follow, and what only looks like one does not', () => {
  expect(writtenDays('2025-11-30 18:00, America/Denver')).toBe('Nov 30, 2025 18:00, America/Denver');
  expect(writtenDays('2025-13-01, 12025-01-01, 2025-01-011')).toBe('2025-13-01, 12025-01-01, 2025-01-011');
});

test('money below zero and money by something keep their sign and their unit', () => {
  const lost = number(-1234.5, { unit: 'dollars an hour' });
  expect(showResult(lost, 'dollars and cents')).toBe('−$1,234.50 an hour');
  expect(writtenIn('fr-CA', () => showResult(lost, 'dollars and cents'))).toBe('−1\u00a0234,50\u00a0$ an hour');
});

test('whole numbers in the program’s words follow, and years and lists of digits do not', () => {
  writtenIn('fr-CA', () => {
    expect(writtenWords('per 1,000 looks')).toBe('per 1\u00a0000 looks');
    expect(writtenWords('limits at 99.8 %, 33 CFR 174.19')).toBe('limits at 99,8 %, 33 CFR 174.19');
    expect(unitInHead('per 10,000', '')).toBe('per 10\u00a0000');
    expect(writtenWords('JASA 53:457-481, 1958')).toBe('JASA 53:457-481, 1958');
    expect(showNumber(2025, 'year', 'year')).toBe('2025');
  });
  expect(writtenWords('per 1,000 looks')).toBe('per 1,000 looks');
});

test('a locale ends with what was made in it, even where that failed', () => {
  expect(() =>
    writtenIn('fr-CA', () => {
      throw new Error('failed');
    }),
  ).toThrow('failed');
  expect(currentLocale()).toBe('en-US');
  writtenIn('fr-CA', () => writtenIn('en-CA', () => expect(currentLocale()).toBe('en-CA')));
});
