import type { Environment } from '../environment.js';
import type { FormulaKind } from '../kind.js';
import { holdsTemperature } from '../unit/convert.js';
import { divideUnits } from '../unit/product.js';
import { arithmetic } from '../value/arithmetic.js';
import type { NumberValue } from '../value/evaluated.js';
import { numberFrom } from '../value/number.js';
import { isShare, proportion } from '../value/proportion.js';
import { type ArgumentMistake, type CheckedArgument, numberGiven, type WholeFunction } from './declaration.js';

function kindOf([over, under]: readonly CheckedArgument[]): FormulaKind | ArgumentMistake {
  if (over!.kind.kind !== 'number' || under!.kind.kind !== 'number') return { kind: 'unknown' };
  const units = [over!.kind.unit, under!.kind.unit] as const;
  const heated = units.findIndex(holdsTemperature);
  if (heated >= 0) {
    const remedy = 'Divide temperature differences.';
    return { argument: heated, code: 'units-differ', wanted: 'something with a true zero', remedy };
  }
  return { kind: 'number', unit: divideUnits(...units).unit };
}

function quotient(over: NumberValue, under: NumberValue, environment: Environment): NumberValue {
  if (over.value !== null && under.value !== null && isShare(over, under)) return proportion(over, under, environment);
  const ratio = arithmetic('/', over, under, environment);
  if (ratio.standing !== 'estimate') return ratio;
  const caution = 'a ratio, not a share: what is counted above is not part of what is counted below';
  return numberFrom({ ...ratio, cautions: [...ratio.cautions, caution] }, environment);
}

const words = {
  works: 'on the whole',
  arguments: [
    { name: 'cases', takes: 'number' },
    { name: 'of', takes: 'number' },
  ],
  gives: 'a plain number with numerator, denominator and interval',
  kindOf,
  evaluate: ([over, under], { environment }) =>
    quotient(numberGiven(over).value, numberGiven(under).value, environment),
} satisfies Partial<WholeFunction>;

/** Cases by the count they are part of, with the exact interval for station-days. */
export const rate: WholeFunction = {
  ...words,
  name: 'rate',
  meaning:
    'Cases by the count of rows that they are among, such as interceptions by inspections. Its interval is exact at the effective number of station-days (Korn and Graubard 1998); over rows that the cases are not among it is a ratio, and says so.',
  example: 'rate(intercepted, inspected)',
};

/** The same as a rate, for readers who think in shares. */
export const share: WholeFunction = {
  ...words,
  name: 'share',
  meaning: 'The share that a count has in another: the same value and interval as a rate, usually shown in percent.',
  example: 'share(count(inspections where extent is "full"), count(inspections))',
};

/** One number by another, with resampled limits where records stand behind it. */
export const ratio: WholeFunction = {
  ...words,
  name: 'ratio',
  arguments: [
    { name: 'over', takes: 'number' },
    { name: 'under', takes: 'number' },
  ],
  gives: 'a number in the one unit by the other, with an interval',
  meaning: 'One number by another, such as dollars an inspection: the same as dividing.',
  example: 'ratio(spent, inspected)',
  evaluate: ([over, under], { environment }) =>
    arithmetic('/', numberGiven(over).value, numberGiven(under).value, environment),
};
