import { byNaturalOrder } from '../../finding/natural-order.js';
import { fieldGiven, type WholeFunction } from './declaration.js';
import { keepRows } from './present-numbers.js';

/** More texts than this and the rest is only counted. */
const most = 40;

/** The different texts of a field, one behind the other. */
export const listed: WholeFunction = {
  works: 'on the whole',
  name: 'listed',
  arguments: [{ name: 'field of rows', takes: 'any field' }],
  gives: 'a text',
  meaning: `The different texts of the field among the rows, in natural order with commas between, at most ${most} of them. Missing is none of them.`,
  example: 'listed(station of inspections where outcome is "intercepted")',
  kindOf: ([field]) =>
    field!.kind.kind === 'text'
      ? { kind: 'text', codes: null, text: null }
      : { argument: 0, code: 'wrong-kind', wanted: 'a text field', remedy: 'Name a field that holds texts.' },
  evaluate: ([field]) => {
    const { selected, values } = fieldGiven(field);
    if (values.kind !== 'text') throw new Error('a text field was not checked');
    const { codes, dictionary } = values;
    const seen = [...new Set(codes)].filter((code) => code !== 0).map((code) => dictionary[code]!);
    const texts = seen.sort(byNaturalOrder);
    const rest = texts.length - most;
    const text = texts.slice(0, most).join(', ') + (rest > 0 ? ` and ${rest} more` : '');
    const { account } = keepRows(selected, (position) => codes[position] !== 0);
    return { kind: 'text', text: text === '' ? null : text, accounts: [account], why: 'no row has the field' };
  },
};
