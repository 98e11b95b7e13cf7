import type { Book, BookTable } from '../../record/book.js';
import { everyRowOf } from '../../record/every-row.js';
import type { Environment, Group } from '../environment.js';
import { yes } from '../missing.js';
import type { Formula, Node } from '../tree.js';
import { type CountedRecords, type DrawnRows, drawnAmong, narrowDrawn } from '../value/account.js';
import type { SelectedRows } from '../value/census.js';
import { groupRows } from './group-rows.js';
import type { HeldRows } from './held-rows.js';
import type { RowsReading } from './rows-reading.js';

/** Every row number of a table; the same array each time it is asked for. */
export function everyRow(table: BookTable, { cache }: Environment): Uint32Array {
  let rows = cache.everyRow.get(table);
  if (rows === undefined) {
    rows = everyRowOf(table.rowCount);
    cache.everyRow.set(table, rows);
  }
  return rows;
}

/** The table of that name; what a formula names has been checked. */
export function tableIn(book: Book, name: string): BookTable {
  const table = book.tables.get(name);
  if (table === undefined) throw new Error(`there is no table ${name}`);
  return table;
}

function keyText(key: readonly (string | number | null)[]): string {
  return JSON.stringify(key);
}

/** Those of some rows that agree with a group in its key fields. */
function rowsHere(table: BookTable, rows: Uint32Array, group: Group, { cache }: Environment): Uint32Array {
  const fields = [...group.keys.keys()];
  let byFields = cache.groupsOf.get(rows);
  if (byFields === undefined) {
    byFields = new Map();
    cache.groupsOf.set(rows, byFields);
  }
  const wanted = `${table.name} ${fields.join(' ')}`;
  let groups = byFields.get(wanted);
  if (groups === undefined) {
    groups = new Map(groupRows(table, rows, fields).map(({ key, rows: own }) => [keyText(key), own]));
    byFields.set(wanted, groups);
  }
  return groups.get(keyText([...group.keys.values()])) ?? new Uint32Array(0);
}

function describeGroup({ keys }: Group): string {
  return [...keys]
    .map(([name, value]) => `${name} is ${value === null ? 'missing' : JSON.stringify(value)}`)
    .join(' and ');
}

/** The rows that stand before any condition of their own. */
function baseRows({ base, here }: RowsReading, environment: Environment): SelectedRows {
  const { book, group, known } = environment;
  if (base === null) {
    if (group === null) throw new Error('there is no group here');
    const { rows, decidedBy, drawn } = group;
    const description = `${group.table} in the group where ${describeGroup(group)}`;
    const account: CountedRecords = {
      table: group.table,
      description,
      rows,
      considered: rows.length,
      unknown: 0,
      skippedMissing: 0,
      ...(decidedBy === undefined ? {} : { decidedBy }),
      ...(drawn === undefined ? {} : { drawn }),
    };
    return { table: tableIn(book, group.table), account };
  }
  const selection = known.get(base.name);
  const table =
    selection?.kind === 'sheet'
      ? selection.table
      : tableIn(book, selection?.kind === 'rows' ? selection.table : base.name);
  const whole: CountedRecords =
    selection?.kind === 'rows'
      ? selection.counted
      : {
          table: table.name,
          description: table.name,
          rows: selection?.kind === 'sheet' ? selection.rows : everyRow(table, environment),
          considered: table.rowCount,
          unknown: 0,
          skippedMissing: 0,
        };
  if (!here) return { table, account: whole };
  if (group === null) throw new Error('there is no group here');
  const rows = rowsHere(table, whole.rows, group, environment);
  const description = `${whole.description} here: ${describeGroup(group)}`;
  const { drawn } = whole;
  const drawnHere =
    drawn === undefined ? {} : { drawn: drawnAmong(drawn, rowsHere(table, drawn.rows, group, environment)) };
  return { table, account: { ...whole, rows, description, considered: rows.length, ...drawnHere } };
}

/** What is known of the conditions of a formula. */
export interface Conditions {
  /** An answer of a condition for each of some rows of a table. */
  readonly answersFor: (condition: Node, table: BookTable, rows: Uint32Array) => Uint8Array;
  /** Those of some rows for which a condition holds. */
  readonly heldBy: (condition: Node, table: BookTable, rows: Uint32Array) => HeldRows;
  /** What a condition compares the rows of a table with that comes from records itself. */
  readonly decidedBy: (condition: Node, table: BookTable) => readonly string[];
  /** How that decides some rows in every resample; null where it cannot be told. */
  readonly drawnBy: (condition: Node, table: BookTable, rows: Uint32Array) => DrawnRows | null;
}

/** How rows with a condition of their own are decided in every resample; null where nothing decides them, or it cannot be told. */
function drawnWith(
  where: Node,
  { table, account }: SelectedRows,
  isDeciding: boolean,
  { answersFor, drawnBy }: Conditions,
): DrawnRows | null {
  if (account.decidedBy === undefined) return isDeciding ? drawnBy(where, table, account.rows) : null;
  if (account.drawn === undefined || isDeciding) return null;
  const answers = answersFor(where, table, account.drawn.rows);
  return narrowDrawn(account.drawn, (position) => answers[position] === yes);
}

/** The rows that a part of a formula speaks of, with their account: those for which its condition is true. */
export function selectedRows(
  reading: RowsReading,
  formula: Formula,
  environment: Environment,
  conditions: Conditions,
): SelectedRows {
  const { heldBy, decidedBy } = conditions;
  const base = baseRows(reading, environment);
  const { where } = reading;
  if (where === null) return base;
  const { account, table } = base;
  const { rows, unclear } = heldBy(where, table, account.rows);
  const condition = formula.text.slice(where.offset, where.end);
  const joint = / where /.test(account.description) ? ' and ' : ' where ';
  const own = decidedBy(where, table);
  const deciding = new Set([...(account.decidedBy ?? []), ...own]);
  const drawn = drawnWith(where, base, own.length > 0, conditions);
  const { drawn: _, ...plain } = account;
  return {
    table,
    account: {
      ...plain,
      ...(drawn === null ? {} : { drawn }),
      ...(deciding.size === 0 ? {} : { decidedBy: [...deciding] }),
      ...(unclear > 0 && unclear === account.rows.length ? { noneKnown: true as const } : {}),
      description: `${account.description}${joint}${condition}`,
      rows,
      unknown: account.unknown + unclear,
    },
  };
}
