import { yesNo } from './codes.js';
import type {
  CodeField,
  CodeList,
  DateField,
  InstantField,
  NumberField,
  ReferenceField,
  TableName,
  TextField,
} from './field.js';

type Need = { readonly required?: true };
const must: Need = { required: true };

/** A text field; `pattern` must match the whole text. */
export const text = (name: string, meaning: string, pattern?: string): TextField =>
  pattern === undefined ? { type: 'text', name, meaning } : { type: 'text', name, meaning, pattern };
/** A pseudonym field. */
export const pseudonym = (name: string, meaning: string) => ({ type: 'pseudonym', name, meaning }) as const;
/** A field of one code list. */
export const code = (name: string, codes: CodeList, meaning: string): CodeField => ({
  type: 'code',
  name,
  codes,
  meaning,
});
/** A field that says yes or no. */
export const yesOrNo = (name: string, meaning: string): CodeField => code(name, yesNo, meaning);
/** A field that holds the key of a row in another table. */
export const reference = (name: string, to: TableName, meaning: string): ReferenceField => ({
  type: 'reference',
  name,
  to,
  meaning,
});
/** A date field. */
export const date = (name: string, meaning: string): DateField => ({ type: 'date', name, meaning });
/** An instant field. */
export const instant = (name: string, meaning: string): InstantField => ({ type: 'instant', name, meaning });
/** A number field with its unit and bounds. */
export const number = (
  name: string,
  unit: string,
  bounds: readonly [number, number],
  meaning: string,
): NumberField => ({
  type: 'number',
  name,
  unit,
  least: bounds[0],
  most: bounds[1],
  meaning,
});
/** A whole-number field with its unit and bounds. */
export const integer = (
  name: string,
  unit: string,
  bounds: readonly [number, number],
  meaning: string,
): NumberField => ({
  ...number(name, unit, bounds, meaning),
  type: 'integer',
});
/** The same field, without which a row is set aside. */
export const needed = <F extends object>(field: F): F & Need => ({ ...field, ...must });
