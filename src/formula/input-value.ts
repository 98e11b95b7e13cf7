import type { Problem } from '../problem/problem.js';
import { dayOf } from './day.js';
import { type Mistake, problemAt, type TextPlace } from './place.js';
import { readUnit } from './unit/read-unit.js';
import type { Evaluated, ListValue } from './value/evaluated.js';
import { givenNumber } from './value/number.js';

const numberForm = /^[-−]?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?$/;

/** A number as a person writes it in a table cell: `23.40`, `48,000`, `-5`; null for any other text. */
export function numberIn(text: string): number | null {
  if (!numberForm.test(text)) return null;
  const number = Number(text.replaceAll(',', '').replace('−', '-'));
  return Number.isFinite(number) ? number : null;
}

/** Where an input's value and its unit stand. */
export interface InputPlace {
  readonly value: TextPlace;
  readonly unit: TextPlace;
}

/**
 * The value of an input from its cell and the words in its unit's cell. Without a unit, a number is plain, `2025-05-01` a
 * date, and anything else a text; with one, only a number will do. Thousands may be set off by commas here, where no comma
 * separates anything. With the unit `list`, or `list of minutes`, several values stand with commas between. `counted` are the things that the book counts, as further units.
 */
export function inputValue(
  value: number | string,
  unitWords: string,
  at: InputPlace,
  counted: Iterable<string> = [],
): Evaluated | { readonly problems: readonly Problem[] } {
  const text = String(value).trim();
  const problems: Problem[] = [];
  const tell = (seen: string, cell: 'value' | 'unit', mistake: Mistake) => {
    problems.push(problemAt({ text: seen, at: at[cell] }, { offset: 0, end: seen.length }, mistake));
  };
  if (text === '') tell(text, 'value', noValue);
  const list = /^list(?: of (.+))?$/.exec(unitWords.trim());
  if (list !== null) return text === '' ? { problems } : listValue(text, list[1] ?? '', at, counted);
  const unit = readUnit(unitWords, counted);
  if ('unknown' in unit) {
    const remedy = unit.nearest === null ? unitRemedy : `Did you mean \`${unit.nearest}\`? ${unitRemedy}`;
    tell(unitWords, 'unit', { code: 'not-a-unit', wanted: 'a known unit', remedy });
    return { problems };
  }
  const number = typeof value === 'number' && Number.isFinite(value) ? value : numberIn(text);
  if (number === null && unitWords.trim() !== '' && text !== '') tell(text, 'value', noNumber(unitWords.trim()));
  if (problems.length > 0) return { problems };
  if (number !== null) return givenNumber((number * unit.factor) / unit.divisor, unit.unit);
  const day = dayOf(text);
  return day === null ? { kind: 'text', text, accounts: [] } : { kind: 'date', day, accounts: [] };
}

/** The values of a list, with commas between; thousands cannot be set off there. */
function listValue(
  text: string,
  unitWords: string,
  at: InputPlace,
  counted: Iterable<string>,
): Evaluated | { readonly problems: readonly Problem[] } {
  const things = [...counted];
  const items: ListValue['items'][number][] = [];
  let offset = 0;
  for (const part of text.split(',')) {
    const start = offset + part.length - part.trimStart().length;
    offset += part.length + 1;
    const value = { ...at.value, column: at.value.column + start };
    const item = inputValue(part, unitWords, { value, unit: at.unit }, things);
    if (!('kind' in item)) return item;
    if (item.kind !== 'number' && item.kind !== 'text' && item.kind !== 'date') {
      const mistake = { code: 'not-a-unit', wanted: 'the unit of each value of the list', remedy: unitRemedy };
      return { problems: [problemAt({ text: unitWords, at: at.unit }, { offset: 0, end: unitWords.length }, mistake)] };
    }
    const [first] = items;
    if (first !== undefined && first.kind !== item.kind) {
      const mistake = {
        code: 'wrong-kind',
        wanted: `a ${first.kind} like the first value of the list`,
        remedy: oneKind,
      };
      return { problems: [problemAt({ text: part.trim(), at: value }, { offset: 0, end: part.length }, mistake)] };
    }
    items.push(item);
  }
  return { kind: 'list', items, accounts: [] };
}

const oneKind = 'Give all values of a list as numbers, all as dates or all as texts.';

const unitRemedy = 'Units are words such as `minutes`, `dollars an hour`, `staff hours`, `percent` or `inspections`.';

const noValue: Mistake = { code: 'no-value', wanted: 'a value', remedy: 'Write a number, a date or a text.' };

function noNumber(unit: string): Mistake {
  return {
    code: 'not-a-number',
    wanted: `a number, in ${unit}`,
    remedy: 'Write digits with at most one decimal point.',
  };
}
