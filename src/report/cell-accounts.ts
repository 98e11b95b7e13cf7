import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../formula/result.js';
import type { EvaluatedSheet } from '../notebook/evaluated.js';
import type { Trace } from '../notebook/trace.js';
import { headed } from './anchor.js';
import type { Entry } from './definition-list.js';
import type { AskedCells, CarriedAccount, CarriedCells, CellAccounts } from './live/cell-accounts.js';
import { resultEntries } from './result-entries.js';
import { traceEntries } from './trace-entries.js';
import { words } from './words.js';

/** What the account of one cell of a sheet stands on, by column and row; null where nothing is known of it. */
export type CellTrace = (sheet: string, column: string, row: number) => Trace | null;

/** The accounts of cells as a page carries them: made from what each stands on, and packed as DEFLATE in base64. */
export interface PackedCells {
  readonly trace: CellTrace;
  readonly pack: (text: string) => string;
}

/** Where the accounts of cells come from: the page carries them; or it asks for each when it is opened. */
export type CellsOf = PackedCells | 'asked';

/** How many stretches of lines of one file stand in the account of a cell; the trace command lists the rest. */
const mostStretches = 3;

/**
 * The accounts of all cells of a sheet, for the page's script to unpack once a reader opens one: what cells have in common is
 * there once, so that a sheet of many cells stays small. Null where nothing is known of any.
 */
export function cellAccounts(sheet: EvaluatedSheet, { trace: cellTrace, pack }: PackedCells): Element | null {
  const alike = new Listed<readonly Entry[]>((entries) => JSON.stringify(entries));
  const columns = sheet.columns.flatMap((column, place) => (column.role === 'value' ? [{ column, place }] : []));
  const told = columns.map(({ column, place }) =>
    sheet.rows.map(({ cells: results }, row) => {
      const trace = cellTrace(sheet.name, column.name, row);
      if (trace === null) return null;
      const own = inWriting(ownEntries(trace, results[place]!, column.shownAs));
      return { under: alike.at(inWriting(traceEntries(trace, mostStretches))), own };
    }),
  );
  if (alike.all.length === 0) return null;
  return carried({
    say: words.cell,
    columns: columns.map(({ column, place }) => [place, headed(column.label)]),
    packed: pack(JSON.stringify(written(alike.all, told))),
  });
}

interface ToldCell {
  /** What it stands on, by its number among what several cells stand on. */
  readonly under: number;
  readonly own: readonly Entry[];
}

/** Accounts as a page carries them: lists of terms, and texts that are said more than once, stand there once. */
function written(alike: readonly (readonly Entry[])[], told: readonly (readonly (ToldCell | null)[])[]): CellAccounts {
  const times = new Map<string, number>();
  for (const entries of [...alike, ...told.flat().map((cell) => cell?.own ?? [])]) {
    for (const said of saidIn(entries)) times.set(said, (times.get(said) ?? 0) + 1);
  }
  const terms = new Listed<readonly string[]>((list) => JSON.stringify(list));
  const texts = new Listed<string>((text) => text);
  const account = (entries: readonly Entry[]): CarriedAccount => [
    terms.at(entries.map(([term]) => term)),
    ...saidIn(entries).map((said) => (times.get(said) === 1 ? said : texts.at(said))),
  ];
  return {
    alike: alike.map(account),
    cells: told.map((cells) => cells.map((cell) => (cell === null ? null : [cell.under, account(cell.own)]))),
    terms: terms.all,
    texts: texts.all,
  };
}

/** The entries that are text alone: no account of a cell has others to show. */
function inWriting(entries: readonly Entry[]): readonly Entry[] {
  return entries.filter(([, said]) => typeof said === 'string');
}

function saidIn(entries: readonly Entry[]): readonly string[] {
  return entries.flatMap(([, said]) => (typeof said === 'string' ? [said] : []));
}

/** Values of which each is listed once, in the order in which they first come. */
class Listed<Value> {
  readonly all: Value[] = [];
  readonly #places = new Map<string, number>();
  readonly #keyOf: (value: Value) => string;

  constructor(keyOf: (value: Value) => string) {
    this.#keyOf = keyOf;
  }

  /** The place of a value in the list. */
  at(value: Value): number {
    const key = this.#keyOf(value);
    const place = this.#places.get(key) ?? this.all.push(value) - 1;
    this.#places.set(key, place);
    return place;
  }
}

function ownEntries({ formula }: Trace, result: Result, shownAs: string): Entry[] {
  return [[words.formula, formula], ...resultEntries(result, shownAs)];
}

/** The account of one cell as texts, a term and what is said of it in turn. */
export function cellTexts(trace: Trace, result: Result, shownAs: string): readonly string[] {
  const entries = [...ownEntries(trace, result, shownAs), ...traceEntries(trace, mostStretches)];
  return entries.flatMap(([term, said]) => (typeof said === 'string' ? [term, said] : []));
}

/** What a page's script needs to ask for the account of a cell: the sheet, and the places of its columns in the table. */
export function askedCells(
  sheet: string,
  columns: readonly { readonly name: string; readonly label: string; readonly place: number }[],
): Element {
  const asked: AskedCells = {
    say: words.cell,
    columns: columns.map(({ label, place }) => [place, headed(label)]),
    sheet,
    names: columns.map(({ name }) => name),
  };
  return carried(asked);
}

function carried(accounts: CarriedCells | AskedCells): Element {
  // A closing tag inside a text would end the element.
  const json = JSON.stringify(accounts).replaceAll('<', '\\u003c');
  return h('script', { type: 'application/json', className: ['cells'] }, [json]);
}
