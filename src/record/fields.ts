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

/** Builders that keep a table's definition to one line a field; `needed` makes the required ones. */
export const text = (name: string, meaning: string, pattern?: string): TextField =>
  pattern === undefined ? { type: 'text', name, meaning } : { type: 'text', name, meaning, pattern };
export const pseudonym = (name: string, meaning: string) => ({ type: 'pseudonym', name, meaning }) as const;
export const code = (name: string, codes: CodeList, meaning: string): CodeField => ({
  type: 'code',
  name,
  codes,
  meaning,
});
export const yesOrNo = (name: string, meaning: string): CodeField => code(name, yesNo, meaning);
export const reference = (name: string, to: TableName, meaning: string): ReferenceField => ({
  type: 'reference',
  name,
  to,
  meaning,
});
export const date = (name: string, meaning: string): DateField => ({ type: 'date', name, meaning });
export const instant = (name: string, meaning: string): InstantField => ({ type: 'instant', name, meaning });
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
