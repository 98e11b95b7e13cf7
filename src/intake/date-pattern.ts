import { DateReader } from './date-reader.js';
import { dateLetters, partOf, readSteps, type Step } from './date-steps.js';
import { fault } from './fault.js';
import type { SerialBase } from './source/serial-date.js';

/** A date or time as a pattern in the letters of UTS #35 describes it, ready to be read from bytes. */
export interface DatePattern {
  readonly text: string;
  readonly steps: readonly Step[];
  /** Where days are counted instead of written: from which year. */
  readonly serial: SerialBase | null;
  readonly hasTime: boolean;
  readonly hasOffset: boolean;
  /** Other patterns that a cell may follow; no text can be read in two ways. */
  readonly others: readonly DatePattern[];
}

/** The letters a pattern may hold, for messages. */
export const patternLetters = Object.keys(dateLetters).join(' ');

/** What a true date of a sheet is read by; one without a time of day is a date and no moment. */
const sheetDates = { date: ['yyyy-MM-dd', "yyyy-MM-dd'T'HH:mm:ss"], instant: ["yyyy-MM-dd'T'HH:mm:ss"] } as const;

/**
 * A pattern made ready, or a sentence saying why it cannot be one: every part once, a whole date, an hour for a time, and
 * `a` with `hh` and with nothing else. Text stands for itself between single quotes. `serial 1900` and `serial 1904` read days
 * as sheets count them.
 */
export function readDatePattern(text: string, wanted: 'date' | 'instant'): DatePattern | string {
  const serial = /^serial (1900|1904)$/u.exec(text);
  if (serial !== null) {
    const base = serial[1] === '1904' ? 1904 : 1900;
    return { text, steps: [], serial: base, hasTime: true, hasOffset: false, others: [] };
  }
  const read = readSteps(text);
  if (typeof read === 'string') return read;
  const { steps, runs } = read;
  const parts = steps.map(partOf).filter((part) => part !== null);
  const twice = parts.find((part, position) => parts.indexOf(part) !== position);
  if (twice !== undefined) return `it names the ${twice} twice`;
  for (const part of ['year', 'month', 'day'] as const) if (!parts.includes(part)) return `it has no ${part}`;
  const hasTime = parts.includes('hour');
  if (wanted === 'instant' && !hasTime) return 'it has no hour';
  const halves = runs.includes('h') || runs.includes('hh');
  if (halves !== parts.includes('half')) return 'a 12-hour clock needs both hh and a';
  return { text, steps, serial: null, hasTime, hasOffset: parts.includes('offset'), others: [] };
}

/** A date as a pattern would write it: 3 February 2001, 04:05:06. */
function written({ steps }: DatePattern): string {
  const parts: Readonly<Record<string, string>> = { month: '2', day: '3', hour: '4', minute: '5', second: '6' };
  return steps
    .map((step) => {
      if (step.kind === 'literal') return String.fromCharCode(step.byte);
      if (step.kind === 'loose space') return ' ';
      if (step.kind === 'month name') return step.names.find(({ text }) => text.startsWith('feb'))!.text;
      if (step.kind === 'half') return 'AM';
      if (step.kind === 'offset') return 'Z';
      if (step.part === 'year') return '2001'.slice(-step.most);
      return (parts[step.part] ?? '0').padStart(step.most, '0');
    })
    .join('');
}

function readsAs(pattern: DatePattern, text: string): number | null {
  const reader = new DateReader(pattern, pattern.hasTime);
  const bytes = Buffer.from(text, 'latin1');
  return reader.read(bytes, 0, bytes.length) === fault.none ? reader.wall : null;
}

/**
 * Several patterns as one, each tried in turn; a sentence where one of them cannot be read, or where two read the same text
 * as different dates, such as 02/03/2001. The words `sheet date` stand for a true date of a sheet.
 */
export function readDatePatterns(texts: readonly string[], wanted: 'date' | 'instant'): DatePattern | string {
  const patterns: DatePattern[] = [];
  for (const text of texts.flatMap((entry) => (entry === 'sheet date' ? sheetDates[wanted] : entry))) {
    const pattern = readDatePattern(text, wanted);
    if (typeof pattern === 'string') return pattern;
    patterns.push(pattern);
  }
  for (const pattern of patterns) {
    const text = written(pattern);
    const asMeant = readsAs(pattern, text);
    for (const other of patterns) {
      const asOther = other === pattern ? asMeant : readsAs(other, text);
      if (asOther !== null && asOther !== asMeant)
        return `"${text}" could be read by ${pattern.text} and by ${other.text}`;
    }
  }
  const [first, ...others] = patterns;
  return first === undefined ? 'there is none' : { ...first, others };
}
