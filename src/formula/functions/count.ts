import { unitOf } from '../unit/unit.js';
import { countedWord } from '../unit/word.js';
import { countOf } from '../value/census.js';
import { numberFrom } from '../value/number.js';
import { rowsGiven, type WholeFunction } from './declaration.js';

/** How many rows there are. */
export const count: WholeFunction = {
  works: 'on the whole',
  drawsRowsAgain: true,
  name: 'count',
  arguments: [{ name: 'rows', takes: 'rows' }],
  gives: 'a number in what the table’s rows are counted in',
  meaning:
    'How many rows there are. A count is a census of what was recorded and has no interval. Where its condition asks for what none of the rows says, it is missing, and not 0.',
  example: 'count(inspections where outcome is "intercepted")',
  kindOf: ([rows]) => ({ kind: 'number', unit: rows!.counted }),
  overSheet: ({ rows, cautions }, environment) =>
    numberFrom({ value: rows.length, unit: unitOf(countedWord('rows')), standing: 'census', cautions }, environment),
  evaluate: ([rows], { environment }) => countOf(rowsGiven(rows), environment),
};
