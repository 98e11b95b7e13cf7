import type { BookTable } from '../../record/book.js';
import type { FileSum } from '../../record/file-sum.js';
import { lazyTable } from './lazy-table.js';
import { countSource, textSource } from './listed-fields.js';

/** Why cells were missing, as the crosswalks tell their texts apart: one row a reason, for a field of a file. */
export function missingTable(files: readonly FileSum[]): BookTable {
  const kinds = files.flatMap((file) =>
    Object.entries(file.missing ?? {}).flatMap(([field, reasons]) =>
      Object.entries(reasons).map(([reason, times]) => ({ file, field, reason, times })),
    ),
  );
  const texts = (name: string, meaning: string, of: (kind: (typeof kinds)[number]) => string) =>
    textSource(name, meaning, kinds.map(of));
  return lazyTable({
    name: 'missing_cells',
    row: 'one reason for which cells of a field are missing in one exported file',
    counted: 'entries',
    rowCount: kinds.length,
    sources: [
      texts('file', 'The exported file.', ({ file }) => file.file),
      texts('crosswalk', 'The crosswalk that read it.', ({ file }) => file.crosswalk),
      texts('table', 'The table its rows are records of.', ({ file }) => file.table),
      texts('field', 'The field that is missing.', ({ field }) => field),
      texts('reason', 'What the cell’s text means: blank, or as the crosswalk says.', ({ reason }) => reason),
      countSource(
        'times',
        'rows',
        'In how many of the rows read, those set aside among them.',
        kinds.map(({ times }) => times),
      ),
    ],
    clusterOf: null,
    origin: null,
  });
}
