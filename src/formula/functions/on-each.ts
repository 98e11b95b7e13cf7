import type { EachFunction } from './declaration.js';

const sameUnit = 'a number in the unit of the first number';

/** One of two values, by a condition. */
export const choose: EachFunction = {
  works: 'on each',
  name: 'if',
  arguments: [
    { name: 'condition', takes: 'truth' },
    { name: 'then', takes: 'value' },
    { name: 'otherwise', takes: 'value' },
  ],
  more: false,
  gives: `${sameUnit}, a text or a date`,
  meaning:
    'The one value where the condition is true and the other where it is false; missing where it is unknown. Both are numbers, both texts or both dates.',
  example: 'if(inspected > 1000, 1, 0)',
  each: (truth, then, otherwise) => (truth === 1 ? then : truth === 0 ? otherwise : Number.NaN),
  choice: ([truth, then, otherwise]) => (truth === 1 ? then! : truth === 0 ? otherwise! : null),
};

/** The first of several values that is not missing. */
export const firstKnown: EachFunction = {
  works: 'on each',
  name: 'first_known',
  arguments: [
    { name: 'value', takes: 'value' },
    { name: 'otherwise', takes: 'value' },
  ],
  more: true,
  gives: `${sameUnit}, a text or a date`,
  meaning: 'The first of the values that is not missing. All are numbers, all texts or all dates.',
  example: 'first_known(staff_cost, 0)',
  each: (value, otherwise) => (Number.isNaN(value) ? otherwise : value),
  choice: (values) => values.find((value) => value !== null) ?? null,
};

/** A number without its sign. */
export const absolute: EachFunction = {
  works: 'on each',
  name: 'abs',
  arguments: [{ name: 'number', takes: 'number' }],
  more: false,
  gives: 'a number in the same unit',
  meaning: 'The number without its sign.',
  example: 'abs(spent - planned)',
  each: (number) => Math.abs(number),
};

/** The smallest of several numbers. */
export const smallest: EachFunction = {
  works: 'on each',
  name: 'min',
  arguments: [
    { name: 'number', takes: 'number' },
    { name: 'number', takes: 'number' },
  ],
  more: true,
  gives: sameUnit,
  meaning: 'The smallest of the numbers; missing when one of them is. The lowest value of a field is `lowest`.',
  example: 'min(target, 90)',
  each: (one, other) => Math.min(one, other),
};

/** The largest of several numbers. */
export const largest: EachFunction = {
  ...smallest,
  name: 'max',
  meaning: 'The largest of the numbers; missing when one of them is. The highest value of a field is `highest`.',
  example: 'max(planned - spent, 0)',
  each: (one, other) => Math.max(one, other),
};
