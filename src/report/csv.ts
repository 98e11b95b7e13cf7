import { dayAsText } from '../finding/book/calendar.js';
import type { Result } from '../formula/result.js';
import type { EvaluatedSheet, SheetColumn } from '../notebook/evaluated.js';
import { runsAsFormula } from '../store/delimited.js';

/**
 * A sheet as CSV (RFC 4180): numbers unrounded; beside a column whose values have them, the limits, numerator and
 * denominator, and the reason where a value is missing. A text that a spreadsheet would take for a formula is made inert.
 */
export function sheetCsv(sheet: EvaluatedSheet): string {
  const columns = sheet.columns.flatMap((column, at) =>
    csvColumns(
      column,
      sheet.rows.map((row) => row.cells[at]!),
    ),
  );
  const lines = [
    columns.map((column) => column.head),
    ...sheet.rows.map((_, row) => columns.map((c) => c.cells[row]!)),
  ];
  return lines.map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}

interface CsvColumn {
  readonly head: string;
  readonly cells: readonly string[];
}

function csvColumns({ name, role }: SheetColumn, results: readonly Result[]): CsvColumn[] {
  const columns: CsvColumn[] = [{ head: name, cells: results.map(valueText) }];
  if (role === 'key') return columns;
  for (const [ending, text] of beside) {
    const cells = results.map(text);
    if (cells.some((cell) => cell !== '')) columns.push({ head: `${name}_${ending}`, cells });
  }
  return columns;
}

const beside: readonly (readonly [string, (result: Result) => string])[] = [
  ['low', (result) => (result.kind === 'number' ? numberText(result.interval?.low ?? null) : '')],
  ['high', (result) => (result.kind === 'number' ? numberText(result.interval?.high ?? null) : '')],
  ['numerator', (result) => (result.kind === 'number' ? numberText(result.numerator) : '')],
  ['denominator', (result) => (result.kind === 'number' ? numberText(result.denominator) : '')],
  ['why', whyText],
];

function valueText(result: Result): string {
  switch (result.kind) {
    case 'number':
      return numberText(result.value);
    case 'text':
      return result.text;
    case 'date':
      return dayAsText(result.day);
    case 'truth':
      return result.truth ? 'yes' : 'no';
    case 'missing':
      return result.withheld === true ? 'withheld' : '';
    default:
      return '';
  }
}

function whyText(result: Result): string {
  if (result.kind === 'missing') return result.why;
  if (result.kind === 'problem') return result.problems.map((problem) => problem.code).join(' ');
  return result.kind === 'number' ? (result.why ?? '') : '';
}

function numberText(value: number | null): string {
  return value === null ? '' : String(value);
}

/** One cell of CSV: quoted where it must be, and a leading apostrophe before what would run as a formula. */
export function csvCell(text: string): string {
  const inert = runsAsFormula(text) ? `'${text}` : text;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
