import type { BookField, BookTable } from '../record/book.js';
import { recordedUnit } from './unit/read-unit.js';
import { nameUnit, type Unit } from './unit/unit.js';

/** What is known of a sheet before its values are: its keys, what each column gives, and both as a table of records. */
export interface SheetKind {
  readonly kind: 'sheet';
  readonly name: string;
  readonly keys: readonly string[];
  readonly columns: ReadonlyMap<string, FormulaKind>;
  readonly table: BookTable;
}

/** What a formula or a part of it gives. */
export type FormulaKind =
  | { readonly kind: 'number'; readonly unit: Unit }
  /** `codes` are the only texts it may be, null where any may stand; `text` is what it is, where that is known. */
  | { readonly kind: 'text'; readonly codes: readonly string[] | null; readonly text: string | null }
  | { readonly kind: 'date' }
  | { readonly kind: 'instant' }
  | { readonly kind: 'wait' }
  | { readonly kind: 'truth' }
  | { readonly kind: 'rows'; readonly table: string }
  | SheetKind
  /** Several values of one kind, which stand only after `in`. */
  | { readonly kind: 'list'; readonly of: FormulaKind }
  /** Something is wrong with it, and a problem has said what: whatever is built on it says nothing more. */
  | { readonly kind: 'unknown' };

/** The kind of what a problem has been told of. */
export const unknownKind: FormulaKind = { kind: 'unknown' };
/** The kind of a condition. */
export const truthKind: FormulaKind = { kind: 'truth' };

/** The kind of a field's values. */
export function fieldKind(field: BookField): FormulaKind {
  if (field.kind === 'number') return { kind: 'number', unit: recordedUnit(field.unit) };
  if (field.kind === 'text') return { kind: 'text', codes: field.codes, text: null };
  return { kind: field.kind };
}

/** A kind as a phrase that a sentence can hold: `a text`, `a number in minutes`, `rows of inspections`. */
export function describeKind(kind: FormulaKind): string {
  switch (kind.kind) {
    case 'number':
      return kind.unit.length === 0 ? 'a plain number' : `a number in ${nameUnit(kind.unit)}`;
    case 'rows':
      return `rows of ${kind.table}`;
    case 'sheet':
      return `the sheet ${kind.name}`;
    case 'list':
      return 'a list of values';
    case 'truth':
      return 'true or false';
    case 'instant':
      return 'a moment';
    case 'unknown':
      return 'something not known';
    default:
      return `a ${kind.kind}`;
  }
}
