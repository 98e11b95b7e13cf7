import { type Column, codeArray, type NumberColumn, type TextColumn } from '../../record/column.js';
import { heldColumn } from '../../record/dictionary-bytes.js';
import { type CodeField, type Field, holdsNumbers, type TableDefinition, type TableName } from '../../record/field.js';
import type { Records, RecordTable } from '../../record/records.js';
import { tables } from '../../record/tables.js';
import { type Draft, type DraftColumn, noDay } from '../draft.js';
import { Interner } from '../interner.js';
import { countKept } from '../kept-values.js';
import type { FileReading } from '../read-file.js';

/** The rows set aside of one file that belong to a table: its own, or those folded out of its checklist. */
interface Part {
  readonly file: string;
  readonly draft: Draft;
  readonly rows: Uint32Array;
  /** How many records each row gives. */
  readonly width: number;
  readonly isFolded: boolean;
}

function partsOf(table: TableDefinition, readings: readonly FileReading[]): readonly Part[] {
  return readings.flatMap(({ draft, file, joined }): readonly Part[] => {
    const isFolded = draft.fold?.table === table;
    if (!isFolded && draft.table !== table) return [];
    const rows = new Uint32Array(draft.rowCount - countKept(draft.aside, draft.rowCount) - joined.size);
    for (let row = 0, at = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1 && !joined.has(row)) rows[at++] = row;
    }
    return [{ file, draft, rows, width: isFolded ? draft.fold!.columns.length : 1, isFolded }];
  });
}

/** What each cell of a checklist says of a field, row by row. */
function putFolded({ draft, rows, width }: Part, { name }: Field, codes: Uint32Array, texts: Interner): void {
  const fold = draft.fold!;
  const codeOf = (text: string | undefined) => (text === undefined ? 0 : texts.codeOfText(text));
  const isFixed = name === 'component' || name === 'side';
  const fixed = isFixed && rows.length > 0 ? fold.columns.map((column) => codeOf(column[name])) : [];
  const said = [0, ...[...fold.values.values()].map((value) => codeOf(value.get(name)))];
  for (let at = 0; at < codes.length; at++) {
    const column = at % width;
    const cell = rows[(at - column) / width]! * width + column;
    codes[at] = isFixed ? fixed[column]! : said[draft.folded[cell]!]!;
  }
}

function putTexts({ rows }: Part, { values, interner, field }: DraftColumn, codes: Uint32Array, texts: Interner): void {
  if (interner !== null) putNumbered(values as Uint32Array, rows, codes, interner, texts);
  else if (field.type === 'code') putListed(values as Uint8Array, rows, codes, field, texts);
}

function putListed(values: Uint8Array, rows: Uint32Array, codes: Uint32Array, field: CodeField, texts: Interner): void {
  const listed = field.codes.codes;
  // By the place in the code list, from 1; 0 where the code was not met yet.
  const known = new Uint32Array(listed.length + 1);
  for (let at = 0; at < rows.length; at++) {
    const value = values[rows[at]!]!;
    if (value === 0) continue;
    if (known[value] === 0) known[value] = texts.codeOfText(listed[value - 1]!.code);
    codes[at] = known[value]!;
  }
}

function putNumbered(
  values: Uint32Array,
  rows: Uint32Array,
  codes: Uint32Array,
  interner: Interner,
  texts: Interner,
): void {
  let above = 0;
  let code = 0;
  for (let at = 0; at < rows.length; at++) {
    const value = values[rows[at]!]!;
    if (value === 0) continue;
    // Rows of one inspection mostly follow each other.
    if (value !== above) code = texts.codeFrom(interner, value);
    above = value;
    codes[at] = code;
  }
}

function textsOf(field: Field, parts: readonly Part[], wide: Uint32Array): TextColumn {
  // Texts are numbered in order of first appearance.
  const texts = new Interner();
  wide.fill(0);
  let first = 0;
  for (const part of parts) {
    const codes = wide.subarray(first, first + part.rows.length * part.width);
    const drafted = part.draft.columns.get(field.name);
    if (part.isFolded) putFolded(part, field, codes, texts);
    else if (drafted !== undefined) putTexts(part, drafted, codes, texts);
    first += codes.length;
  }
  const codes = codeArray(wide.length, texts.size);
  codes.set(wide);
  return heldColumn(codes, texts.takeAll());
}

function numbersOf(field: Field, parts: readonly Part[], rowCount: number): NumberColumn {
  const values = field.type === 'date' ? new Int32Array(rowCount) : new Float64Array(rowCount);
  const missing = new Uint8Array(rowCount).fill(1);
  let first = 0;
  for (const { draft, rows, width, isFolded } of parts) {
    const drafted = isFolded ? undefined : draft.columns.get(field.name)?.values;
    if (drafted instanceof Int32Array) putDays(drafted, rows, values as Int32Array, missing, first);
    else if (drafted !== undefined) putNumbers(drafted as Float64Array, rows, values as Float64Array, missing, first);
    first += rows.length * width;
  }
  return { kind: 'number', values, missing: missing.includes(1) ? missing : null };
}

function putDays(from: Int32Array, rows: Uint32Array, to: Int32Array, missing: Uint8Array, first: number): void {
  for (let at = 0; at < rows.length; at++) {
    const value = from[rows[at]!]!;
    if (value === noDay) continue;
    to[first + at] = value;
    missing[first + at] = 0;
  }
}

function putNumbers(from: Float64Array, rows: Uint32Array, to: Float64Array, missing: Uint8Array, first: number): void {
  for (let at = 0; at < rows.length; at++) {
    const value = from[rows[at]!]!;
    if (Number.isNaN(value)) continue;
    to[first + at] = value;
    missing[first + at] = 0;
  }
}

function asideTable(table: TableDefinition, readings: readonly FileReading[]): RecordTable {
  const parts = partsOf(table, readings);
  const rowCount = parts.reduce((sum, { rows, width }) => sum + rows.length * width, 0);
  // The codes of one column before it is known how many texts it has; all columns share it.
  const wide = new Uint32Array(rowCount);
  const columnOf = (field: Field): Column => {
    return holdsNumbers(field) ? numbersOf(field, parts, rowCount) : textsOf(field, parts, wide);
  };
  const fileOf = new Uint16Array(rowCount);
  const lineOf = new Uint32Array(rowCount);
  let at = 0;
  for (const [place, { draft, rows, width }] of parts.entries()) {
    fileOf.fill(place, at, at + rows.length * width);
    for (const row of rows) {
      for (const end = at + width; at < end; at++) lineOf[at] = draft.places.lineOf(row);
    }
  }
  return {
    definition: table,
    rowCount,
    columns: new Map(table.fields.map((field) => [field.name, columnOf(field)])),
    origin: { files: parts.map(({ file }) => file), fileOf, lineOf },
  };
}

/**
 * The rows of all drafts that are set aside, as far as they could be read, in order of file and line: should what they
 * refer to come later, they need not be read again.
 */
export function asideRecords(readings: readonly FileReading[]): Records {
  const byName = tables.map((table): [TableName, RecordTable] => [table.name, asideTable(table, readings)]);
  return Object.fromEntries(byName) as Record<TableName, RecordTable>;
}
