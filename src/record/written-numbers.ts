import { months } from './calendar-names.js';

/** How a place writes numbers, money and days. */
export interface NumberWriting {
  /** Between groups of three digits. */
  readonly group: string;
  /** Before the decimals. */
  readonly decimal: string;
  /** Where the sign of the dollar stands. */
  readonly dollar: 'before' | 'after';
  /** Days with the month’s name, `Jun 1, 2025`, or in numbers, `2025-06-01`, which are the same in every language. */
  readonly day: 'named' | 'numbered';
}

const noBreak = '\u00a0';

/**
 * How numbers are written in each locale that a notebook may name. Declared here and not asked of the machine, whose tables
 * change between releases, so that the same notebook gives the same bytes. Source: Unicode CLDR 44, to which the tests hold it:
 * numbers of en, en-CA and fr-CA; days in the medium form of en, and in the short one of en-CA and fr-CA.
 */
export const numberWritings = {
  'en-US': { group: ',', decimal: '.', dollar: 'before', day: 'named' },
  'en-CA': { group: ',', decimal: '.', dollar: 'before', day: 'numbered' },
  'fr-CA': { group: noBreak, decimal: ',', dollar: 'after', day: 'numbered' },
} as const satisfies Readonly<Record<string, NumberWriting>>;

/** A locale by which a page writes its numbers. */
export type LocaleName = keyof typeof numberWritings;

/** The locale of a notebook that names none. */
export const usualLocale: LocaleName = 'en-US';

let current: LocaleName = usualLocale;

/** The locale in which numbers are being written. */
export function currentLocale(): LocaleName {
  return current;
}

/**
 * What `make` gives, with every number that is written meanwhile in a locale; afterwards numbers are written as before. `make`
 * must be done when it returns: nothing that it starts may write a number later.
 */
export function writtenIn<Made>(locale: LocaleName | undefined, make: () => Made): Made {
  const before = current;
  current = locale ?? usualLocale;
  try {
    return make();
  } finally {
    current = before;
  }
}

/** A number as `toFixed` or `String` gives it, written in the locale: groups of three digits, and a true minus sign. */
export function writtenNumber(fixed: string, grouped = true): string {
  const { group, decimal } = numberWritings[current];
  const [whole, part] = fixed.replace('-', '−').split('.');
  const groups = grouped ? whole!.replace(/\B(?=(?:\d{3})+$)/g, group) : whole!;
  return part === undefined ? groups : groups + decimal + part;
}

/** Words of the program with numbers in them, such as `per 1,000` or `99.8 %`, with those numbers in the locale. */
export function writtenWords(words: string): string {
  const { group, decimal } = numberWritings[current];
  return words
    .replace(/(?<![\d.,])\d{1,3}(?:,\d{3})+(?![\d,])/g, (number) => number.replaceAll(',', group))
    .replace(/(?<=\d)\.(?=\d+ %)/g, decimal);
}

/** Words with days in them as ISO 8601 has them, `2025-06-01`, with those days in the locale. */
export function writtenDays(words: string): string {
  if (numberWritings[current].day === 'numbered') return words;
  return words.replace(/(?<![\d-])(\d{4})-(0[1-9]|1[0-2])-(\d{2})(?![\d-])/g, (_, year, month, day) => {
    return `${months[Number(month) - 1]!.slice(0, 3)} ${Number(day)}, ${year}`;
  });
}
