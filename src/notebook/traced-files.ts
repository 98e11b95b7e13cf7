import type { CountedRecords } from '../formula/value/account.js';
import type { Book } from '../record/book.js';
import type { Origin } from '../record/records.js';
import { type LineStretches, lineStretches, stretchWords } from './line-ranges.js';

/** The counted rows of one exported file, by their physical lines. */
export interface TracedFile {
  readonly file: string;
  readonly rows: number;
  /** Stretches of lines in words, `2-4`: all of them, made when first asked for. */
  readonly lines: readonly string[];
  /** How many stretches there are. */
  readonly stretches: number;
  /** The first of them in words. */
  readonly first: (most: number) => readonly string[];
}

/** Files of rows that were told before: several cells count the same rows. */
const told = new WeakMap<Uint32Array, { readonly origin: Origin; readonly files: readonly TracedFile[] }>();

/** Where counted records stand in the exports, file by file; nothing where their table was not read from any. */
export function tracedFiles({ table, rows }: CountedRecords, book: Book): readonly TracedFile[] {
  const origin = book.tables.get(table)?.origin;
  if (origin === null || origin === undefined) return [];
  const known = told.get(rows);
  if (known?.origin === origin) return known.files;
  const files = filesOf(rows, origin);
  told.set(rows, { origin, files });
  return files;
}

function filesOf(rows: Uint32Array, { files, fileOf, lineOf }: Origin): readonly TracedFile[] {
  const counts = new Uint32Array(files.length);
  for (let at = 0; at < rows.length; at++) counts[fileOf[rows[at]!]!]!++;
  const linesOf = Array.from(counts, (count) => new Uint32Array(count));
  const filled = new Uint32Array(files.length);
  for (let at = 0; at < rows.length; at++) {
    const file = fileOf[rows[at]!]!;
    linesOf[file]![filled[file]!++] = lineOf[rows[at]!]!;
  }
  return linesOf.flatMap((lines, at) => (lines.length === 0 ? [] : [tracedFile(files[at]!, lines)]));
}

function tracedFile(file: string, lines: Uint32Array): TracedFile {
  const stretches: LineStretches = lineStretches(lines);
  let all: readonly string[] | null = null;
  return {
    file,
    rows: lines.length,
    get lines() {
      all ??= stretchWords(stretches);
      return all;
    },
    stretches: stretches.from.length,
    first: (most) => stretchWords(stretches, most),
  };
}
