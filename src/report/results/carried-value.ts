import type { Result } from '../../formula/result.js';
import { showResult } from '../../notebook/shown.js';
import type { CarriedValue } from './page-results.js';

/** A result as a page carries it. What the page does not show of a value is not carried either. */
export function carriedValue(result: Result): CarriedValue {
  switch (result.kind) {
    case 'number': {
      const { value, unit, interval, numerator, denominator, why } = result;
      return {
        value,
        ...(unit === '' ? {} : { unit }),
        ...(interval === null
          ? {}
          : {
              interval: {
                low: interval.low,
                high: interval.high,
                confidence: interval.confidence,
                sides: interval.sides,
              },
            }),
        ...(numerator === null ? {} : { numerator }),
        ...(denominator === null ? {} : { denominator }),
        ...(why === null ? {} : { why }),
      };
    }
    case 'missing':
      return { why: result.why };
    case 'problem':
      return { why: result.problems.map(({ code }) => code).join(' ') };
    default:
      return { text: showResult(result, '') };
  }
}

/** The result that a carried value stands for, so that it is shown as any other; its method stays on the page itself. */
export function resultOf(carried: CarriedValue): Result {
  if (carried.value !== undefined) {
    return {
      kind: 'number',
      value: carried.value,
      unit: carried.unit ?? '',
      numerator: carried.numerator ?? null,
      denominator: carried.denominator ?? null,
      interval: carried.interval === undefined ? null : { ...carried.interval, method: '' },
      why: carried.why ?? null,
      cautions: [],
    };
  }
  return carried.text === undefined
    ? { kind: 'missing', why: carried.why ?? '' }
    : { kind: 'text', text: carried.text };
}
