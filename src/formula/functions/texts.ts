import type { FormulaKind } from '../kind.js';
import type { PlainFunction } from './declaration.js';

const anyText: FormulaKind = { kind: 'text', codes: null, text: null };

const ofOneText = {
  works: 'on values',
  more: false,
  arguments: [{ name: 'text', takes: 'text' }],
  gives: 'a text',
  result: anyText,
} satisfies Partial<PlainFunction>;

const ofTextAndPart = {
  works: 'on values',
  more: false,
  arguments: [
    { name: 'text', takes: 'text' },
    { name: 'part', takes: 'text' },
  ],
  gives: 'true or false',
  result: { kind: 'truth' },
} satisfies Partial<PlainFunction>;

/** Texts one behind the other. */
export const joined: PlainFunction = {
  works: 'on values',
  more: true,
  name: 'joined',
  arguments: [
    { name: 'text', takes: 'text' },
    { name: 'text', takes: 'text' },
  ],
  gives: 'a text',
  meaning: 'The texts one behind the other, with nothing between them; missing when one of them is.',
  example: 'joined("May", " to ", "September")',
  result: anyText,
  each: (...texts) => texts.join(''),
};

/** A text in small letters. */
export const lowerCase: PlainFunction = {
  ...ofOneText,
  name: 'lower_case',
  meaning: 'The text in small letters, by the rules of Unicode and of no one language.',
  example: 'lower_case("Heron Point")',
  each: (text) => String(text).toLowerCase(),
};

/** A text in capital letters. */
export const upperCase: PlainFunction = {
  ...ofOneText,
  name: 'upper_case',
  meaning: 'The text in capital letters, by the rules of Unicode and of no one language.',
  example: 'upper_case("Heron Point")',
  each: (text) => String(text).toUpperCase(),
};

/** Whether a text has another in it. */
export const contains: PlainFunction = {
  ...ofTextAndPart,
  name: 'contains',
  meaning: 'Whether the text has the part anywhere in it. Small and capital letters differ.',
  example: 'count(inspections where contains(station, "point"))',
  each: (text, part) => Number(String(text).includes(String(part))),
};

/** Whether a text begins with another. */
export const startsWith: PlainFunction = {
  ...ofTextAndPart,
  name: 'starts_with',
  meaning: 'Whether the text begins with the part. Small and capital letters differ.',
  example: 'count(inspections where starts_with(station, "heron"))',
  each: (text, part) => Number(String(text).startsWith(String(part))),
};
