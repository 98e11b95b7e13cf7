import { showNumber } from '../../notebook/shown.js';
import { writtenDays } from '../../record/written-numbers.js';
import type { Beyond, Cause } from './comparison.js';

const whole = (value: number): string => showNumber(value, 'whole', '');
const counted = (count: number, one: string, many: string): string => `${whole(count)} ${count === 1 ? one : many}`;

/** The fixed words of a comparison of two renderings, on its page and in the terminal. */
export const comparisonWords = {
  title: 'What changed between two renderings',
  about:
    'Each page carries its own figures, inputs, formulas and the fingerprints of its files. Two renderings are compared by those alone: nothing is counted again.',
  severally:
    'Where several causes are named, each of them differs and reaches the value; these pages cannot tell how much each of them did.',
  rounded: 'Cells of sheets are compared to six digits, figures unrounded.',
  against: (summary: string): string => `against the page that stood there: ${summary}`,
  nothing: 'Nothing on the page says anything else than before.',
  nothingShort: 'says what it said before',
  figures: 'Figures',
  figure: 'Figure',
  sheets: 'Sheets',
  sheet: 'Sheet',
  row: 'Row',
  column: 'Column',
  before: 'Before',
  after: 'Now',
  moved: 'Moved by',
  relative: 'Relative',
  beyond: 'As the former interval sees it',
  why: 'Why',
  noValue: 'no value',
  notReached: 'not reached',
  notRecorded: 'not recorded',
  absent: 'not there',
  again: (key: string, time: number): string => `${key} (row ${time} of that name)`,
  withLimits: (value: string, low: string, high: string): string => `${value} (${low} to ${high})`,
  relativeOf: (share: number): string => `${share < 0 ? '−' : '+'}${showNumber(Math.abs(share), 'percent', '')} %`,
  signed: (by: number, shown: string): string => (by > 0 ? `+${shown}` : shown),
  points: (number: string): string => `${number} percentage points`,
  beyondOf: (beyond: Beyond): string => {
    if (beyond === null) return 'it had none';
    return beyond === 'within' ? 'within it' : `beyond it, ${beyond}`;
  },
  causeOf: {
    data: 'data',
    formula: 'formula',
    input: 'input',
    choice: 'choice of records',
    resampling: 'resampling',
    program: 'program',
  } satisfies Record<Cause, string>,
  causeNames: (cause: string, names: readonly string[]): string =>
    names.length === 0 ? cause : `${cause} (${names.join(', ')})`,
  unexplained: 'nothing that these pages carry',
  lead: (summary: string): string => `${summary}.`,
  causes: 'What differs between the two',
  records: 'Records',
  recordsSame: 'the same, by their fingerprint',
  recordsUpTo: (before: string, after: string): string =>
    `up to ${writtenDays(after)}; before, up to ${writtenDays(before)}`,
  readOtherwise:
    'the files are the same, and what was made of them is not: a crosswalk differs, or rows were mended or withdrawn',
  fileAdded: (file: string, kept: number): string => `${file} came, ${counted(kept, 'row', 'rows')} kept`,
  fileRemoved: (file: string, kept: number): string => `${file} went, ${counted(kept, 'row', 'rows')} kept before`,
  fileChanged: (file: string, before: number, after: number): string =>
    `${file} changed: ${whole(after)} rows kept, ${whole(before)} before`,
  program: 'Program',
  programOf: (before: string, after: string): string => `${after}; before, ${before}`,
  programSame: 'the same, by its fingerprint',
  programIs: (version: string, fingerprint: string): string => `rampbook ${version}, ${fingerprint}`,
  choice: 'Choice of records',
  allRecords: 'all records',
  resampling: 'Resampling',
  resamplingOf: (seed: number | null, resamples: number | null): string =>
    `seed ${seed ?? 'not said'}, ${resamples === null ? 'not said how often' : `${whole(resamples)} times`}`,
  inputs: 'Inputs that differ',
  input: 'Input',
  definitions: 'Definitions that differ',
  name: 'Name',
  sheetThere: { before: 'is no longer there', after: 'is new' },
  rows: (before: number, after: number): string =>
    before === after ? counted(after, 'row', 'rows') : `${counted(after, 'row', 'rows')}, ${whole(before)} before`,
  rowsAdded: (rows: readonly string[]): string => `rows that came: ${rows.join('; ')}`,
  rowsRemoved: (rows: readonly string[]): string => `rows that went: ${rows.join('; ')}`,
  finer: 'no cell differs in six digits, or the sheet is too long to be carried',
  cells: (count: number, beyond: number): string =>
    `${counted(count, 'cell differs', 'cells differ')}, ${whole(beyond)} beyond ${count === 1 ? 'its' : 'their'} former interval`,
  cellsOf: (sheet: string): string => `Cells of “${sheet}” that differ, those that moved most first`,
  moreCells: (count: number): string =>
    `and ${counted(count, 'more cell', 'more cells')}, which “rampbook compare --json” lists`,
  summary: (figures: number, beyond: number, sheets: number): string =>
    `${counted(figures, 'figure differs', 'figures differ')}, ${whole(beyond)} beyond the former interval; ${counted(sheets, 'sheet differs', 'sheets differ')}`,
  because: (causes: readonly string[]): string =>
    causes.length === 0 ? '' : `; ${causes.length === 1 ? 'cause' : 'causes'}: ${causes.join(', ')}`,
  onlyBefore: (page: string): string => `${page} stands only in the earlier folder`,
  onlyAfter: (page: string): string => `${page} stands only in the later folder`,
} as const;
