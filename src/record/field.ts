/** One code of a code list: how it is stored, and what it means to the person who records it. */
export interface Code {
  readonly code: string;
  readonly meaning: string;
}

/** A named, ordered list of codes; the order is the order in which reports show them. */
export interface CodeList {
  readonly name: string;
  readonly codes: readonly Code[];
  /** Where the terms come from. */
  readonly source: string;
}

interface AnyField {
  readonly name: string;
  /** What a value means, as a sentence. */
  readonly meaning: string;
  /** A row without this value is set aside. */
  readonly required?: true;
}

/** Free text, or an identifier. `pattern` is an ECMAScript regular expression that the whole text must match. */
export interface TextField extends AnyField {
  readonly type: 'text';
  readonly pattern?: string;
}

/** A keyed hash that stands for a person or a craft; the name behind it is never stored. */
export interface PseudonymField extends AnyField {
  readonly type: 'pseudonym';
}

/** One of a list of codes. */
export interface CodeField extends AnyField {
  readonly type: 'code';
  readonly codes: CodeList;
}

/** The key of a row in another table. */
export interface ReferenceField extends AnyField {
  readonly type: 'reference';
  readonly to: TableName;
}

/** A number with its unit, within bounds (inclusive) that no honest value passes. */
export interface NumberField extends AnyField {
  readonly type: 'number' | 'integer';
  readonly unit: string;
  readonly least: number;
  readonly most: number;
}

/** A calendar date in the station's own time, stored as days since 1970-01-01. */
export interface DateField extends AnyField {
  readonly type: 'date';
}

/** A moment, stored as milliseconds since 1970-01-01T00:00Z. */
export interface InstantField extends AnyField {
  readonly type: 'instant';
}

/** A field of a canonical table: its name, type, meaning, and what its values must be. */
export type Field = TextField | PseudonymField | CodeField | ReferenceField | NumberField | DateField | InstantField;

/** Whether the values of a field are stored as numbers: days and moments are. */
export function holdsNumbers({ type }: Field): boolean {
  return type === 'number' || type === 'integer' || type === 'date' || type === 'instant';
}

/** The canonical tables. */
export type TableName =
  | 'stations'
  | 'station_days'
  | 'waterbodies'
  | 'inspections'
  | 'checks'
  | 'rechecks'
  | 'decontaminations'
  | 'wash_units'
  | 'spending';

/** A canonical table: what one row is, its fields in order, and the fields that together name a row. */
export interface TableDefinition {
  readonly name: TableName;
  /** What one row is, as a noun phrase: `one craft looked over once`. */
  readonly row: string;
  readonly key: readonly string[];
  readonly fields: readonly Field[];
}

/** The field of that name, or null. */
export function fieldOf(table: TableDefinition, name: string): Field | null {
  return table.fields.find((field) => field.name === name) ?? null;
}

/** What the whole text of a field must be like; null where any text will do. */
export function formOf(field: Field): RegExp | null {
  return field.type === 'text' && field.pattern !== undefined ? new RegExp(`^(?:${field.pattern})$`, 'u') : null;
}
