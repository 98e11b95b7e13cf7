import type { EachFunction } from './declaration.js';

const sameUnit = 'a number in the unit of the first number';

/** One of two numbers, by a condition. */
export const choose: EachFunction = {
  works: 'on each',
  name: 'if',
  arguments: [
    { name: 'condition', takes: 'truth' },
    { name: 'then', takes: 'number' },
    { name: 'otherwise', takes: 'number' },
  ],
  more: false,
  gives: sameUnit,
  meaning: 'The one number where the condition is true and the other where it is false; missing where it is unknown.',
  example: 'if(inspected > 1000, 1, 0)',
  each: (truth, then, otherwise) => (truth === 1 ? then : truth === 0 ? otherwise : Number.NaN),
};

/** The first of two numbers that is not missing. */
export const firstKnown: EachFunction = {
  works: 'on each',
  name: 'first_known',
  arguments: [
    { name: 'value', takes: 'number' },
    { name: 'otherwise', takes: 'number' },
  ],
  more: true,
  gives: sameUnit,
  meaning: 'The first of the numbers that is not missing.',
  example: 'first_known(staff_cost, 0)',
  each: (value, otherwise) => (Number.isNaN(value) ? otherwise : value),
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
