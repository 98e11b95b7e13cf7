import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../formula/result.js';
import { saysTakenAsKnown } from '../formula/value/taken-as-known.js';
import { isBehindDefinition } from '../notebook/account-notes.js';
import type { EvaluatedNotebook, EvaluatedSheet, SheetColumn } from '../notebook/evaluated.js';
import { isWithheld, unitInHead } from '../notebook/shown.js';
import { sheetAccount } from './account.js';
import { anchor, headed, inWords } from './anchor.js';
import { askedCells, type CellsOf, cellAccounts } from './cell-accounts.js';
import { sheetCsv } from './csv.js';
import { downloadLink } from './download.js';
import { fileName } from './file-name.js';
import { type Methods, methodMark } from './methods.js';
import { problemBox } from './problem-box.js';
import { keyCell, resultCell } from './result-cell.js';
import { saidEarlier } from './said-earlier.js';
import { type TableHead, tableElement } from './table.js';
import { words } from './words.js';

function withoutRows({ withheld, failed, problems }: EvaluatedSheet): string {
  if (withheld === true) return words.sheetWithheld;
  return failed === true && problems.length === 0 ? words.failedSheet : words.emptySheet;
}

/** A sheet with its problems, its notes, how its columns were made, and its CSV. The notebook names the saved file. */
export function sheetPart(
  sheet: EvaluatedSheet,
  notebook: EvaluatedNotebook,
  methods: Methods,
  cells?: CellsOf,
): Element {
  const accounts = cells === undefined ? null : cells === 'asked' ? askedOf(sheet) : cellAccounts(sheet, cells);
  const keys = sheet.columns.findIndex((column) => column.role === 'value');
  return h('div', { id: anchor('sheet', sheet.name), className: ['sheet'] }, [
    ...(sheet.problems.length > 0 ? [problemBox(sheet.problems)] : []),
    ...(sheet.columns.length === 0 || sheet.withheld === true
      ? []
      : foldedWhenLong(
          sheet,
          tableElement({
            id: anchor('table', sheet.name),
            caption: captionOf(sheet),
            heads: keys === -1 ? sheet.columns.length : keys,
            head: sheet.columns.map((column, at) => columnHead(column, sheet, at, methods)),
            rows: sheet.rows.map((row) =>
              row.cells.map((cell, at) => {
                const column = sheet.columns[at]!;
                if (column.role === 'key') return keyCell(cell, column.shownAs);
                return { ...resultCell(cell, column.shownAs), number: holdsNumbers(sheet, at) };
              }),
            ),
            sortable: sheet.rows.length > 1,
          }),
        )),
    ...(sheet.rows.length === 0 ? [h('p', [withoutRows(sheet)])] : []),
    ...(sheet.failedColumns === undefined
      ? []
      : [h('p', { className: ['note'] }, [words.failedColumns(sheet.failedColumns.map(inWords))])]),
    ...(sheet.rows.some(({ cells }) => cells.some(isWithheld))
      ? [h('p', { className: ['note'] }, [words.withheldHere])]
      : []),
    ...notesUnder(sheet, notebook),
    sheetAccount(sheet, fileName(notebook.file), cells !== undefined),
    ...(accounts === null ? [] : [accounts]),
    ...(sheet.rows.length === 0
      ? []
      : [
          h('p', { className: ['downloads'] }, [
            downloadLink(
              sheetCsv(sheet),
              `${notebook.name}-${sheet.name}.csv`,
              'text/csv',
              words.download(inWords(sheet.name)),
            ),
          ]),
        ]),
  ]);
}

/**
 * The notes of a sheet, what stands behind its definition folded; what an earlier sheet says in the same words is not said
 * again, but led to.
 */
function notesUnder(sheet: EvaluatedSheet, notebook: EvaluatedNotebook): Element[] {
  const earlier = saidEarlier(sheet, notebook);
  const own = [...sheet.notes.filter((note) => !(earlier?.notes.has(note) ?? false)), ...decidingIn(sheet)];
  const folded = own.filter(isBehindDefinition).map(noteElement);
  return [
    ...own.filter((note) => !isBehindDefinition(note)).map(noteElement),
    ...(folded.length === 0
      ? []
      : [h('details', { className: ['behind'] }, [h('summary', [words.behindDefinition]), ...folded])]),
    ...(earlier === null ? [] : [leadTo(earlier.sheet)]),
  ];
}

function noteElement(note: string): Element {
  return h('p', { className: ['note'] }, [note]);
}

function leadTo(earlier: EvaluatedSheet): Element {
  const link = h('a', { href: `#${anchor('sheet', earlier.name)}` }, [titleOf(earlier)]);
  return h('p', { className: ['note'] }, [words.saidUnder, link, '.']);
}

function askedOf({ name, columns }: EvaluatedSheet): Element {
  const values = columns.flatMap(({ role, ...column }, place) => (role === 'value' ? [{ ...column, place }] : []));
  return askedCells(name, values);
}

/** What decided which rows are counted and is taken as known, with the columns it bears on: it stands under the table. */
function decidingIn({ columns, rows }: EvaluatedSheet): string[] {
  const columnsOf = new Map<string, Set<string>>();
  for (const { cells } of rows) {
    cells.forEach((cell, at) => {
      for (const said of cell.kind === 'number' ? cell.cautions.filter(saysTakenAsKnown) : []) {
        columnsOf.set(said, (columnsOf.get(said) ?? new Set()).add(columns[at]!.label));
      }
    });
  }
  return [...columnsOf].map(([said, labels]) => `${words.caution}, ${[...labels].join(', ')}: ${said}.`);
}

/** The most rows that stand open on the page; a reader opens a longer table, and paper shows it. */
const mostOpenRows = 30;

function foldedWhenLong(sheet: EvaluatedSheet, table: Element): Element[] {
  if (sheet.rows.length <= mostOpenRows) return [table];
  const summary = h('summary', [words.longSheet(titleOf(sheet), sheet.rows.length)]);
  return [h('details', { className: ['numbers', 'long'] }, [summary, table])];
}

function titleOf({ title, name }: EvaluatedSheet): string {
  return title ?? inWords(name);
}

/** The title that the notebook gives; else the sheet's name and what it holds, from the sentence that declares it. */
function captionOf({ title, sentence, name }: EvaluatedSheet): string {
  if (title !== undefined) return title;
  const said = sentence
    .replace(/^Sheet\s+\S+?:\s*/, '')
    .replace(/\.$/, '')
    .replace(/,\s+with\s+[^,]*$/, '');
  return `${headed(inWords(name))}: ${inWords(said)}`;
}

function columnHead(column: SheetColumn, sheet: EvaluatedSheet, at: number, methods: Methods): TableHead {
  const results = sheet.rows.map((row) => row.cells[at]!);
  const number = column.role === 'value' && holdsNumbers(sheet, at);
  const unit = column.role === 'key' ? '' : unitInHead(column.shownAs, unitOf(results));
  const under = [unit, hasInterval(results) ? '95 % interval' : ''].filter((text) => text !== '').join(', ');
  const marks = marksOf(results, methods);
  const content: ElementContent[] = [{ type: 'text', value: headed(column.label) }];
  if (under !== '' || marks.length > 0) content.push(h('span', { className: ['small'] }, [under, ...marks]));
  return { content, number };
}

function holdsNumbers(sheet: EvaluatedSheet, at: number): boolean {
  return sheet.rows.some((row) => row.cells[at]!.kind === 'number');
}

function unitOf(results: readonly Result[]): string {
  const first = results.find((result) => result.kind === 'number' && result.value !== null);
  return first?.kind === 'number' ? first.unit : '';
}

function hasInterval(results: readonly Result[]): boolean {
  return results.some((result) => result.kind === 'number' && result.interval?.confidence === 0.95);
}

/** A mark for each method of the column, in the order of their numbers. */
function marksOf(results: readonly Result[], methods: Methods): ElementContent[] {
  const byMethod = new Map<string, Element>();
  for (const result of results) {
    const mark = methodMark(result, methods);
    if (mark !== null && result.kind === 'number') byMethod.set(result.interval!.method, mark);
  }
  const all = [...byMethod.values()];
  const shown = all.length > 3 ? [all[0]!, { type: 'text' as const, value: 'to' }, all.at(-1)!] : all;
  return shown.flatMap((mark): ElementContent[] => [{ type: 'text', value: ' ' }, mark]);
}
