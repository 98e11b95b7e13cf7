import type { Field, TableDefinition } from '../record/field.js';
import { type DraftColumn, noDay } from './draft.js';
import type { Texts } from './key-space.js';
import type { FileReading } from './read-file.js';
import type { Saying } from './remark.js';
import { type RowRule, rowRulesOf } from './row-rules.js';
import { sayingOf } from './rules/saying-of.js';
import { positionOf, remarkOn } from './set-aside.js';

/** A row that others may complete. */
interface Target {
  readonly reading: FileReading;
  readonly row: number;
}

/** What tells a row from all others of its table, by the numbers of its keys. */
function keyOf({ draft }: FileReading, key: readonly string[], row: number): string {
  return key.map((name) => draft.columns.get(name)!.values[row]).join(' ');
}

/** Begins a column of a draft in which every value is missing. */
function emptyColumn({ draft }: FileReading, field: Field, texts: Texts): void {
  const column = draft.columnOf(field, texts);
  const { values } = column;
  if (values instanceof Float64Array) column.values = new Float64Array(draft.rowCount).fill(Number.NaN);
  else if (values instanceof Int32Array) column.values = new Int32Array(draft.rowCount).fill(noDay);
  else column.values = new (values.constructor as Uint32ArrayConstructor)(draft.rowCount);
}

/** The rules that a file's rows could not be held to before others gave it columns. */
function newRules({ draft, rule }: FileReading, before: readonly RowRule[]): readonly RowRule[] {
  const held = new Set(before.map(({ code, field, reason }) => `${code} ${field} ${reason}`));
  return rowRulesOf(draft, rule).filter(({ code, field, reason }) => !held.has(`${code} ${field} ${reason}`));
}

const putThere = (key: readonly string[]): string => `its values stand in the row of the same ${key.join(' and ')}`;

/**
 * Puts what the rows of completing files tell into the kept rows of other files that have the same key, such as hours from a
 * ledger into the days of a calendar. A completing row gives no record of its own: it is left out by rule once its values
 * stand there, or where its day is of a withdrawn season; and set aside where no row has its key, or where its field is told
 * already.
 */
export function completeRows(
  table: TableDefinition,
  readings: readonly FileReading[],
  texts: Texts,
  withdrawn: readonly number[] = [],
): void {
  const completing = readings.filter(({ rule }) => rule.completes);
  if (completing.length === 0) return;
  const { key } = table;
  const others = readings.filter(({ rule, draft }) => !rule.completes && key.every((name) => draft.columns.has(name)));
  const targets = new Map<string, Target>();
  for (const reading of others) {
    for (let row = 0; row < reading.draft.rowCount; row++) {
      if (reading.draft.aside[row] === 0) targets.set(keyOf(reading, key, row), { reading, row });
    }
  }
  const rulesBefore = new Map(others.map((reading) => [reading, rowRulesOf(reading.draft, reading.rule)]));
  const given = new Map(others.map((reading) => [reading, new Set(reading.draft.columns.keys())]));
  for (const { draft } of completing) {
    for (const { field } of draft.columns.values()) {
      for (const other of others) if (!other.draft.columns.has(field.name)) emptyColumn(other, field, texts);
    }
  }
  // By target row and field, since two completing rows may tell different fields of one row.
  const told = new Set<string>();
  for (const reading of completing) {
    const { draft } = reading;
    const fields = [...draft.columns.values()].filter(({ field }) => !key.includes(field.name));
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1) continue;
      const year = yearOf(reading, row);
      if (withdrawn.includes(year)) {
        leaveOut(reading, row, `its season, ${year}, is withdrawn`);
        continue;
      }
      const name = keyOf(reading, key, row);
      const target = targets.get(name);
      const fault = target === undefined ? nothing(table) : toldFault(fields, name, given.get(target.reading)!, told);
      if (target === undefined || fault !== null) {
        remarkOn(reading, row, positionOf(reading, key[0]!), fault!);
        continue;
      }
      for (const { field, values } of fields) {
        target.reading.draft.columns.get(field.name)!.values[target.row] = values[row]!;
        told.add(`${name} ${field.name}`);
      }
      leaveOut(reading, row, putThere(key));
    }
    reading.leftOut.sort((a, b) => a.line - b.line);
  }
  for (const [reading, before] of rulesBefore) holdTo(reading, newRules(reading, before));
}

/** The year of a row's date; 0 where the table has none. */
function yearOf({ draft }: FileReading, row: number): number {
  const day = draft.columns.get('date')?.values[row] ?? noDay;
  return day === noDay ? 0 : new Date(day * 86_400_000).getUTCFullYear();
}

/** Takes a row out of its draft as one that gives no record of its own. */
function leaveOut({ draft, joined, leftOut }: FileReading, row: number, because: string): void {
  draft.aside[row] = 1;
  joined.add(row);
  leftOut.push({ line: draft.places.lineOf(row), because });
}

function nothing(table: TableDefinition): Saying {
  return sayingOf('nothing-to-complete', `no kept row of ${table.name} has the same ${table.key.join(' and ')}`);
}

/** What is wrong where a field of a row is told by its own file, or was told by another completing row; null for nothing. */
function toldFault(
  fields: readonly DraftColumn[],
  key: string,
  given: ReadonlySet<string>,
  told: ReadonlySet<string>,
): Saying | null {
  const twice = fields.find(({ field }) => given.has(field.name) || told.has(`${key} ${field.name}`));
  return twice === undefined ? null : sayingOf('told-twice', `another row tells ${twice.field.name} of it already`);
}

function holdTo(reading: FileReading, rules: readonly RowRule[]): void {
  const { draft } = reading;
  for (let row = 0; row < draft.rowCount; row++) {
    for (const rule of rules) {
      if (draft.aside[row] === 0 && rule.isBroken(row)) {
        remarkOn(reading, row, positionOf(reading, rule.field), rule, rule.severity);
      }
    }
  }
}
