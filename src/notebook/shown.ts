import { dayAsText } from '../finding/book/calendar.js';
import type { NumberResult, Result } from '../formula/result.js';
import { currentLocale, numberWritings, writtenDays, writtenNumber, writtenWords } from '../record/written-numbers.js';

/** Whether a result is there but may not be told on a page for the public. */
export function isWithheld(result: Result | undefined): boolean {
  return result?.kind === 'missing' && result.withheld === true;
}

/** A way of showing a number: what it is multiplied by, how many decimals stand, and what is written around it. */
interface Format {
  readonly times: number;
  readonly decimals: number;
  readonly before: string;
  readonly after: string;
  /** False for numbers that name something, such as a year. */
  readonly grouped: boolean;
  /** The units it may be used for: any, plain numbers and shares only, money in the unit, or time (by its minutes). */
  readonly fits: 'any' | 'plain' | 'money' | 'time';
  /** Numbers that would round to less than this are shown as under it; absent where they are shown as zero. */
  readonly least?: number;
}

const format = (
  times: number,
  decimals: number,
  before = '',
  after = '',
  fits: Format['fits'] = 'any',
  grouped = true,
): Format => ({
  times,
  decimals,
  before,
  after,
  grouped,
  fits,
});

/** Every way of showing a number, by the name that a notebook's `shown as` column gives it. */
export const formats: ReadonlyMap<string, Format> = new Map([
  ['whole', format(1, 0)],
  ['one decimal', format(1, 1)],
  ['two decimals', format(1, 2)],
  ['three decimals', format(1, 3)],
  ['P value', { ...format(1, 3, '', '', 'plain'), least: 0.001 }],
  ['year', format(1, 0, '', '', 'any', false)],
  ['percent', format(100, 1, '', ' %', 'plain')],
  ['percent, two decimals', format(100, 2, '', ' %', 'plain')],
  ['per 1,000', format(1000, 2, '', ' per 1,000', 'plain')],
  ['per 10,000', format(10_000, 1, '', ' per 10,000', 'plain')],
  ['dollars', format(1, 0, '$', '', 'money')],
  ['dollars and cents', format(1, 2, '$', '', 'money')],
  ['minutes', format(1, 0, '', ' min', 'time')],
  ['hours', format(1 / 60, 1, '', ' h', 'time')],
]);

/** The names of formats that are not for numbers. */
const plainNames = new Set(['text', 'date']);

/** Whether a `shown as` cell names a format; an empty cell leaves the choice to the value. */
export function isFormat(name: string): boolean {
  return name === '' || plainNames.has(name) || formats.has(name);
}

/** The names a `shown as` cell may hold. */
export function formatNames(): readonly string[] {
  return [...formats.keys(), ...plainNames];
}

const minutesIn: ReadonlyMap<string, number> = new Map([
  ['seconds', 1 / 60],
  ['minutes', 1],
  ['hours', 60],
  ['days', 1440],
  ['weeks', 10_080],
]);

/** Whether numbers of that unit can be shown so; the reason in words where they cannot. */
export function misfit(name: string, unit: string): string | null {
  const fits = formats.get(name)?.fits ?? 'any';
  if (fits === 'plain' && unit !== '') return `a plain number or share, not ${unit}`;
  if (fits === 'money' && !/\bdollars?\b/.test(unit)) return `an amount of money, not ${unit || 'a plain number'}`;
  if (fits === 'time' && !minutesIn.has(unit)) return `a length of time, not ${unit || 'a plain number'}`;
  return null;
}

/** Digits in groups of three, with a true minus sign; ties go by the stored binary value, as `toFixed` does. */
function digits(value: number, decimals: number, groups = true): string {
  const shown = writtenNumber(Math.abs(value).toFixed(decimals), groups);
  return value < 0 && /[1-9]/.test(shown) ? `−${shown}` : shown;
}

/** What a number of a unit is multiplied by when it is shown so: a share in percent by 100, hours in minutes by 60. */
export function shownTimes(shownAs: string, unit: string): number {
  const shown = formats.get(shownAs);
  return shown === undefined ? 1 : timesOf(shown, unit);
}

function timesOf({ times, fits }: Format, unit: string): number {
  return times * (fits === 'time' ? (minutesIn.get(unit) ?? 1) : 1);
}

function formatFor(name: string, value: number): Format {
  const named = formats.get(name);
  if (named !== undefined) return named;
  return Number.isInteger(value) ? formats.get('whole')! : formats.get('two decimals')!;
}

/** The digits of a number shown so, or under which number it lies. */
function shownDigits(value: number, shown: Format, unit: string): string {
  const { least, decimals, grouped } = shown;
  if (least !== undefined && Number(value.toFixed(decimals)) < least)
    return `under ${digits(least, decimals, grouped)}`;
  return digits(value * timesOf(shown, unit), decimals, grouped);
}

/** The number alone, without the words around it: what a table cell under a head with its unit shows. */
export function showNumber(value: number, shownAs: string, unit: string): string {
  return shownDigits(value, formatFor(shownAs, value), unit);
}

function withWords(value: number, shownAs: string, unit: string): string {
  const shown = formatFor(shownAs, value);
  const number = shownDigits(value, shown, unit);
  if (shown.fits === 'money' && numberWritings[currentLocale()].dollar === 'after') {
    return `${number}\u00a0${shown.before}${unit.replace(/^dollars?\b/, '')}`;
  }
  const signed = number.startsWith('−') ? `−${shown.before}${number.slice(1)}` : `${shown.before}${number}`;
  if (shown.fits === 'money') return signed + unit.replace(/^dollars?\b/, '');
  return signed + writtenWords(shown.after);
}

/** A day (days since 1970-01-01) as the page's locale writes it: `Jun 1, 2025` or `2025-06-01`. */
export function showDay(day: number): string {
  return writtenDays(dayAsText(day));
}

/** A value as readers see it; what is missing reads `no value`, never an empty place or a zero. */
export function showResult(result: Result, shownAs: string): string {
  switch (result.kind) {
    case 'number':
      return result.value === null ? 'no value' : withWords(result.value, shownAs, result.unit);
    case 'text':
      return result.text;
    case 'date':
      return showDay(result.day);
    case 'truth':
      return result.truth ? 'yes' : 'no';
    case 'missing':
      return result.withheld === true ? 'withheld' : 'no value';
    case 'problem':
      return 'problem';
  }
}

/** The limits as readers see them: `95 % interval 0.41 to 0.82`, or `at most 0.30 (95 %, one-sided)`; empty without. */
export function showInterval(result: Result, shownAs: string): string {
  if (result.kind !== 'number' || result.interval === null) return '';
  const { low, high, confidence, sides } = result.interval;
  const limit = (value: number | null): string =>
    value === null ? 'not reached' : showNumber(value, shownAs, result.unit);
  const percent = digits(confidence * 100, confidence * 100 === Math.round(confidence * 100) ? 0 : 1);
  if (sides === 'upper') return `at most ${limit(high)} (${percent} %, one-sided)`;
  if (sides === 'lower') return `at least ${limit(low)} (${percent} %, one-sided)`;
  return `${percent} % interval ${limit(low)} to ${limit(high)}`;
}

/** The unit as a table head shows it beside the name: `per 1,000`, `%`, `min`, `$ an inspection`; empty for none. */
export function unitInHead(shownAs: string, unit: string): string {
  const named = formats.get(shownAs);
  if (named === undefined || named.fits === 'any') return unit;
  if (named.fits === 'money') return unit.replace(/^dollars?\b/, '$');
  return writtenWords(named.after.trim());
}

/**
 * The numerator and denominator in words: `31 of 24,010` for a share, `12 by 1.14` for a ratio of one thing to another; empty
 * where there are none.
 */
export function showFraction({ numerator, denominator, isRatio }: NumberResult): string {
  if (numerator === null || denominator === null) return '';
  return `${showAmount(numerator)} ${isRatio === true ? 'by' : 'of'} ${showAmount(denominator)}`;
}

/** What something was counted from: a count as it is; any other amount with two decimals, or two digits where those are none. */
export function showAmount(amount: number): string {
  if (Number.isInteger(amount)) return digits(amount, 0);
  const exponent = Number(amount.toExponential(1).split('e')[1]);
  return digits(amount, Math.min(20, Math.max(2, 1 - exponent)));
}
