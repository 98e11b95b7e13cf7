import { readDatePattern } from '../date-pattern.js';
import { DateReader } from '../date-reader.js';
import { fault } from '../fault.js';
import { type ColumnProfile, shareOf } from './column-profile.js';

/** How dates are written in a column, with any other order that fits as well. */
export interface DateOrder {
  readonly pattern: string;
  readonly hasTime: boolean;
  /** The share of filled rows that it reads. */
  readonly share: number;
  /** Another order that reads as many: no row of the sample tells them apart. */
  readonly rival: string | null;
}

const days = [
  'yyyy-MM-dd',
  'MM/dd/yyyy',
  'dd/MM/yyyy',
  'dd.MM.yyyy',
  'dd-MM-yyyy',
  'MM-dd-yyyy',
  'yyyy/MM/dd',
  'yyyy.MM.dd',
  'M/d/yyyy',
  'd/M/yyyy',
  'd.M.yyyy',
  'd-M-yyyy',
  'MM/dd/yy',
  'dd/MM/yy',
  'dd.MM.yy',
  'M/d/yy',
  'd/M/yy',
  'd-MMM-yyyy',
  'd-MMM-yy',
  'd MMMM yyyy',
  'd MMM yyyy',
  'MMMM d, yyyy',
  'MMM d, yyyy',
];
const times = [' HH:mm', ' hh:mm a', ' HH:mm:ss', ' hh:mm:ss a', ' H:mm', ' h:mm a', ' h:mma', ' hh:mma'];
const marked = ["'T'HH:mm", "'T'HH:mm:ss", "'T'HH:mmXXX", "'T'HH:mm:ssXXX", ' HH:mm:ssXXX'];

interface Candidate {
  readonly pattern: string;
  readonly hasTime: boolean;
  readonly reads: (text: string) => boolean;
}

function candidate(pattern: string, hasTime: boolean): Candidate {
  const read = readDatePattern(pattern, hasTime ? 'instant' : 'date');
  if (typeof read === 'string') throw new Error(`${pattern}: ${read}`);
  const reader = new DateReader(read, hasTime);
  return {
    pattern,
    hasTime,
    reads: (text) => {
      const bytes = Buffer.from(text, 'utf8');
      return reader.read(bytes, 0, bytes.length) === fault.none;
    },
  };
}

const candidates: readonly Candidate[] = [
  ...days.map((day) => candidate(day, false)),
  ...days.flatMap((day) => times.map((time) => candidate(day + time, true))),
  ...marked.map((time) => candidate(`yyyy-MM-dd${time}`, true)),
];

/** Digits in three groups, or a day and a year about the name of a month. */
const looksDated =
  /^(?:\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|\d{1,2}(?:er)?[- ]\p{L}{3,9}\.?[- ]\d{2,4}|\p{L}{3,9}\.? \d{1,2}, \d{4})/u;

/** Fewer rows than this in order tell of no date column. */
const least = 0.8;

/** The order of day and month with the letters' counts left off: `dd/MM/yyyy` and `d/M/yyyy` are one. */
const orderOf = (pattern: string): string => pattern.replace(/([A-Za-z])\1*/gu, '$1');

/** How the dates of a column are written; null where it holds none. Slips of the hand may make up a fifth of it. */
export function dateOrderOf(column: ColumnProfile): DateOrder | null {
  // Most columns hold no date at all, which their commonest texts tell at once.
  const looks = column.values.slice(0, 20).filter(([text]) => looksDated.test(text)).length;
  if (looks * 2 < Math.min(20, column.values.length) || column.values.length === 0) return null;
  const read = candidates
    .map(({ pattern, hasTime, reads }) => ({ pattern, hasTime, share: shareOf(column, reads) }))
    .filter(({ share }) => share >= least);
  const most = Math.max(0, ...read.map(({ share }) => share));
  const best = read.find(({ share }) => share >= most - 0.002);
  if (best === undefined) return null;
  const rival = read.find(
    ({ pattern, share }) => share >= best.share - 0.002 && orderOf(pattern) !== orderOf(best.pattern),
  );
  return { ...best, rival: rival?.pattern ?? null };
}

/**
 * What dates of a column look like from afar: with the name of a month, the year first, or other digits; null where it holds
 * none. The order of day and month is not told here, since only the rows of several files may tell it.
 */
export function dateFormOf(column: ColumnProfile): 'named' | 'year first' | 'digits' | null {
  const order = dateOrderOf(column);
  if (order === null) return null;
  return order.pattern.includes('MMM') ? 'named' : order.pattern.startsWith('yyyy') ? 'year first' : 'digits';
}

/** How times of day are written in a column, such as `HH:mm`; null where it holds none. */
export function timeOfDayIn(column: ColumnProfile): string | null {
  const forms: readonly (readonly [string, RegExp])[] = [
    ['HH:mm', /^(?:[01]\d|2[0-3]):[0-5]\d$/u],
    ['hh:mm a', /^(?:0\d|1[0-2]):[0-5]\d [AaPp][Mm]$/u],
    ['h:mm a', /^(?:\d|1[0-2]):[0-5]\d [AaPp][Mm]$/u],
    ['H:mm', /^(?:\d|1\d|2[0-3]):[0-5]\d$/u],
    ['HH:mm:ss', /^(?:[01]\d|2[0-3]):[0-5]\d:[0-5]\d$/u],
    ["HH 'h' mm", /^(?:[01]\d|2[0-3]) h [0-5]\d$/u],
    ["HH'h'mm", /^(?:[01]\d|2[0-3])h[0-5]\d$/u],
    ["H 'h' mm", /^(?:\d|1\d|2[0-3]) h [0-5]\d$/u],
    ["H'h'mm", /^(?:\d|1\d|2[0-3])h[0-5]\d$/u],
  ];
  return forms.find(([, form]) => shareOf(column, (text) => form.test(text)) >= least)?.[0] ?? null;
}
