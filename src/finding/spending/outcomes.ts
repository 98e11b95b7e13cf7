import type { Book } from '../../record/book.js';
import { numberAt, textAt } from '../../record/column.js';
import { bookNumber, bookText, isValue } from '../row-tests.js';

/** One thing that money buys, as it was recorded day by day. */
export interface Outcome {
  /** One of it: `full inspection`. */
  readonly name: string;
  /** What was added on each station-day, in the order of the rows; a row's station-day is that of its table. */
  readonly events: readonly OutcomeEvent[];
}

/** An amount on a station-day. */
export interface OutcomeEvent {
  readonly cluster: number;
  readonly station: string | null;
  readonly year: number | null;
  readonly amount: number;
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
  const of = (name: string, table: string, amountOf: AmountOf): Outcome => {
    return { name, events: eventsOf(book, table, amountOf) };
  };
  const one = (test: (row: number) => boolean) => (row: number) => (test(row) ? 1 : 0);
  return [
    of('staff hour recorded', 'station_days', (row) => (isOpen(row) ? (numberAt(hours, row) ?? 0) : 0)),
    of('open station day', 'station_days', one(isOpen)),
    of('inspection of any kind', 'inspections', () => 1),
    of('full inspection', 'inspections', one(isFull)),
    of(
      'high-risk full inspection',
      'inspections',
      one((row) => isFull(row) && isHigh(row)),
    ),
    of('wash ordered', 'decontaminations', () => 1),
    of(
      'interception',
      'inspections',
      one((row) => isFull(row) && found(row)),
    ),
  ];
}
