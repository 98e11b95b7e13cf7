import { nearestName } from '../problem/nearest.js';
import { inTable, type Problem } from '../problem/problem.js';
import type { FileRule } from './crosswalk.js';

/** Where each column of a file stands, from 0, by its name in the crosswalk (by its heading where that names none). */
export type Header = ReadonlyMap<string, number>;

/** A file's header as it was found. */
export interface FoundHeader {
  readonly header: Header;
  /** The headings as the file spells them, in order. */
  readonly headings: readonly string[];
  readonly problems: readonly Problem[];
}

/** A heading with case and spaces evened out. */
function loose(name: string): string {
  return name.normalize('NFC').toLowerCase().replace(/\s+/gu, ' ').trim();
}

/** The crosswalk's name for a heading; the heading itself where the crosswalk has none. */
export function columnNames(rule: FileRule): (heading: string) => string {
  if (!rule.dialect.looseHeadings) return (heading) => heading;
  const byLoose = new Map(rule.columns.map((column) => [loose(column), column]));
  return (heading) => byLoose.get(loose(heading)) ?? heading;
}

/** Whether a row is, byte by byte, one of the lines of its file's header. */
export function saysHeaderAgain(bytes: Uint8Array, from: number, to: number, lines: readonly Uint8Array[]): boolean {
  for (const line of lines) {
    if (to - from !== line.length || bytes[from] !== line[0]) continue;
    if (Buffer.compare(bytes.subarray(from, to), line) === 0) return true;
  }
  return false;
}

/** Whether a row holds more than half of the columns that the crosswalk names, and so is the header looked for. */
export function isHeader(cells: readonly string[], rule: FileRule): boolean {
  const named = new Set(rule.columns);
  const nameOf = columnNames(rule);
  const found = new Set(cells.map((cell) => nameOf(cell.trim())).filter((name) => named.has(name)));
  return found.size * 2 > named.size;
}

/**
 * The headings of a header that runs over several lines: what stands above one another is joined by a space, said once where
 * it is the same. In a text an upper heading reaches over the blank cells to its right, in a sheet over its merged cells.
 */
export function joinHeadings(lines: readonly (readonly string[])[], isSheet: boolean): readonly string[] {
  const width = Math.max(...lines.map(({ length }) => length));
  const spread = lines.map((line, index) => {
    let last = '';
    return Array.from({ length: width }, (_, column) => {
      const cell = line[column] ?? '';
      if (isSheet || index === lines.length - 1) return cell;
      if (cell !== '') last = cell;
      return last;
    });
  });
  return Array.from({ length: width }, (_, column) => {
    const parts = spread.map((line) => line[column]!).filter((part) => part !== '');
    return parts.filter((part, index) => part !== parts[index - 1]).join(' ');
  });
}

/**
 * The header of a file, with a problem for each column that the crosswalk does not name, that it names and the file lacks,
 * and that the file has twice: nothing is guessed about a column. A column without a heading is called by its place:
 * `column 3`.
 */
export function readHeader(file: string, line: number, cells: readonly string[], rule: FileRule): FoundHeader {
  const headings = cells.map((cell, position) => (cell === '' ? `column ${position + 1}` : cell));
  const header = new Map<string, number>();
  const problems: Problem[] = [];
  const stop = (code: string, column: number | null, seen: string, wanted: string, remedy: string) =>
    problems.push({ code, severity: 'stops', place: inTable(file, line, column, null), seen, wanted, remedy });
  const named = new Set(rule.columns);
  const nameOf = columnNames(rule);
  const names = headings.map(nameOf);
  if (!names.some((name) => named.has(name))) {
    // Without one known heading the line is taken for a row, whose cells may be private and are not shown.
    const remedy = 'Look at header_line and delimiter in the crosswalk, and whether it is the right file.';
    stop('no-header', null, `${names.length} unknown headings`, 'a header that the crosswalk knows', remedy);
    return { header, headings, problems };
  }
  names.forEach((name, position) => {
    const heading = headings[position]!;
    if (header.has(name)) {
      const remedy = 'Rename one of the two columns in the export.';
      stop('repeated-column', position + 1, heading, 'each heading once', remedy);
      return;
    }
    header.set(name, position);
    if (named.has(name)) return;
    const near = nearestName(
      name,
      rule.columns.filter((column) => !names.includes(column)),
    );
    const guess = near === null ? '' : ` The crosswalk has "${near}".`;
    const remedy = `Name it in the crosswalk, if only as ignore.${guess}`;
    stop('unknown-column', position + 1, heading, 'a column that the crosswalk names', remedy);
  });
  for (const column of rule.columns) {
    if (header.has(column)) continue;
    const remedy = 'Export the column again, or take it out of the crosswalk.';
    stop('missing-column', null, column, 'every column that the crosswalk names', remedy);
  }
  return { header, headings, problems };
}
