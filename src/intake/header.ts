import { nearestName } from '../problem/nearest.js';
import { inTable, type Problem } from '../problem/problem.js';
import type { FileRule } from './crosswalk.js';

/** Where each column of a file stands, from 0, by its heading. */
export type Header = ReadonlyMap<string, number>;

/**
 * The header of a file, with a problem for each column that the crosswalk does not name, that it names and the file lacks,
 * and that the file has twice: nothing is guessed about a column.
 */
export function readHeader(
  file: string,
  line: number,
  names: readonly string[],
  rule: FileRule,
): { readonly header: Header; readonly problems: readonly Problem[] } {
  const header = new Map<string, number>();
  const problems: Problem[] = [];
  const stop = (code: string, column: number | null, seen: string, wanted: string, remedy: string) =>
    problems.push({ code, severity: 'stops', place: inTable(file, line, column, null), seen, wanted, remedy });
  const named = new Set(rule.columns);
  if (!names.some((name) => named.has(name))) {
    // Without one known heading the line is taken for a row, whose cells may be private and are not shown.
    const remedy = 'Look at header_line and delimiter in the crosswalk, and whether it is the right file.';
    stop('no-header', null, `${names.length} unknown headings`, 'a header that the crosswalk knows', remedy);
    return { header, problems };
  }
  names.forEach((name, position) => {
    if (header.has(name)) {
      stop('repeated-column', position + 1, name, 'each heading once', 'Rename one of the two columns in the export.');
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
    stop('unknown-column', position + 1, name, 'a column that the crosswalk names', remedy);
  });
  for (const column of rule.columns) {
    if (header.has(column)) continue;
    const remedy = 'Export the column again, or take it out of the crosswalk.';
    stop('missing-column', null, column, 'every column that the crosswalk names', remedy);
  }
  return { header, problems };
}
