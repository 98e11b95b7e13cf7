import type { BookTable } from '../../record/book.js';
import { textColumn } from '../../record/column.js';
import type { FileSum, ImportSum } from '../../record/file-sum.js';
import { codedField } from './derived-fields.js';
import { lazyTable } from './lazy-table.js';
import { countSource, textSource } from './listed-fields.js';
import { missingTable } from './missing-table.js';

const severities = ['sets aside', 'notes'] as const;

interface ProblemKind {
  readonly file: FileSum;
  readonly code: string;
  readonly severity: (typeof severities)[number];
  readonly times: number;
}

function filesTable(files: readonly FileSum[]): BookTable {
  const counts = (count: (file: FileSum) => number): number[] => files.map(count);
  return lazyTable({
    name: 'files',
    row: 'one exported file that was read',
    counted: 'files',
    rowCount: files.length,
    sources: [
      textSource(
        'file',
        'Its path below the folder of exports.',
        files.map(({ file }) => file),
      ),
      textSource(
        'crosswalk',
        'The crosswalk that read it.',
        files.map(({ crosswalk }) => crosswalk),
      ),
      textSource(
        'table',
        'The table its rows are records of.',
        files.map(({ table }) => table),
      ),
      countSource(
        'read',
        'rows',
        'Rows read: those kept, those set aside and those left out by rule.',
        counts(({ read }) => read),
      ),
      countSource(
        'kept',
        'rows',
        'Rows kept.',
        counts(({ kept }) => kept),
      ),
      countSource(
        'set_aside',
        'rows',
        'Rows set aside with their reasons.',
        counts(({ setAside }) => setAside),
      ),
      countSource(
        'left_out',
        'rows',
        'Rows that a rule of the crosswalk leaves out, such as totals.',
        counts(({ leftOut = 0 }) => leftOut),
      ),
      countSource(
        'folded',
        'looks',
        'Looks folded out of its kept rows.',
        counts(({ folded }) => folded),
      ),
    ],
    clusterOf: null,
    origin: null,
  });
}

/** Codes in the order of the alphabet, so that the order in which an import met them does not show. */
function problemKinds(file: FileSum): ProblemKind[] {
  return severities.flatMap((severity) =>
    Object.entries(severity === 'notes' ? file.notes : file.problems)
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([code, times]) => ({ file, code, severity, times })),
  );
}

function problemsTable(files: readonly FileSum[]): BookTable {
  const kinds = files.flatMap(problemKinds);
  return lazyTable({
    name: 'problems',
    row: 'one kind of problem in one exported file',
    counted: 'problem kinds',
    rowCount: kinds.length,
    sources: [
      textSource(
        'file',
        'The exported file.',
        kinds.map(({ file }) => file.file),
      ),
      textSource(
        'crosswalk',
        'The crosswalk that read it.',
        kinds.map(({ file }) => file.crosswalk),
      ),
      textSource(
        'table',
        'The table its rows are records of.',
        kinds.map(({ file }) => file.table),
      ),
      textSource(
        'code',
        'The kind of problem.',
        kinds.map(({ code }) => code),
      ),
      {
        field: codedField('severity', severities, 'Whether it set its row aside or was only noted.'),
        build: () => textColumn(kinds.map(({ severity }) => severity)),
      },
      countSource(
        'times',
        'problems',
        'How often it was met; a row may have several.',
        kinds.map(({ times }) => times),
      ),
    ],
    clusterOf: null,
    origin: null,
  });
}

/** What became of the exports: a row a file, a row a kind of problem in a file, and a row a reason for missing cells. */
export function importTables(sum: ImportSum): BookTable[] {
  return [filesTable(sum.files), problemsTable(sum.files), missingTable(sum.files)];
}
