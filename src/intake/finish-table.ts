import { type Column, codeArray, type NumberColumn, type TextColumn } from '../record/column.js';
import type { CodeField, Field, TableDefinition } from '../record/field.js';
import type { Origin, RecordTable } from '../record/records.js';
import { type Draft, noDay } from './draft.js';
import type { Texts } from './key-space.js';
import type { FileReading } from './read-file.js';

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
  readonly dictionary: readonly string[];
}

function partsOf(table: TableDefinition, readings: readonly FileReading[]): readonly Part[] {
  return readings.flatMap(({ draft }) => {
    const isFolded = draft.fold?.table === table;
    if (!isFolded && draft.table !== table) return [];
    let kept = 0;
    for (let row = 0; row < draft.rowCount; row++) kept += 1 - draft.aside[row]!;
    return [{ draft, width: isFolded ? draft.fold!.columns.length : 1, isFolded, kept }];
  });
}

/** Visits each kept row of a part with its place among the table's rows. */
function eachKept(part: Part, first: number, visit: (row: number, at: number) => void): void {
  let at = first;
  for (let row = 0; row < part.draft.rowCount; row++) {
    if (part.draft.aside[row] === 1) continue;
    visit(row, at);
    at += part.width;
  }
}

function finishCodes(field: CodeField, parts: readonly Part[], rowCount: number): TextColumn {
  const dictionary = ['', ...field.codes.codes.map(({ code }) => code)];
  const codes = codeArray(rowCount, dictionary.length);
  let first = 0;
  for (const part of parts) {
    const { draft, width } = part;
    if (part.isFolded) {
      const fold = draft.fold!;
      const fixed = fold.columns.map((column) =>
        field.name === 'component' || field.name === 'side' ? dictionary.indexOf(column[field.name]) : 0,
      );
      const said = [0, ...[...fold.values.values()].map((value) => dictionary.indexOf(value.get(field.name) ?? ''))];
      const isFixed = field.name === 'component' || field.name === 'side';
      eachKept(part, first, (row, at) => {
        for (let column = 0; column < width; column++) {
          codes[at + column] = isFixed ? fixed[column]! : said[draft.folded[row * width + column]!]!;
        }
      });
    } else {
      const values = draft.columns.get(field.name)?.values;
      if (values !== undefined) {
        eachKept(part, first, (row, at) => {
          codes[at] = values[row]!;
        });
      }
    }
    first += part.kept * width;
  }
  return { kind: 'text', codes, dictionary };
}

/** The numbers used while reading, row by row; a folded row has its owner's key. */
function gather(field: Field, parts: readonly Part[], rowCount: number): Uint32Array {
  const gathered = new Uint32Array(rowCount);
  let first = 0;
  for (const part of parts) {
    const ownKey = part.isFolded && field.type === 'reference' && field.to === part.draft.table.name;
    const name = ownKey ? part.draft.table.key[0]! : field.name;
    const values = part.isFolded && !ownKey ? undefined : part.draft.columns.get(name)?.values;
    if (values !== undefined) {
      eachKept(part, first, (row, at) => gathered.fill(values[row]!, at, at + part.width));
    }
    first += part.kept * part.width;
  }
  return gathered;
}

function finishText(field: Field, parts: readonly Part[], rowCount: number, texts: Texts, table: TableDefinition) {
  const interner = texts.internerOf(table.name, field);
  const gathered = gather(field, parts, rowCount);
  const codeOf = new Uint32Array(interner.size);
  const dictionary = [''];
  for (let row = 0; row < rowCount; row++) {
    const code = gathered[row]!;
    if (code === 0 || codeOf[code] !== 0) continue;
    codeOf[code] = dictionary.length;
    dictionary.push(interner.textOf(code));
  }
  return { column: renumbered(gathered, { codeOf, dictionary }), keys: { codeOf, dictionary } };
}

function renumbered(gathered: Uint32Array, { codeOf, dictionary }: FinalKeys): TextColumn {
  const codes = codeArray(gathered.length, dictionary.length);
  for (let row = 0; row < gathered.length; row++) codes[row] = codeOf[gathered[row]!]!;
  return { kind: 'text', codes, dictionary };
}

function finishNumbers(field: Field, parts: readonly Part[], rowCount: number): NumberColumn {
  const values = field.type === 'date' ? new Int32Array(rowCount) : new Float64Array(rowCount);
  const missing = new Uint8Array(rowCount).fill(1);
  let present = 0;
  let first = 0;
  for (const part of parts) {
    const drafted = part.isFolded ? undefined : part.draft.columns.get(field.name)?.values;
    if (drafted !== undefined) {
      eachKept(part, first, (row, at) => {
        const value = drafted[row]!;
        if (Number.isNaN(value) || (field.type === 'date' && value === noDay)) return;
        values[at] = value;
        missing[at] = 0;
        present++;
      });
    }
    first += part.kept * part.width;
  }
  return { kind: 'number', values, missing: present === rowCount ? null : missing };
}

function finishOrigin(parts: readonly Part[], rowCount: number, files: readonly string[]): Origin {
  const fileOf = parts.length <= 0x100 ? new Uint8Array(rowCount) : new Uint16Array(rowCount);
  const lineOf = new Uint32Array(rowCount);
  let first = 0;
  for (const [index, part] of parts.entries()) {
    eachKept(part, first, (row, at) => {
      lineOf.fill(part.draft.lines[row]!, at, at + part.width);
      fileOf.fill(index, at, at + part.width);
    });
    first += part.kept * part.width;
  }
  return { files: parts.map(({ draft }) => files[draft.file]!), fileOf, lineOf };
}

/**
 * The kept rows of a table, in order of file and line, folded ones with the row they come from. A table's keys are numbered
 * in order of first appearance, and references to it use the same numbers and the same dictionary.
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
  for (const field of table.fields) {
    if (field.type === 'code') columns.set(field.name, finishCodes(field, parts, rowCount));
    else if (field.type === 'reference') {
      columns.set(field.name, renumbered(gather(field, parts, rowCount), finalKeys.get(field.to)!));
    } else if (field.type === 'text' || field.type === 'pseudonym') {
      const { column, keys } = finishText(field, parts, rowCount, texts, table);
      columns.set(field.name, column);
      if (field.name === table.key[0]) finalKeys.set(table.name, keys);
    } else columns.set(field.name, finishNumbers(field, parts, rowCount));
  }
  const files = readings.reduce<string[]>((names, { draft, file }) => {
    names[draft.file] = file;
    return names;
  }, []);
  return { definition: table, rowCount, columns, origin: finishOrigin(parts, rowCount, files) };
}
