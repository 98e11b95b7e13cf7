import { dayOf } from '../day.js';
import type { Environment } from '../environment.js';
import type { EachFunction, PlainFunction, PlainValue, Takes } from '../functions/declaration.js';
import type { FormulaKind } from '../kind.js';
import { mergeAccounts } from './account.js';
import { accountOf, type Evaluated, type NumberValue } from './evaluated.js';
import { standingOf } from './lift.js';
import { numberFrom } from './number.js';

/** The first and the last day that a date may be: 0001-01-01 and 9999-12-31, as days since 1970-01-01. */
const [firstDay, lastDay] = [-719_162, 2_932_896] as const;

/** A day of the calendar, whole; null beyond the years 1 to 9999. */
export function calendarDay(day: number): number | null {
  const whole = Math.floor(day);
  return whole >= firstDay && whole <= lastDay ? whole : null;
}

/** A value stripped of all that it stands on; a text becomes a date where one is wanted. */
export function plainOf(value: Evaluated, takes: Takes): PlainValue {
  switch (value.kind) {
    case 'number':
      return value.value;
    case 'text':
      return takes === 'date' && value.text !== null ? dayOf(value.text) : value.text;
    case 'date':
      return value.day;
    case 'truth':
      return value.truth === null ? null : Number(value.truth);
    default:
      throw new Error(`${value.kind} was not checked`);
  }
}

/** What a function gives for plain values: missing where one of them is, unless it chooses among them. */
export function plainResult(declaration: EachFunction | PlainFunction, values: readonly PlainValue[]): PlainValue {
  if (declaration.works === 'on each') return declaration.choice!(values);
  const known = values.filter((value) => value !== null);
  return known.length === values.length ? declaration.each(...known) : null;
}

const throughText = 'a text or date stands between it and the numbers it was made of';

/** The numbers that values were made of or chosen by; through a text or a date no resample of theirs is followed. */
export function basisOf(values: readonly Evaluated[]): readonly NumberValue[] {
  return values.flatMap((value): readonly NumberValue[] => {
    if (value.kind === 'number') return [value];
    if (value.kind === 'truth') return value.basis;
    if (value.kind !== 'text' && value.kind !== 'date') return [];
    return (value.basis ?? []).map((number) =>
      number.standing === 'estimate' ? { ...number, barred: throughText } : number,
    );
  });
}

/** A plain value with what it was made of; a date outside the calendar, or a number that is none, is missing. */
export function dressed(
  plain: PlainValue,
  kind: FormulaKind,
  made: readonly Evaluated[],
  environment: Environment,
): Evaluated {
  const accounts = mergeAccounts(made.map(accountOf));
  const basis = basisOf(made);
  const missing = made.some((value) =>
    'value' in value
      ? value.value === null
      : 'text' in value
        ? value.text === null
        : 'day' in value && value.day === null,
  );
  const why = missing ? 'a value that it is made of is missing' : 'there is no such value';
  if (kind.kind === 'text') return { kind: 'text', text: plain === null ? null : String(plain), accounts, basis, why };
  if (kind.kind === 'truth')
    return { kind: 'truth', truth: plain === null ? null : plain === 1, draws: null, basis, accounts };
  const number = typeof plain === 'number' && Number.isFinite(plain) ? plain : null;
  if (kind.kind === 'date')
    return { kind: 'date', day: number === null ? null : calendarDay(number), accounts, basis, why };
  if (kind.kind !== 'number') throw new Error(`${kind.kind} cannot be made of plain values`);
  const standing = standingOf(basis);
  const barred = standing === 'estimate' ? throughText : null;
  return numberFrom(
    { value: number, unit: kind.unit, why: number === null ? why : null, standing, barred, accounts },
    environment,
  );
}
