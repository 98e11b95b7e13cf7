import type { Rule } from './rule.js';

function setsAside(code: string, meaning: string, remedy: string): Rule {
  return { code, scope: 'rows and cells', severity: 'sets aside', instead: [], meaning, remedy };
}

/** What can be wrong with one row or cell by itself; a row is set aside whole, since half a row answers nothing. */
export const cellRules: readonly Rule[] = [
  setsAside('ragged-row', 'more or fewer cells than the header has', 'Look for a delimiter in a cell without quotes.'),
  setsAside(
    'merged-cells',
    'the cell is merged with another that has the text, and reads as blank',
    'Part the cells in the sheet, or say merged: spread under dialect where the text holds in each row.',
  ),
  setsAside('unterminated-quote', 'a quote is opened and never properly closed', 'Close it, or double it.'),
  setsAside(
    'torn-quote',
    'a quote within one cell is closed in a later one, as where the delimiter before a quoted cell was lost; in files with private columns',
    'Put the delimiter back; where both quotes belong to texts, quote those cells and double the quotes in them.',
  ),
  setsAside('not-utf-8', 'the cell holds bytes that are no UTF-8', 'Write the cell again in UTF-8.'),
  setsAside('not-utf-16', 'the cell holds half a letter of UTF-16', 'Write the cell again.'),
  setsAside('not-windows-1252', 'the cell holds bytes that windows-1252 does not have', 'Write the cell again.'),
  setsAside('missing-value', 'a field that every row must have is empty', 'Fill it in from the form.'),
  setsAside('not-a-number', 'the cell is no number', 'Write digits only, without a unit.'),
  setsAside('not-a-whole-number', 'the field is counted in whole numbers', 'Write a whole number.'),
  setsAside('out-of-range', 'beyond what any honest value can be', 'Compare with the form, and look at the unit.'),
  setsAside('not-a-date', 'no day of the calendar in the order declared', 'Write a day that the calendar has.'),
  setsAside('not-a-time', 'no date and time in the order declared', 'Write both, in that order.'),
  setsAside('no-such-local-time', 'the clocks skipped this time in spring', 'Compare with the form.'),
  setsAside('ambiguous-local-time', 'the clocks showed this time twice in autumn', 'Set repeated: first or second.'),
  setsAside('unknown-code', 'a code never seen before', 'Mend the cell, or add the code; the nearest is offered.'),
  setsAside('does-not-match', 'the text is not written as its field must be', 'Mend the cell.'),
  setsAside('unknown-unit', 'the number has no unit that its field can be in', 'Write the unit, as in 22 ft.'),
  setsAside(
    'not-as-declared',
    'the text does not hold its value where the crosswalk says, or holds more than one',
    'Mend the cell, or the settings within and several.',
  ),
  setsAside('unknown-time-zone', 'no IANA time zone has that name', 'Write it as in America/Denver.'),
  setsAside(
    'unknown-prefix',
    'the registration begins with none of the prefixes of 33 CFR 173 appendix A, nor of the crosswalk',
    'Mend the cell, or give the prefix its region under codes.',
  ),
];
