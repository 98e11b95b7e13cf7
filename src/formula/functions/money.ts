import { spreadPrice, yearsToPay } from '../../statistic/money/spread-price.js';
import type { Environment } from '../environment.js';
import { conversion } from '../unit/convert.js';
import { describeUnit, plain, type Unit, unitOf } from '../unit/unit.js';
import { unitWord } from '../unit/word.js';
import { scaledTo } from '../value/apply-each.js';
import type { NumberValue } from '../value/evaluated.js';
import { calculate, drawnNumber } from '../value/lift.js';
import { type ArgumentMistake, type CheckedArgument, numberGiven, type WholeFunction } from './declaration.js';

const years = unitOf(unitWord('years')!);

/** The mistake of the first argument whose unit is not the one wanted; numbers written out take any. */
function misfit(checked: readonly CheckedArgument[], wanted: readonly (Unit | null)[]): ArgumentMistake | null {
  const argument = wanted.findIndex((unit, at) => {
    const { kind, written } = checked[at]!;
    return unit !== null && written === null && kind.kind === 'number' && conversion(kind.unit, unit) === null;
  });
  if (argument < 0) return null;
  const unit = wanted[argument]!;
  const words = unit === plain ? 'a plain share, such as an input in percent' : describeUnit(unit);
  return { argument, code: 'units-differ', wanted: words, remedy: 'Give it that unit, or write the number out.' };
}

/** A number in a unit that it was checked to have; a written one is taken as it is. */
function inUnit({ value, written }: ReturnType<typeof numberGiven>, unit: Unit, environment: Environment): NumberValue {
  return written ? value : scaledTo(value, unit, environment);
}

function unitOfFirst([first]: readonly CheckedArgument[]): Unit {
  return first!.kind.kind === 'number' ? first!.kind.unit : plain;
}

/** A price as equal yearly amounts over a life. */
export const yearlyCost: WholeFunction = {
  works: 'on the whole',
  name: 'yearly_cost',
  arguments: [
    { name: 'price', takes: 'number' },
    { name: 'life', takes: 'number' },
    { name: 'discount', takes: 'number' },
  ],
  gives: 'a number in the price’s unit, for each year of the life',
  meaning:
    'The equal amount at the end of every year that pays a price over a life in years, at a yearly discount as a share: the capital recovery factor times the price. Without discount, the price by the life.',
  example: 'yearly_cost(40000, 8, 0.03)',
  kindOf: (checked) => misfit(checked, [null, years, plain]) ?? { kind: 'number', unit: unitOfFirst(checked) },
  evaluate: ([price, life, discount], { environment }) => {
    const parts = [
      numberGiven(price).value,
      inUnit(numberGiven(life), years, environment),
      inUnit(numberGiven(discount), plain, environment),
    ];
    return calculate(
      {
        each: (cost, lived, rate) => spreadPrice(cost, lived, rate) ?? Number.NaN,
        operands: parts.map(drawnNumber),
        basis: parts,
        unit: parts[0]!.unit,
        undefinedWhy: 'the life must be above 0, and the discount above −1',
      },
      environment,
    );
  },
};

/** Years until yearly savings have paid a price. */
export const yearsToBreakEven: WholeFunction = {
  works: 'on the whole',
  name: 'years_to_break_even',
  arguments: [
    { name: 'price', takes: 'number' },
    { name: 'saved a year', takes: 'number' },
    { name: 'discount', takes: 'number' },
  ],
  gives: 'years; missing where the price is never paid',
  meaning:
    'Years until equal savings at the end of every year, discounted at a yearly share, have paid a price. Missing where they never do: the saving is not above the discount on the price.',
  example: 'years_to_break_even(40000, 9000, 0.03)',
  kindOf: (checked) => {
    const unit = unitOfFirst(checked);
    return misfit(checked, [null, unit, plain]) ?? { kind: 'number', unit: years };
  },
  evaluate: ([price, saved, discount], { environment }) => {
    const cost = numberGiven(price).value;
    const parts = [
      cost,
      inUnit(numberGiven(saved), cost.unit, environment),
      inUnit(numberGiven(discount), plain, environment),
    ];
    return calculate(
      {
        each: (amount, yearly, rate) => yearsToPay(amount, yearly, rate) ?? Number.NaN,
        operands: parts.map(drawnNumber),
        basis: parts,
        unit: years,
        undefinedWhy: 'what is saved in a year never pays it',
      },
      environment,
    );
  },
};
