import type { Field, NumberField, TableDefinition } from '../../record/field.js';
import { type NumberMarks, plainDigits } from '../number-marks.js';
import { isTimeZone } from '../time-zone.js';
import { readWrittenNumber } from '../written-number.js';
import { type CodeMatch, matchCodes } from './code-match.js';
import { type ColumnProfile, shareOf } from './column-profile.js';
import { type DateOrder, dateOrderOf } from './date-order.js';
import { phrasesOf } from './field-words.js';
import { likeness, tellsOfWash, wordsOf } from './heading.js';
import { guessUnit, type UnitGuess } from './unit-guess.js';

/** How well a column fits a field: `heading` from 0 to 1, `values` from −1 (cannot be) to 1 (say so themselves). */
export interface FieldFit {
  readonly heading: number;
  readonly values: number;
  /** What the values show, as a clause. */
  readonly shows: string;
  readonly order: DateOrder | null;
  readonly unit: UnitGuess | null;
  readonly match: CodeMatch | null;
}

/** A column with what was found out about it once, whatever field it may fill. */
export interface KnownColumn {
  readonly profile: ColumnProfile;
  readonly order: DateOrder | null;
  readonly marks: NumberMarks;
  /** What stands between several values in its cells; null where each holds one. */
  readonly between: string | null;
}

/** What can be known of a column before a field is thought of. */
export function knownColumn(profile: ColumnProfile, marks: NumberMarks, between: string | null): KnownColumn {
  return { profile, order: dateOrderOf(profile), marks, between };
}

type Shown = Omit<FieldFit, 'heading'>;
const nothing = { order: null, unit: null, match: null };
const cannot = (shows: string): Shown => ({ ...nothing, values: -1, shows });
const percent = (share: number): string => `${Math.floor(share * 100)} %`;

function numbersOf({ profile, marks }: KnownColumn): readonly number[] {
  return profile.values.flatMap(([text, times]) => {
    const digits = plainDigits(text, marks);
    return digits === null ? [] : Array.from({ length: Math.min(times, 50) }, () => Number(digits));
  });
}

/** Numbers of which some or all are written with their unit; null where reading units tells no more than digits do. */
function fitWritten(field: NumberField, { profile, marks }: KnownColumn, bare: number): Shown | null {
  const read = (text: string) => readWrittenNumber(text, field, field.unit, marks);
  const share = shareOf(profile, (text) => 'value' in read(text));
  if (share < 0.8 || share <= bare) return null;
  const isWithin = (text: string) => {
    const found = read(text);
    return 'value' in found && found.value >= field.least && found.value <= field.most;
  };
  if (shareOf(profile, isWithin) < share * 0.8) return cannot(`beyond ${field.least} to ${field.most} ${field.unit}`);
  const unit = bare === 0 ? 'written' : `written or ${field.unit}`;
  const shows = `${percent(share)} are numbers, ${bare === 0 ? 'written' : 'some of them written'} with their unit`;
  return { ...nothing, unit: { unit, isTold: true }, values: 0.6, shows };
}

/** Years that are written with letters or in two digits, as `FY25`; null where there are no such, or other texts. */
function fitYears(field: NumberField, { profile }: KnownColumn): Shown | null {
  const year = (text: string) => /^(?:FY|F\.Y\.)?\s*['’]?(\d{2}|\d{4})$/iu.exec(text)?.[1];
  if (field.unit !== 'year' || profile.values.some(([text]) => year(text) === undefined)) return null;
  const codes = new Map(profile.values.map(([text]) => [text, year(text)!.padStart(4, '20')] as const));
  if ([...codes].every(([text, code]) => text === code)) return null;
  const match: CodeMatch = { codes, guessed: new Set(codes.keys()), rare: 0, plain: 0, short: 1 };
  return { ...nothing, match, values: 0.6, shows: `${codes.size} texts that can be years` };
}

/** Fiscal years written as two, as `FY23/24`: by which of them it is called, a person must say; null where there are others. */
function fitTwoYears(field: NumberField, { profile }: KnownColumn): Shown | null {
  const areTwo = (text: string) => /^(?:FY|F\.Y\.)?\s*(?:\d{2}|\d{4})\s*[/–-]\s*(?:\d{2}|\d{4})$/iu.test(text);
  if (field.unit !== 'year' || !profile.values.every(([text]) => areTwo(text))) return null;
  const codes = new Map(profile.values.map(([text]) => [text, null] as const));
  const match: CodeMatch = { codes, guessed: new Set(), rare: 0, plain: 0, short: 0 };
  return { ...nothing, match, values: 0.4, shows: `${codes.size} texts that name two years each` };
}

function fitNumber(field: NumberField, column: KnownColumn): Shown {
  const share = shareOf(column.profile, (text) => plainDigits(text, column.marks) !== null);
  const written = fitWritten(field, column, share);
  if (written !== null) return written;
  const years = fitYears(field, column);
  if (years !== null) return years;
  const twoYears = fitTwoYears(field, column);
  if (twoYears !== null) return twoYears;
  if (share < 0.8) return cannot('not numbers');
  const numbers = numbersOf(column);
  const unit = guessUnit(column.profile.heading, numbers, field);
  if (unit === null) return cannot(`numbers beyond ${field.least} to ${field.most} ${field.unit}`);
  if (field.type === 'integer' && numbers.some((number) => !Number.isInteger(number))) return cannot('fractions');
  const shows = `${percent(share)} are numbers that can be ${unit.unit}`;
  return { ...nothing, unit, values: unit.isTold && unit.unit !== field.unit ? 0.6 : 0.4, shows };
}

function fitDate(field: Field, { profile, order }: KnownColumn): Shown {
  if (order === null) return cannot('no dates');
  if (order.hasTime !== (field.type === 'instant')) return cannot(order.hasTime ? 'dates with times' : 'dates only');
  return {
    ...nothing,
    order,
    values: 0.7,
    shows: `${percent(order.share)} of ${profile.filled} read as ${order.pattern}`,
  };
}

const isShort = (text: string): boolean => text.length <= 6;

function fitCodes(field: Field & { type: 'code' }, { profile, order }: KnownColumn): Shown {
  const match = order === null ? matchCodes(profile, field.codes) : null;
  if (match === null) return cannot('too many different texts for codes');
  const known = match.plain + match.short * 0.6;
  const numbered = profile.values.every(([text]) => /^\d+$/u.test(text));
  // Numbers in the place of codes say nothing for the field, and nothing against it.
  if (numbered && match.plain < 0.5 && profile.values.length <= field.codes.codes.length + 2) {
    return { ...nothing, match, values: 0, shows: `${profile.values.length} numbers in the place of codes` };
  }
  const left = match.rare === 0 ? '' : `; ${match.rare} rarer texts are left out: slips, or codes to add`;
  const shows = `${percent(match.plain + match.short)} are or shorten codes of "${field.codes.name}"${left}`;
  // A few short texts may be codes that nobody can read off; the heading must tell.
  const mayBeCodes = match.codes.size <= field.codes.codes.length + 2 && [...match.codes.keys()].every(isShort);
  // Yes and no answer any question, so that they never tell the field by themselves.
  const most = field.codes.name === 'yes or no' ? 0.6 : 1;
  return { ...nothing, match, values: Math.min(most, Math.max(known * 1.6 - 0.6, mayBeCodes ? -0.4 : -1)), shows };
}

function fitText(table: TableDefinition, field: Field, { profile, order }: KnownColumn): Shown {
  if (order !== null) return cannot('dates');
  if (field.name === 'time_zone') {
    const share = shareOf(profile, (text) => text.includes('/') && isTimeZone(text));
    return share >= 0.8 ? { ...nothing, values: 1, shows: 'names of time zones' } : cannot('no time zones');
  }
  if (field.type === 'text' && field.pattern !== undefined) {
    const form = new RegExp(`^(?:${field.pattern})$`, 'u');
    const share = shareOf(profile, (text) => form.test(text));
    return share >= 0.8 ? { ...nothing, values: 0.8, shows: `${percent(share)} are written so` } : cannot('other text');
  }
  const isKey = table.key[0] === field.name && table.key.length === 1;
  if (isKey) {
    const distinct = profile.values.length / Math.max(1, profile.filled);
    if (distinct < 0.95) return cannot('texts that repeat');
    return { ...nothing, values: 0.5, shows: 'a text of its own in every row' };
  }
  if (field.name === 'craft' && profile.filled > 50 && profile.values.length < profile.filled / 10) {
    return cannot('too few different texts to tell craft apart');
  }
  if (field.name === 'inspector' && profile.filled >= 20 && profile.values.length * 4 > profile.filled) {
    return cannot('too many different texts to tell inspectors apart');
  }
  if (field.name === 'home_region') {
    const share = shareOf(profile, (text) => /^[A-Z]{2}$/u.test(text));
    return { ...nothing, values: share >= 0.8 ? 0.6 : -0.3, shows: `${percent(share)} are two letters` };
  }
  return { ...nothing, values: 0.2, shows: `${profile.values.length} different texts` };
}

function shownFor(table: TableDefinition, field: Field, column: KnownColumn): Shown {
  const { filled, rows } = column.profile;
  if (filled === 0) return { ...nothing, values: 0, shows: 'no value at all' };
  // No row is kept without it: what few rows have belongs to another table.
  if (field.required && filled * 2 < rows) return cannot('blank in most rows');
  switch (field.type) {
    case 'number':
    case 'integer':
      return fitNumber(field, column);
    case 'date':
    case 'instant':
      return fitDate(field, column);
    case 'code':
      return fitCodes(field, column);
    default:
      return fitText(table, field, column);
  }
}

/** A few texts that are no codes are still those of the field that their heading names: a person must say what they mean. */
function namedCodes(field: Field, { profile }: KnownColumn, heading: number, shown: Shown): Shown {
  const isNamed = heading >= 0.95 && field.type === 'code' && shown.match !== null;
  const areFew = field.type === 'code' && profile.values.length <= field.codes.codes.length + 2;
  return isNamed && areFew && shown.values < -0.4 ? { ...shown, values: -0.4 } : shown;
}

/** How well a column fits a field of a table. */
export function fitField(table: TableDefinition, field: Field, column: KnownColumn): FieldFit {
  const words = wordsOf(column.profile.heading);
  const like = Math.max(...phrasesOf(table.name, field.name).map((phrase) => likeness(words, phrase)));
  // "Wash start" on a form of inspections is the start of a wash, and not of the inspection.
  const heading = like < 1 && table.name === 'inspections' && tellsOfWash(words) ? 0 : like;
  return { heading, ...namedCodes(field, column, heading, shownFor(table, field, column)) };
}
