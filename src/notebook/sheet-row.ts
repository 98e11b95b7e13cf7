import type { EvaluatedSheet } from './evaluated.js';
import { showResult } from './shown.js';
import type { SheetWorkings } from './workings.js';

/** The names of a sheet's rows: the codes of their keys, with commas between where there are several. */
export function rowNames({ keys }: SheetWorkings): readonly string[] {
  return keys.map((key) => key.map((code) => code ?? 'missing').join(','));
}

function labelsOf(sheet: EvaluatedSheet): readonly string[] {
  return sheet.rows.map(({ cells }) =>
    cells
      .filter((_, at) => sheet.columns[at]!.role === 'key')
      .map((cell) => (cell.kind === 'number' ? String(cell.value) : showResult(cell, '')))
      .join(','),
  );
}

/**
 * The number of the row that a word names: by its codes, by what stands at its head, or by the first of its keys where only
 * one row has it. Null where none or several are meant.
 */
export function rowNamed(sheet: EvaluatedSheet, workings: SheetWorkings, word: string): number | null {
  const plainly = (text: string) => text.trim().toLowerCase();
  const wanted = word.split(',').map(plainly).join(',');
  const lists = [rowNames(workings), labelsOf(sheet)];
  for (const matches of [(name: string) => name === wanted, (name: string) => name.startsWith(`${wanted},`)]) {
    for (const names of lists) {
      const rows = names.flatMap((name, row) => (matches(name.split(',').map(plainly).join(',')) ? [row] : []));
      if (rows.length === 1) return rows[0]!;
    }
  }
  return null;
}
