import { dayAsText } from '../finding/book/calendar.js';
import type { Result } from './result.js';
import { describeUnit } from './unit/unit.js';
import type { DateValue, Evaluated, NumberValue, TextValue } from './value/evaluated.js';
import { leftOpen } from './value/left-open.js';

/**
 * A value as notebooks, charts and reports see it, with its interval worked out. A selection is told as the number of its
 * rows; a text, date or truth that is not there is missing.
 */
export function resultOf(evaluated: Evaluated): Result {
  switch (evaluated.kind) {
    case 'number': {
      const { value, unit, numerator, denominator, why, cautions, standing } = evaluated;
      const found = evaluated.interval();
      return {
        kind: 'number',
        value,
        unit: describeUnit(unit),
        numerator,
        denominator,
        interval: found.interval,
        why: value === null ? (why ?? 'it is missing') : found.why,
        cautions: [...new Set([...cautions, ...found.cautions, ...(value === null ? [] : leftOpen(evaluated))])],
        ...(standing === 'given' ? { given: true as const } : {}),
      };
    }
    case 'text':
      return evaluated.text === null ? missing(evaluated) : { kind: 'text', text: evaluated.text };
    case 'date':
      return evaluated.day === null ? missing(evaluated) : { kind: 'date', day: evaluated.day };
    case 'truth':
      return evaluated.truth === null
        ? { kind: 'missing', why: 'a value that it compares is missing' }
        : { kind: 'truth', truth: evaluated.truth };
    case 'rows': {
      const none = { numerator: null, denominator: null, interval: null, why: null, cautions: [] };
      return { kind: 'number', value: evaluated.counted.rows.length, unit: evaluated.table, ...none };
    }
    case 'list':
      return { kind: 'text', text: evaluated.items.map(itemText).join(', ') };
    case 'sheet':
      return { kind: 'text', text: `the sheet ${evaluated.name}` };
    case 'problem':
      return { kind: 'problem', problems: evaluated.problems };
  }
}

function itemText(item: NumberValue | TextValue | DateValue): string {
  if (item.kind === 'number') return String(item.value);
  return (item.kind === 'text' ? item.text : item.day === null ? null : dayAsText(item.day)) ?? 'missing';
}

function missing({ why }: TextValue | DateValue): Result {
  return { kind: 'missing', why: why ?? 'it is missing' };
}
