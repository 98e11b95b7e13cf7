import { once } from '../../finding/book/once.js';
import type { Environment } from '../environment.js';
import { plain, type Unit } from '../unit/unit.js';
import type { IntervalFound, NumberValue } from './evaluated.js';
import { intervalFor } from './interval.js';

/** A number that is given: written out, or an input. */
export function givenNumber(value: number | null, unit: Unit = plain, why: string | null = null): NumberValue {
  return {
    kind: 'number',
    value,
    unit,
    why,
    standing: 'given',
    numerator: null,
    denominator: null,
    counted: null,
    shareOf: null,
    draws: null,
    ownInterval: null,
    barred: null,
    fewest: null,
    clusters: () => null,
    cautions: [],
    accounts: [],
    interval: () => noInterval,
  };
}

const noInterval: IntervalFound = { interval: null, why: null, cautions: [] };

/** A number from records, out of what differs from a given one; its interval follows the rule of `intervalFor`. */
export function numberFrom(
  parts: Partial<Omit<NumberValue, 'interval' | 'kind'>> & { readonly value: number | null },
  environment: Environment,
): NumberValue {
  const value = { ...givenNumber(null), ...parts };
  const draws = value.draws === null ? null : once(value.draws);
  const whole = { ...value, draws, clusters: once(value.clusters) };
  return { ...whole, interval: once(() => intervalFor(whole, environment)) };
}
