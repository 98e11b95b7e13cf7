import { type Column, codeArray, type NumberColumn, type TextColumn } from '../record/column.js';
import { type DictionaryBytes, heldColumn } from '../record/dictionary-bytes.js';
import { type CodeField, type Field, holdsNumbers, type TableDefinition } from '../record/field.js';
import type { Origin, RecordTable } from '../record/records.js';
import { AbsentColumns } from './absent-columns.js';
import { type Draft, noDay } from './draft.js';
import type { Growable } from './growing.js';
import type { Interner } from './interner.js';
import { keptLines } from './kept-lines.js';
import { countKept, putKept } from './kept-values.js';
import type { Texts } from './key-space.js';
import type { FileReading } from './read-file.js';
import { renumbered } from './renumbered.js';

/** The kept rows of one file that belong to a table: its own, or those folded out of its checklist. */
interface Part {
  readonly draft: Draft;
  /** How many records each kept row gives. */
  readonly width: number;
  readonly isFolded: boolean;
  readonly kept: number;
}

/** The final numbering of each table's keys, which its references share: by the number used while reading. */
export interface FinalKeys {
  readonly codeOf: Uint32Array;
  readonly texts: DictionaryBytes;
}

function partsOf(table: TableDefinition, readings: readonly FileReading[]): readonly Part[] {
  return readings.flatMap(({ draft }) => {
    const isFolded = draft.fold?.table === table;
    if (!isFolded && draft.table !== table) return [];
    const kept = countKept(draft.aside, draft.rowCount);
    return [{ draft, width: isFolded ? draft.fold!.columns.length : 1, isFolded, kept }];
  });
}

/** Visits each kept row of a checklist with the place of its first record among the table's rows. */
function eachKept(part: Part, first: number, visit: (row: number, at: number) => void): void {
  let at = first;
  for (let row = 0; row < part.draft.rowCount; row++) {
    if (part.draft.aside[row] === 1) continue;
    visit(row, at);
    at += part.width;
  }
}

/**
 * The kept values of one column of the drafts, file after file; missing ones are zeros. A column that one file gave alone is
 * moved together where it lies, and given up by its draft: a season is not held twice.
 */
function keptValues<A extends Growable>(
  parts: readonly Part[],
  rowCount: number,
  empty: (length: number) => A,
  valuesOf: (part: Part) => A | undefined,
): A {
  const [only] = parts;
  if (parts.length === 1 && only?.isFolded === false && only.draft.fold === null) {
    const values = valuesOf(only);
    if (values === undefined) return empty(rowCount);
    putKept(values, only.draft.aside, only.draft.rowCount, values, 0);
    return values.subarray(0, rowCount) as A;
  }
  const gathered = empty(rowCount);
  let first = 0;
  for (const part of parts) {
    const values = valuesOf(part);
    if (values !== undefined && part.isFolded) {
      eachKept(part, first, (row, at) => gathered.fill(values[row]!, at, at + part.width));
    } else if (values !== undefined) putKept(values, part.draft.aside, part.draft.rowCount, gathered, first);
    first += part.kept * part.width;
  }
  return gathered;
}

function finishCodes(field: CodeField, parts: readonly Part[], rowCount: number): TextColumn {
  const dictionary = ['', ...field.codes.codes.map(({ code }) => code)];
  const codes = keptValues(
    parts,
    rowCount,
    (length) => codeArray(length, dictionary.length) as Uint8Array,
    ({ draft, isFolded }) => (isFolded ? undefined : (draft.columns.get(field.name)?.values as Uint8Array)),
  );
  let first = 0;
  for (const part of parts) {
    if (part.isFolded) putFolded(part, field.name, dictionary, codes, first);
    first += part.kept * part.width;
  }
  return { kind: 'text', codes, dictionary };
}

function putFolded(part: Part, name: string, dictionary: readonly string[], codes: Uint8Array, first: number): void {
  const { draft, width } = part;
  const fold = draft.fold!;
  const isFixed = name === 'component' || name === 'side';
  const fixed = fold.columns.map((column) => (isFixed ? dictionary.indexOf(column[name]) : 0));
  const said = [0, ...[...fold.values.values()].map((value) => dictionary.indexOf(value.get(name) ?? ''))];
  eachKept(part, first, (row, at) => {
    for (let column = 0; column < width; column++) {
      codes[at + column] = isFixed ? fixed[column]! : said[draft.folded[row * width + column]!]!;
    }
  });
}

/** The numbers used while reading, row by row; a folded row has its owner's key. */
function gather(field: Field, parts: readonly Part[], rowCount: number): Uint32Array {
  return keptValues(
    parts,
    rowCount,
    (length) => new Uint32Array(length),
    ({ draft, isFolded }) => {
      const ownKey = isFolded && field.type === 'reference' && field.to === draft.table.name;
      if (isFolded && !ownKey) return undefined;
      return draft.columns.get(ownKey ? draft.table.key[0]! : field.name)?.values as Uint32Array | undefined;
    },
  );
}

/** Numbers texts again in order of first appearance among the rows kept; the former numbering is used up. */
function numberAgain(gathered: Uint32Array, texts: Interner): FinalKeys {
  const codeOf = new Uint32Array(texts.size);
  let count = 1;
  for (let row = 0; row < gathered.length; row++) {
    const code = gathered[row]!;
    if (code !== 0 && codeOf[code] === 0) codeOf[code] = count++;
  }
  return { codeOf, texts: texts.takeTexts(codeOf, count) };
}

function finishText(gathered: Uint32Array, { codeOf, texts }: FinalKeys): TextColumn {
  return heldColumn(renumbered(gathered, codeOf, texts.size), texts);
}

function finishNumbers(field: Field, parts: readonly Part[], rowCount: number): NumberColumn {
  const isDate = field.type === 'date';
  const drafted = ({ draft, isFolded }: Part) => (isFolded ? undefined : draft.columns.get(field.name)?.values);
  const values = isDate
    ? keptValues(
        parts,
        rowCount,
        (length) => new Int32Array(length).fill(noDay),
        (part) => drafted(part) as Int32Array,
      )
    : keptValues(
        parts,
        rowCount,
        (length) => new Float64Array(length).fill(Number.NaN),
        (part) => drafted(part) as Float64Array,
      );
  return { kind: 'number', values, missing: takeMissing(values) };
}

/** Which values are missing, null for none; zeros take their places. */
function takeMissing(values: Float64Array | Int32Array): Uint8Array | null {
  let missing: Uint8Array | null = null;
  const isMissing = values instanceof Int32Array ? (value: number) => value === noDay : Number.isNaN;
  for (let row = 0; row < values.length; row++) {
    if (!isMissing(values[row]!)) continue;
    missing ??= new Uint8Array(values.length);
    missing[row] = 1;
    values[row] = 0;
  }
  return missing;
}

/** Which of the parts each record came from. */
function finishFiles(parts: readonly Part[], recordCount: number, absent: AbsentColumns): Origin['fileOf'] {
  if (parts.length <= 1) return absent.codes(1) as Uint8Array;
  const fileOf = parts.length <= 0x100 ? new Uint8Array(recordCount) : new Uint16Array(recordCount);
  let first = 0;
  for (const [index, { kept, width }] of parts.entries()) {
    fileOf.fill(index, first, first + kept * width);
    first += kept * width;
  }
  return fileOf;
}

/** Where the records of a table were read; the list of lines is made whenever it is asked for, and held by nobody. */
function finishOrigin(
  parts: readonly Part[],
  recordCount: number,
  files: readonly string[],
  fileOf: Origin['fileOf'],
): Origin {
  // Where the rows stood is held when the drafts give it up: it takes a quarter of what the line of each record would.
  const placed = parts.map(({ draft: { places, aside, rowCount }, width }) => ({ places, aside, rowCount, width }));
  return {
    files: parts.map(({ draft }) => files[draft.file]!),
    fileOf,
    get lineOf() {
      return keptLines(placed, recordCount);
    },
  };
}

/** Whether a file gave a field of a table; a checklist gives the texts of what is folded out of it. */
function isGiven(field: Field, parts: readonly Part[]): boolean {
  return parts.some(({ draft, isFolded }) => (isFolded ? !holdsNumbers(field) : draft.columns.has(field.name)));
}

/**
 * The kept rows of a table, in order of file and line, folded ones with the row they come from. A table's keys are numbered
 * in order of first appearance, and references to it use the same numbers and the same dictionary. The drafts are used up.
 */
export function finishTable(
  table: TableDefinition,
  readings: readonly FileReading[],
  texts: Texts,
  finalKeys: Map<string, FinalKeys>,
): RecordTable {
  const parts = partsOf(table, readings);
  const rowCount = parts.reduce((sum, part) => sum + part.kept * part.width, 0);
  const columns = new Map<string, Column>();
  const absent = new AbsentColumns(rowCount);
  for (const field of table.fields) {
    if (field.name !== table.key[0] && !isGiven(field, parts)) {
      const texts = field.type === 'reference' ? finalKeys.get(field.to)!.texts : undefined;
      columns.set(field.name, absent.column(field, texts));
    } else if (field.type === 'code') columns.set(field.name, finishCodes(field, parts, rowCount));
    else if (field.type === 'reference') {
      columns.set(field.name, finishText(gather(field, parts, rowCount), finalKeys.get(field.to)!));
    } else if (field.type === 'text' || field.type === 'pseudonym') {
      const gathered = gather(field, parts, rowCount);
      const keys = numberAgain(gathered, texts.internerOf(table.name, field));
      columns.set(field.name, finishText(gathered, keys));
      if (field.name === table.key[0]) finalKeys.set(table.name, keys);
    } else columns.set(field.name, finishNumbers(field, parts, rowCount));
  }
  const files = readings.reduce<string[]>((names, { draft, file }) => {
    names[draft.file] = file;
    return names;
  }, []);
  const fileOf = finishFiles(parts, rowCount, absent);
  return { definition: table, rowCount, columns, origin: finishOrigin(parts, rowCount, files, fileOf) };
}
