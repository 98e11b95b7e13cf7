import { once } from '../finding/book/once.js';
import type { FindingColumn } from '../finding/finding.js';
import { findingOf, findings } from '../finding/findings.js';
import { takenAsKnown } from '../formula/value/taken-as-known.js';
import { nearestName } from '../problem/nearest.js';
import { writtenWords } from '../record/written-numbers.js';
import { accountNotes } from './account-notes.js';
import { type ComputedSheet, emptySheet, type SheetRows, saidOf } from './computed-sheet.js';
import type { SheetDeclaration, SheetMaker } from './document.js';
import type { SheetColumn } from './evaluated.js';
import { toldChoices } from './finding-options.js';
import { findingResult } from './finding-results.js';
import { findingValue } from './finding-value.js';
import { cellProblem } from './formula-cell.js';
import { foundRecords } from './found-records.js';
import { orderRows } from './order-rows.js';
import { unknownFields } from './sheet-fields.js';
import type { Knowledge } from './workings.js';

type FindingMaker = Extract<SheetMaker, { kind: 'finding' }>;

/** A sheet filled by a finding. */
export function findingSheet(
  declared: SheetDeclaration,
  maker: FindingMaker,
  { table, rows, decidedBy, key: rowsKey }: SheetRows,
  knowledge: Knowledge,
): ComputedSheet {
  const { file, book, memory } = knowledge;
  const finding = findingOf(maker.finding.text, table.name);
  if (finding === null) {
    const names = [...new Set(findings.map(({ name }) => name))];
    const nearest = nearestName(maker.finding.text, names);
    const remedy = nearest === null ? `Findings are ${names.join(', ')}.` : `Did you mean "${nearest}"?`;
    return emptySheet(declared, [cellProblem(file, maker.finding, 'unknown-finding', 'the name of a finding', remedy)]);
  }
  if (finding.table !== table.name) {
    const wanted = `rows of ${finding.table}, of which "${finding.name}" is asked`;
    return emptySheet(declared, [cellProblem(file, maker.rows, 'wrong-table', wanted, `Ask it of ${finding.table}.`)]);
  }
  if (declared.columns.length > 0) {
    const wanted = 'no table of columns: the finding brings its own';
    return emptySheet(declared, [
      cellProblem(file, maker.finding, 'columns-of-finding', wanted, 'Take the table below out.'),
    ]);
  }
  const wrong = unknownFields(file, maker.by, table);
  if (wrong.length > 0) return emptySheet(declared, wrong);
  const choices = toldChoices(finding, maker.options, knowledge);
  if ('problems' in choices) return emptySheet(declared, choices.problems);
  const by = maker.by.map(({ text }) => text);
  const told = JSON.stringify([by, [...choices.values], choices.resamples]);
  const { text: name } = declared.name;
  const key = memory.keyOf('finding', name, finding.name, rowsKey, told, memory.recordsKey);
  const asked = { book, table, rows, by, description: maker.rows.text };
  // The value is remembered with the answer, so that the accounts of its cells are told once.
  const { answer, columns, value } = memory.value(name, key, () => {
    const found = finding.find(book, table, rows, by, choices);
    const made = found.columns.map((column): SheetColumn => sheetColumn(column, by));
    return { answer: found, columns: made, value: findingValue(name, found, made, asked) };
  });
  const filled = answer.rows.map((cells, row) => ({
    at: row,
    results: cells.map((cell, at) => findingResult(cell, answer.columns[at]!, table)),
  }));
  const ordered = orderRows(filled, columns, declared.order, file);
  return {
    sheet: {
      ...saidOf(declared),
      columns,
      rows: ordered.rows.map(({ results }) => ({ cells: results })),
      notes: [
        ...(answer.said ?? []),
        ...accountNotes(finding).map(writtenWords),
        ...answer.leftOut,
        ...decidedBy.map((name) => `Caution: ${takenAsKnown(name)}.`),
        ...(ordered.note === null ? [] : [ordered.note]),
      ],
      problems: ordered.problems,
    },
    workings: {
      formulas: new Map(),
      needs: [],
      ofRows: [],
      keys: ordered.rows.map(({ at }) => value.rowKeys[at]!),
      cells: ordered.rows.map(({ at }) => new Map([...value.cells].map(([column, cells]) => [column, cells[at]!]))),
      records: once(() => inOrder(foundRecords(finding, book, table, answer, columns), ordered.rows)),
    },
    asked: { value, key },
  };
}

function inOrder<Row>(rows: readonly Row[] | null, order: readonly { readonly at: number }[]): readonly Row[] | null {
  return rows === null ? null : order.map(({ at }) => rows[at]!);
}

function sheetColumn(
  { name, label, kind, shownAs, meaning, names }: FindingColumn,
  by: readonly string[],
): SheetColumn {
  const role = kind === 'text' || names === true || by.includes(name) ? 'key' : 'value';
  return { name, label: writtenWords(label), role, formula: '', shownAs, meaning: writtenWords(meaning) };
}
