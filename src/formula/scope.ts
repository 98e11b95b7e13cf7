import type { Book } from '../record/book.js';
import type { Definitions } from './definitions.js';
import type { FormulaKind } from './kind.js';

/** The sheet that a formula is a column of: the table its rows are of, and the fields that its groups share. */
export interface SheetScope {
  /** The sheet's own name, where its rows may be spoken of. */
  readonly name?: string;
  readonly table: string;
  readonly keys: readonly string[];
}

/** The names a formula may use. */
export interface Scope {
  readonly book: Book;
  /** Inputs, figures, selections and, in a sheet, its earlier columns; `unknown` for those that failed. */
  readonly known: ReadonlyMap<string, FormulaKind>;
  readonly sheet: SheetScope | null;
  /** How the names are made; left out where no figure can be asked for with other inputs. */
  readonly definitions?: Definitions;
}

/** What a name means outside `where` and `of`, in the order in which it is looked up. */
export type Meaning =
  | { readonly means: 'known'; readonly kind: FormulaKind }
  | { readonly means: 'key'; readonly table: string }
  | { readonly means: 'table'; readonly table: string };

/** What a name means outside `where` and `of`: an input, figure, selection or column; a key of the sheet; a table; or null. */
export function meaningOf(name: string, { book, known, sheet }: Scope): Meaning | null {
  const kind = known.get(name);
  if (kind !== undefined) return { means: 'known', kind };
  if (sheet?.keys.includes(name)) return { means: 'key', table: sheet.table };
  return book.tables.has(name) ? { means: 'table', table: name } : null;
}

/** Every name that can stand outside `where` and `of`. */
export function namesOfScope({ book, known, sheet }: Scope): readonly string[] {
  return [...known.keys(), ...(sheet?.keys ?? []), ...book.tables.keys()];
}
