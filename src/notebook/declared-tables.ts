import type { TableOf } from '../formula/outer-names.js';
import { parseFormula } from '../formula/parse.js';
import type { Formula } from '../formula/tree.js';
import type { Book, BookField, BookTable } from '../record/book.js';
import type { Declared } from './declared.js';
import type { SheetDeclaration } from './document.js';

/** The table that a formula names rows of; null where it names none. */
function baseOf({ body }: Formula): string | null {
  if (body.kind === 'name') return body.name;
  return body.kind === 'rows' ? (body.base?.name ?? null) : null;
}

const nowhere = { file: '', line: 1, column: 1 };

function baseIn(text: string): string | null {
  const read = parseFormula(text, nowhere);
  return 'tree' in read ? baseOf(read.tree) : null;
}

/** The names of a sheet's columns and keys, as a table has fields; nothing is in it yet. */
function namesOfSheet({ name, maker, columns }: SheetDeclaration): BookTable | null {
  // A finding brings columns of its own, which nobody knows before it is asked.
  if (maker.kind === 'finding') return null;
  const names = [...maker.fields.map(({ text }) => text), ...columns.map((column) => column.name.text)];
  const field = (own: string): BookField => {
    return { name: own, kind: 'number', unit: null, codes: null, labels: null, meaning: '' };
  };
  return {
    name: name.text,
    row: '',
    counted: 'rows',
    rowCount: 0,
    fields: new Map(names.map((own) => [own, field(own)])),
    column: (own) => {
      throw new Error(`${own} has not been computed`);
    },
    clusterOf: null,
    origin: null,
  };
}

/**
 * Which table the rows of a name are of, told from the document alone, before anything is computed. `group` is the table of
 * a sheet's own rows.
 */
export function declaredTables(
  declared: ReadonlyMap<string, Declared>,
  book: Book,
  group: BookTable | null = null,
): TableOf {
  const resolve = (name: string, way: readonly string[]): BookTable | null => {
    const item = declared.get(name);
    if (item === undefined) return book.tables.get(name) ?? null;
    if (item.kind === 'sheet') return namesOfSheet(item.sheet);
    if (item.kind !== 'selection' || way.includes(name)) return null;
    const base = baseIn(item.selection.rows.text);
    return base === null ? null : resolve(base, [...way, name]);
  };
  return (base) => (base === null ? group : resolve(base, []));
}

/** The table of the rows that fill a sheet, told from the document alone; null where it is not known. */
export function groupTable(
  { maker }: SheetDeclaration,
  declared: ReadonlyMap<string, Declared>,
  book: Book,
): BookTable | null {
  const base = baseIn(maker.rows.text);
  return base === null ? null : declaredTables(declared, book)(base);
}
