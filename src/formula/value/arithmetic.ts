import type { Environment } from '../environment.js';
import type { ArithmeticOperator } from '../tree.js';
import { type Conversion, convert } from '../unit/convert.js';
import { divideUnits, multiplyUnits } from '../unit/product.js';
import { sumUnits } from '../unit/sum.js';
import type { Unit } from '../unit/unit.js';
import { differenceOfShares } from './difference-of-shares.js';
import type { IntervalFound, NumberValue, Standing } from './evaluated.js';
import { calculate, drawnNumber, type EachNumber, standingOf } from './lift.js';
import { scaledInterval } from './scaled-interval.js';

/** The unit of a calculation with two numbers, and the calculation itself with conversions in it. */
export interface PlannedArithmetic {
  readonly unit: Unit;
  readonly each: EachNumber;
  /** Said when both numbers are there but the result is not. */
  readonly undefinedWhy: string;
}

/** How left and right are calculated with; throws for units that do not go together, which checking has ruled out. */
export function planArithmetic(operator: ArithmeticOperator, left: Unit, right: Unit): PlannedArithmetic {
  if (operator === '+' || operator === '-') {
    const sum = sumUnits(operator, left, right);
    if (!('unit' in sum)) throw new Error(`units were not checked: ${sum.wanted}`);
    const sign = operator === '+' ? 1 : -1;
    const taken: Conversion = sum.right;
    return {
      unit: sum.unit,
      each: (one, other) => one + sign * convert(other, taken),
      undefinedWhy: 'the result is too large to be a number',
    };
  }
  if (operator === '*') {
    const { unit, factor } = multiplyUnits(left, right);
    return { unit, each: (one, other) => one * other * factor, undefinedWhy: 'the result is too large to be a number' };
  }
  const { unit, factor } = divideUnits(left, right);
  const each: EachNumber = (one, other) => (other === 0 ? Number.NaN : (one / other) * factor);
  return { unit, each, undefinedWhy: 'it would be divided by zero' };
}

/** Whether a number stands still: nothing about it is estimated and no resample changes it. */
export function isFixed({ standing, draws }: NumberValue): boolean {
  return standing !== 'estimate' && draws === null;
}

/** A ratio of records says something about a process; dividing by something given only rescales. */
function standing(operator: ArithmeticOperator, left: NumberValue, right: NumberValue): Standing {
  const strongest = standingOf([left, right]);
  if (operator !== '/') return strongest;
  const ratio = right.draws !== null || (left.draws !== null && right.standing !== 'given');
  return ratio ? 'estimate' : strongest;
}

function fewestOf(operator: ArithmeticOperator, left: NumberValue, right: NumberValue): number | null | undefined {
  const added = operator === '+' && left.standing === 'census' && right.standing === 'census';
  return added && left.fewest !== null && right.fewest !== null ? left.fewest + right.fewest : undefined;
}

/** The interval of an estimate that is only scaled and shifted by a number that stands still; null in other cases. */
function keptInterval(
  operator: ArithmeticOperator,
  left: NumberValue,
  right: NumberValue,
  each: EachNumber,
  environment: Environment,
): (() => IntervalFound) | null {
  if (operator === '-') {
    const apart = differenceOfShares(left, right, environment);
    if (apart !== null) return apart;
  }
  const moving = isFixed(right) ? left : isFixed(left) && operator !== '/' ? right : null;
  if (moving?.ownInterval == null) return null;
  const other = moving === left ? right : left;
  if (other.value === null) return null;
  const fixed = other.value;
  const at = (value: number) => (moving === left ? each(value, fixed, 0) : each(fixed, value, 0));
  const own = moving.ownInterval;
  return () => scaledInterval(own(), at(1) - at(0), at(0));
}

/** Left and right added, subtracted, multiplied or divided, with units and whatever interval is due. */
export function arithmetic(
  operator: ArithmeticOperator,
  left: NumberValue,
  right: NumberValue,
  environment: Environment,
): NumberValue {
  const { unit, each, undefinedWhy } = planArithmetic(operator, left.unit, right.unit);
  const fewest = fewestOf(operator, left, right);
  return calculate(
    {
      each,
      operands: [drawnNumber(left), drawnNumber(right)],
      basis: [left, right],
      unit,
      undefinedWhy,
      standing: standing(operator, left, right),
      ownInterval: keptInterval(operator, left, right, each, environment),
      ...(fewest === undefined ? {} : { fewest }),
    },
    environment,
  );
}
