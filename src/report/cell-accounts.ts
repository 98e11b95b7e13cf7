import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../formula/result.js';
import type { EvaluatedSheet } from '../notebook/evaluated.js';
import type { Trace } from '../notebook/trace.js';
import { headed } from './anchor.js';
import type { Entry } from './definition-list.js';
import type { AskedCells, CellAccounts, CellTexts } from './live/cell-accounts.js';
import { resultEntries } from './result-entries.js';
import { traceEntries } from './trace-entries.js';
import { words } from './words.js';

/** What the account of one cell of a sheet stands on, by column and row; null where nothing is known of it. */
export type CellTrace = (sheet: string, column: string, row: number) => Trace | null;

/** What each cell stands on, and what packs the accounts for a page to carry: text as DEFLATE in base64. */
export interface CarriedCells {
  readonly trace: CellTrace;
  readonly pack: (text: string) => string;
}

/** Where the accounts of cells come from: the page carries them; or it asks for each when it is opened. */
export type CellsOf = CarriedCells | 'asked';

/** How many stretches of lines of one file stand in the account of a cell; the trace command lists the rest. */
const mostStretches = 3;

/**
 * The accounts of all cells of a sheet, for the page's script to open: every text is there once, so that a sheet of many
 * cells stays small. Null where nothing is known of any.
 */
export function cellAccounts(sheet: EvaluatedSheet, { trace: cellTrace, pack }: CarriedCells): Element | null {
  const texts = new Map<string, number>();
  const at = (text: string): number => {
    const known = texts.get(text) ?? texts.size;
    texts.set(text, known);
    return known;
  };
  const numbers = (entries: readonly Entry[]): readonly number[] =>
    entries.flatMap(([term, said]) => (typeof said === 'string' ? [at(term), at(said)] : []));
  const alike: (readonly number[])[] = [];
  const placeOf = new Map<string, number>();
  const alikeAt = (entries: readonly number[]): number => {
    const key = entries.join(' ');
    const place = placeOf.get(key) ?? alike.push(entries) - 1;
    placeOf.set(key, place);
    return place;
  };
  const columns = sheet.columns.flatMap((column, place) => (column.role === 'value' ? [{ column, place }] : []));
  const cells = columns.map(({ column, place }) =>
    sheet.rows.map(({ cells: results }, row): readonly number[] => {
      const trace = cellTrace(sheet.name, column.name, row);
      if (trace === null) return [];
      const own = ownEntries(trace, results[place]!, column.shownAs);
      return [alikeAt(numbers(traceEntries(trace, mostStretches))), ...numbers(own)];
    }),
  );
  if (texts.size === 0) return null;
  const told: CellTexts = { texts: [...texts.keys()], alike, cells };
  return carried({
    say: words.cell,
    columns: columns.map(({ column, place }) => [place, headed(column.label)]),
    packed: pack(JSON.stringify(told)),
  });
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

function carried(accounts: CellAccounts | AskedCells): Element {
  // A closing tag inside a text would end the element.
  const json = JSON.stringify(accounts).replaceAll('<', '\\u003c');
  return h('script', { type: 'application/json', className: ['cells'] }, [json]);
}
