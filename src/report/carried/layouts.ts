import type { TextColumn } from '../../record/column.js';
import { type NumberPacker, type PackedNumbers, unpackNumbers } from './packed-numbers.js';

/**
 * Rows that follow one another and have the same parent, where most parents have one of a few rows' patterns: a checklist has
 * the same parts in the same order on every craft of its kind.
 */
export interface PackedLayouts {
  /** The parent of each run of rows, and the pattern that the run has. */
  readonly parents: PackedNumbers;
  readonly patternOf: PackedNumbers;
  /** How many rows each pattern has. */
  readonly lengths: PackedNumbers;
}

/** Rows found to be laid out so, before they are packed. */
export interface Layouts {
  readonly parents: Uint32Array;
  readonly patternOf: Uint32Array;
  /** The first row of each pattern's first run, and how many rows it has. */
  readonly firstRows: readonly number[];
  readonly lengths: readonly number[];
}

/** More patterns than this, and a column of its own says as much. */
const mostPatterns = 5000;

/** The layouts of some columns over runs of rows with one parent; null where there are too many. */
export function findLayouts(parentOf: Int32Array, columns: readonly TextColumn[]): Layouts | null {
  const parents: number[] = [];
  const patternOf: number[] = [];
  const firstRows: number[] = [];
  const lengths: number[] = [];
  const numberOf = new Map<string, number>();
  for (let row = 0; row < parentOf.length; ) {
    const from = row;
    let key = '';
    for (; row < parentOf.length && parentOf[row] === parentOf[from]; row++) {
      for (const { codes } of columns) key += `${codes[row]},`;
    }
    let pattern = numberOf.get(key);
    if (pattern === undefined) {
      pattern = numberOf.size;
      if (pattern === mostPatterns) return null;
      numberOf.set(key, pattern);
      firstRows.push(from);
      lengths.push(row - from);
    }
    parents.push(parentOf[from]!);
    patternOf.push(pattern);
  }
  return { parents: Uint32Array.from(parents), patternOf: Uint32Array.from(patternOf), firstRows, lengths };
}

/** Packs layouts. */
export function packLayouts({ parents, patternOf, lengths }: Layouts, packer: NumberPacker): PackedLayouts {
  return { parents: packer.pack(parents), patternOf: packer.pack(patternOf), lengths: packer.pack(lengths) };
}

/** A column's codes over the rows of every pattern, one pattern after the other. */
export function codesOfPatterns({ firstRows, lengths }: Layouts, { codes }: TextColumn): Uint32Array {
  return Uint32Array.from(
    firstRows.flatMap((first, pattern) => Array.from({ length: lengths[pattern]! }, (_, at) => codes[first + at]!)),
  );
}

/** The parent of each of so many rows. */
export function parentsOf(packed: PackedLayouts, rowCount: number, bytes: Uint8Array): Int32Array {
  const parents = unpackNumbers(packed.parents, bytes);
  const out = new Int32Array(rowCount);
  eachRun(packed, bytes, (run, _pattern, from, length) => out.fill(parents[run]!, from, from + length));
  return out;
}

/** A column's code in each of so many rows, from its codes over the rows of every pattern. */
export function codesOfRows(
  packed: PackedLayouts,
  ofPatterns: Float64Array,
  rowCount: number,
  bytes: Uint8Array,
): Uint32Array {
  const lengths = unpackNumbers(packed.lengths, bytes);
  const starts = new Uint32Array(lengths.length);
  for (let pattern = 1; pattern < starts.length; pattern++) {
    starts[pattern] = starts[pattern - 1]! + lengths[pattern - 1]!;
  }
  const out = new Uint32Array(rowCount);
  eachRun(packed, bytes, (_run, pattern, from, length) => {
    const start = starts[pattern]!;
    for (let at = 0; at < length; at++) out[from + at] = ofPatterns[start + at]!;
  });
  return out;
}

function eachRun(
  packed: PackedLayouts,
  bytes: Uint8Array,
  visit: (run: number, pattern: number, from: number, length: number) => void,
): void {
  const patterns = unpackNumbers(packed.patternOf, bytes);
  const lengths = unpackNumbers(packed.lengths, bytes);
  let from = 0;
  for (let run = 0; run < patterns.length; run++) {
    const length = lengths[patterns[run]!]!;
    visit(run, patterns[run]!, from, length);
    from += length;
  }
}
