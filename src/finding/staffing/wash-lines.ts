import type { Book, BookTable } from '../../record/book.js';
import { numberAt } from '../../record/column.js';
import { groupRows } from '../group-rows.js';
import { bookNumber, bookText, isValue } from '../row-tests.js';
import { waitCause, waitTimes } from '../wait-times.js';

/** The washes of one station as a line before its units. */
export interface WashLine {
  readonly station: string;
  /** Rows of washes, by the moment of their order. */
  readonly rows: Uint32Array;
  /** When each was ordered, in minutes. */
  readonly ordered: Float64Array;
  /** Units that washed here. */
  readonly units: number;
  /** Lengths of washes to draw from: the station's own, or all stations' where it has too few. */
  readonly lengths: Float64Array;
  /** The washes that have those lengths, as rows. */
  readonly lengthsOf: Uint32Array;
  /** Minutes in the seasons asked of in which the station was open, as far as recorded. */
  readonly openMinutes: number;
  /** The station days that these are of, as rows. */
  readonly days: Uint32Array;
}

/** Fewer recorded washes than this say too little of how long they take. Common practice, no source. */
const enoughWashes = 30;

function endedLengths(table: BookTable, rows: Uint32Array): Float64Array {
  const { minutes, cause } = waitTimes(table, 'washing', rows);
  return minutes.filter((_, at) => cause[at] === waitCause.done);
}

/** The station days of a station in some seasons, as rows, and the minutes that it was open on them. */
function openTime(book: Book, station: string, seasons: ReadonlySet<number>): Pick<WashLine, 'days' | 'openMinutes'> {
  const table = book.tables.get('station_days')!;
  const here = isValue(table, 'station', station);
  const [hours, season] = ['open_hours', 'season'].map((name) => bookNumber(table, name));
  const days: number[] = [];
  let sum = 0;
  for (let row = 0; row < table.rowCount; row++) {
    if (!here(row) || !seasons.has(numberAt(season!, row) ?? 0)) continue;
    days.push(row);
    sum += numberAt(hours!, row) ?? 0;
  }
  return { days: Uint32Array.from(days), openMinutes: sum * 60 };
}

/** Some washes as lines, a station each, and how many stand in none because no wash of their station names a unit. */
export function washLines(
  book: Book,
  table: BookTable,
  rows: Uint32Array,
): { readonly lines: readonly WashLine[]; readonly without: number } {
  const ordered = bookNumber(table, 'ordered_at');
  const season = bookNumber(table, 'season');
  const unit = bookText(table, 'unit');
  const all = endedLengths(table, rows);
  let without = 0;
  const lines = groupRows(table, rows, ['station']).flatMap(({ key: [station], rows: own }): WashLine[] => {
    const units = new Set([...own].map((row) => unit.codes[row]!).filter((code) => code !== 0)).size;
    const known = own.filter((row) => numberAt(ordered, row) !== null);
    if (units === 0 || typeof station !== 'string' || all.length === 0) {
      without += own.length;
      return [];
    }
    without += own.length - known.length;
    const inOrder = known.sort((one, other) => numberAt(ordered, one)! - numberAt(ordered, other)! || one - other);
    const lengths = endedLengths(table, own);
    const seasons = new Set([...own].map((row) => numberAt(season, row) ?? 0));
    return [
      {
        station,
        rows: inOrder,
        ordered: Float64Array.from(inOrder, (row) => numberAt(ordered, row)! / 60_000),
        units,
        ...(lengths.length >= enoughWashes ? { lengths, lengthsOf: own } : { lengths: all, lengthsOf: rows }),
        ...openTime(book, station, seasons),
      },
    ];
  });
  return { lines, without };
}
