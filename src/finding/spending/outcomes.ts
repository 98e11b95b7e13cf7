import type { Book } from '../../record/book.js';
import { numberAt, textAt } from '../../record/column.js';
import { everyRowOf } from '../../record/every-row.js';
import { once } from '../book/once.js';
import type { RowRule } from '../counted-rows.js';
import { bookNumber, bookText, hasText, isValue } from '../row-tests.js';

/** One thing that money buys, as it was recorded day by day. */
export interface Outcome {
  /** One of it: `full inspection`. */
  readonly name: string;
  /** What was added on each station-day, in the order of the rows; a row's station-day is that of its table. */
  readonly events: readonly OutcomeEvent[];
  /** The rows that it is recorded in, of some years, and at one station where one is named. */
  readonly rowsIn: (years: ReadonlySet<number | null>, station: string | null | undefined) => RowRule;
}

/** An amount on a station-day. */
export interface OutcomeEvent {
  readonly cluster: number;
  readonly station: string | null;
  readonly year: number | null;
  readonly amount: number;
}

/** Which rows of a table tell of it: `adds` is the field that is added up, where not each row is one. */
interface OutcomeRows {
  readonly table: string;
  readonly holds: (row: number) => boolean;
  readonly adds?: string;
}

function rowsOf(book: Book, name: string, { table: of, holds, adds }: OutcomeRows): Outcome['rowsIn'] {
  const table = book.tables.get(of)!;
  const [stationOf, seasonOf] = [bookText(table, 'station'), bookNumber(table, 'season')];
  const every = once(() => everyRowOf(table.rowCount));
  return (years, station) => ({
    words: `${name}, of the same years${station === undefined ? '' : ' and station'}`,
    table: of,
    ...(adds === undefined ? {} : { adds }),
    within: every,
    holds: (row) =>
      holds(row) && years.has(numberAt(seasonOf, row)) && (station === undefined || textAt(stationOf, row) === station),
  });
}

type AmountOf = (row: number) => number;

function eventsOf(book: Book, name: string, amountOf: AmountOf): OutcomeEvent[] {
  const table = book.tables.get(name)!;
  const station = bookText(table, 'station');
  const season = bookNumber(table, 'season');
  const events: { -readonly [Part in keyof OutcomeEvent]: OutcomeEvent[Part] }[] = [];
  const ofCluster = new Map<number, (typeof events)[number]>();
  for (let row = 0; row < table.rowCount; row++) {
    const amount = amountOf(row);
    if (amount === 0) continue;
    const own = {
      cluster: table.clusterOf?.[row] ?? row,
      station: textAt(station, row),
      year: numberAt(season, row),
      amount,
    };
    const same = ofCluster.get(own.cluster);
    if (same !== undefined && same.station === own.station && same.year === own.year) same.amount += amount;
    else {
      events.push(own);
      ofCluster.set(own.cluster, own);
    }
  }
  return events;
}

/** The outcome that is told only where risk was recorded at all. */
export const ofHighRisk = 'high-risk full inspection';

const known = new WeakMap<Book, readonly Outcome[]>();

/** Everything that a season's money is held against, from what was put in to what was found; gathered once for a book. */
export function outcomes(book: Book): readonly Outcome[] {
  const found = known.get(book) ?? gatherOutcomes(book);
  known.set(book, found);
  return found;
}

function gatherOutcomes(book: Book): readonly Outcome[] {
  const [days, inspections] = [book.tables.get('station_days')!, book.tables.get('inspections')!];
  const isOpen = isValue(days, 'state', 'open');
  const hours = bookNumber(days, 'staff_hours');
  const isFull = isValue(inspections, 'extent', 'full');
  const found = isValue(inspections, 'outcome', 'intercepted');
  const isHigh = isValue(inspections, 'risk', 'high');
  const of = (name: string, own: OutcomeRows): Outcome => {
    const adds = own.adds === undefined ? null : bookNumber(book.tables.get(own.table)!, own.adds);
    const amountOf = (row: number): number => (own.holds(row) ? (adds === null ? 1 : (numberAt(adds, row) ?? 0)) : 0);
    return { name, events: eventsOf(book, own.table, amountOf), rowsIn: rowsOf(book, name, own) };
  };
  const all = (): boolean => true;
  const hasRisk = hasText(inspections, 'risk');
  // Where nobody wrote the risk down, no craft of high risk is known, which is not the same as none.
  const isRiskTold = Array.from({ length: inspections.rowCount }, (_, row) => row).some(hasRisk);
  const highRisk: OutcomeRows = { table: 'inspections', holds: (row) => isFull(row) && isHigh(row) };
  return [
    of('staff hour recorded', {
      table: 'station_days',
      holds: (row) => isOpen(row) && numberAt(hours, row) !== null,
      adds: 'staff_hours',
    }),
    of('open station day', { table: 'station_days', holds: isOpen }),
    of('inspection of any kind', { table: 'inspections', holds: all }),
    of('full inspection', { table: 'inspections', holds: isFull }),
    ...(isRiskTold ? [of(ofHighRisk, highRisk)] : []),
    of('wash ordered', { table: 'decontaminations', holds: all }),
    of('interception', { table: 'inspections', holds: (row) => isFull(row) && found(row) }),
  ];
}
