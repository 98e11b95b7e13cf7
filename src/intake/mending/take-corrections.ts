import type { Problem } from '../../problem/problem.js';
import type { Task } from '../find-exports.js';
import type { PastImport, PastReading } from '../recall/past-import.js';
import { type Correction, emptied, type MendedRow, withheld } from './mending.js';
import { rowCells, rowOf } from './row-cells.js';

/** The mended rows of each file, by the place of its task. */
export type MendedFiles = ReadonlyMap<number, readonly MendedRow[]>;

function refusal(correction: Correction, code: string, seen: string, wanted: string, remedy: string): Problem {
  return { code, severity: 'stops', place: correction.place, seen, wanted, remedy };
}

/** A row as it stood when it was set aside, or as it was mended before; null where it is neither. */
function standingRow(past: PastImport, reading: PastReading, line: number): string | null {
  const mended = reading.mended.find((row) => row.line === line);
  if (mended !== undefined) return mended.row;
  return past.setAsideRows.find((row) => row.file === reading.file && row.line === line)?.row ?? null;
}

function corrected(
  correction: Correction,
  standing: string,
  { headings, header }: PastReading,
  { rule: { dialect, privateColumns } }: Task,
): string | Problem {
  const inExport = 'Correct it in the export itself, and import again: the new version takes the place of the old one.';
  if (standing === withheld) {
    return refusal(correction, 'withheld-row', withheld, 'a row of which something may be shown', inExport);
  }
  const isPrivate = new Set(header.flatMap(([name, position]) => (privateColumns.has(name) ? [position] : [])));
  const { column, text } = correction;
  if (column !== null) {
    const cells = rowCells(standing, dialect, headings.length);
    if (cells === null) {
      const remedy = 'Mend the row as a whole, in a copy of set-aside-rows.csv.';
      return refusal(correction, 'ragged-row', column, 'a row with as many cells as its header', remedy);
    }
    const position = headings.indexOf(column);
    if (position < 0) {
      const remedy = `Name a column as the file does: ${headings.join(', ')}.`;
      return refusal(correction, 'unknown-column', column, 'a column of the file', remedy);
    }
    // A private cell keeps its mark, since an empty one would look like a word that was lost.
    if (isPrivate.has(position) && text === emptied) return rowOf(cells.with(position, emptied), dialect);
    if (isPrivate.has(position)) {
      const remedy = `${inExport} To take the row without the cell, write ${emptied}.`;
      return refusal(correction, 'private-cell', withheld, `a cell that may be seen, or ${emptied}`, remedy);
    }
    return rowOf(cells.with(position, text === emptied ? '' : text), dialect);
  }
  const cells = rowCells(text, dialect, headings.length);
  if (cells === null) {
    const remedy = 'Look for a delimiter or a quote too many, or too few.';
    return refusal(correction, 'ragged-row', 'another number of cells', `${headings.length} cells`, remedy);
  }
  const isKept = (cell: string) => cell.trim() === withheld || cell.trim() === emptied;
  const shown = cells.findIndex((cell, position) => isPrivate.has(position) && !isKept(cell));
  if (shown < 0) return text;
  const remedy = `Leave the word ${withheld} in ${headings[shown]}: the cell is taken from the export; or write ${emptied}. ${inExport}`;
  return refusal(correction, 'private-cell', withheld, `the word ${withheld} or ${emptied}`, remedy);
}

/**
 * The rows mended so far, those of an import before with the new corrections. What cannot be taken in joins the problems: a
 * row that was not set aside, a private cell, a file that is no longer the one whose rows were set aside.
 */
export function takeCorrections(
  tasks: readonly Task[],
  past: PastImport | null,
  earlier: ReadonlyMap<number, PastReading>,
  corrections: readonly Correction[],
  problems: Problem[],
): MendedFiles {
  const mended = new Map<number, Map<number, string>>();
  for (const [place, reading] of earlier) {
    if (reading.mended.length > 0) mended.set(place, new Map(reading.mended.map(({ line, row }) => [line, row])));
  }
  for (const correction of corrections) {
    const places = tasks.flatMap(({ file }, place) => (file === correction.file && earlier.has(place) ? [place] : []));
    if (past === null || places.length === 0) {
      const isKnown = past?.readings.some(({ file }) => file === correction.file) === true;
      const remedy = isKnown
        ? 'The file has changed since: import it as it is now, and mend what is set aside then.'
        : 'Name a file as set-aside.csv does.';
      problems.push(refusal(correction, 'no-such-origin', correction.file, 'a file whose rows were set aside', remedy));
      continue;
    }
    let found = false;
    for (const place of places) {
      const reading = earlier.get(place)!;
      const known = mended.get(place) ?? new Map<number, string>();
      const standing = known.get(correction.line) ?? standingRow(past, reading, correction.line);
      if (standing === null) continue;
      found = true;
      if (correction.column === null && correction.text === standing) continue;
      const row = corrected(correction, standing, reading, tasks[place]!);
      if (typeof row !== 'string') problems.push(row);
      else mended.set(place, known.set(correction.line, row));
    }
    if (found) continue;
    const seen = `${correction.file}:${correction.line}`;
    const remedy = 'Take file and line from set-aside.csv or set-aside-rows.csv of this store.';
    problems.push(refusal(correction, 'no-such-origin', seen, 'a row that was set aside', remedy));
  }
  return new Map([...mended].map(([place, rows]) => [place, inOrder(rows)]));
}

function inOrder(rows: ReadonlyMap<number, string>): readonly MendedRow[] {
  return [...rows].sort(([a], [b]) => a - b).map(([line, row]) => ({ line, row }));
}
