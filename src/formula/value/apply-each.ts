import type { Environment } from '../environment.js';
import type { EachFunction } from '../functions/declaration.js';
import { conversion, convert } from '../unit/convert.js';
import type { Unit } from '../unit/unit.js';
import type { NumberValue, TruthValue } from './evaluated.js';
import { calculate, type Drawn, drawnNumber, drawnTruth } from './lift.js';
import { scaledInterval } from './scaled-interval.js';

/** An argument of a function on each: a truth or a number; one written out takes the unit of the others. */
export interface EachArgument {
  readonly value: NumberValue | TruthValue;
  readonly written: boolean;
}

/** A number in another unit, with its interval. */
export function scaledTo(number: NumberValue, unit: Unit, environment: Environment): NumberValue {
  const step = conversion(number.unit, unit);
  if (step === null) throw new Error('units were not checked');
  if (step.factor === 1 && step.shift === 0) return number;
  const own = number.ownInterval;
  return calculate(
    {
      each: (value) => convert(value, step),
      operands: [drawnNumber(number)],
      basis: [number],
      unit,
      undefinedWhy: 'it is too large to be a number',
      ownInterval: own === null ? null : () => scaledInterval(own(), step.factor, step.shift),
    },
    environment,
  );
}

/** A function on each number, worked out for single values and for every resample. */
export function applyEach(
  declaration: EachFunction,
  given: readonly EachArgument[],
  environment: Environment,
): NumberValue {
  const first = given.find(({ value }) => value.kind === 'number')!.value as NumberValue;
  const numbers = given.map(({ value, written }) =>
    value.kind !== 'number'
      ? value
      : written
        ? { ...value, unit: first.unit }
        : scaledTo(value, first.unit, environment),
  );
  const join = (parts: readonly (NumberValue | TruthValue)[]): NumberValue =>
    calculate(
      {
        each: declaration.each,
        operands: parts.map((part): Drawn => (part.kind === 'number' ? drawnNumber(part) : drawnTruth(part))),
        basis: parts.flatMap((part) => (part.kind === 'number' ? [part] : part.basis)),
        unit: first.unit,
        undefinedWhy: 'its condition is unknown, because a value in it is missing',
      },
      environment,
    );
  if (!declaration.more) return join(numbers);
  const [lead, ...rest] = numbers;
  return rest.reduce<NumberValue>((so, number) => join([so, number]), lead as NumberValue);
}
