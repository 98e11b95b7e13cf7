import type { Element } from 'hast';
import { h } from 'hastscript';
import { exampleBook } from '../finding/example/example-book.js';
import type { BookField, BookTable } from '../record/book.js';
import { anchor, inWords } from './anchor.js';
import { definitionList } from './definition-list.js';
import { languageWords as words } from './language-words.js';

/** More values than this are not all written down. */
const mostCodes = 40;

function fieldText({ kind, unit, codes, labels, meaning }: BookField): string {
  const isListed = codes !== null && labels === null && codes.length > 0 && codes.length <= mostCodes;
  const values = isListed ? ` ${codes.map((code) => `"${code}"`).join(', ')}.` : '';
  return `${words.fieldKind[kind]}${unit === null ? '' : `, ${unit}`}. ${meaning}${values}`;
}

function tableElements({ name, row, fields }: BookTable): Element[] {
  return [
    h('h3', { id: anchor('table', name) }, [name]),
    h('p', [`${inWords(row)}.`]),
    definitionList([...fields.values()].map((field) => [field.name, fieldText(field)])),
  ];
}

/** Every table that formulas may ask, with its fields, recorded and derived, as the book itself declares them. */
export function tablesOfTheLanguage(): Element[] {
  return [...exampleBook().tables.values()].flatMap(tableElements);
}
