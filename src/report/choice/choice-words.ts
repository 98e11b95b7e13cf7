import { inWords } from '../anchor.js';

/** What a page says of a reader's choice, in one place and ready for another language. */
export const choiceWords = {
  head: 'Choose what is counted',
  all: 'all',
  everything: 'Show everything',
  noScript: 'Choosing needs the page’s script. Without it the page shows all of its records.',
  unable: 'This browser is too old for choosing; the page shows all of its records.',
  working: 'Counting again …',
  failed: 'This choice could not be counted here; the page shows what it showed before.',
  shownAll: 'Shown: all records of this page.',
  shown: (parts: readonly string[]): string => `Shown: ${parts.join('; ')}.`,
  field: (label: string, value: string): string => `${label} ${value}`,
  input: (name: string, value: string, before: string): string =>
    `${inWords(name)} ${value} instead of the notebook’s ${before}`,
  notNarrowed: (tables: string, fields: string): string =>
    `Not narrowed by ${fields}, which their records do not have: ${tables}.`,
  wholeNames: (names: string): string =>
    `Over all records whatever is chosen, since no page carries what tells craft or people apart: ${names}.`,
  stillChart: 'This chart shows all records of the page, whatever is chosen.',
  lines: 'Files and lines of the records behind a value stand in the accounts of the page as it was made.',
} as const;
