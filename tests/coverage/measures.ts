import { parts } from '../../datasets/quillwater/generate/parts.js';
import { choicesOf } from '../../src/finding/choices.js';
import type { Finding, FindingTable } from '../../src/finding/finding.js';
import { foulingSites } from '../../src/finding/fouling-sites.js';
import { interceptions } from '../../src/finding/interceptions.js';
import { isValue } from '../../src/finding/row-tests.js';
import { turnaround } from '../../src/finding/turnaround.js';
import type { Book, BookTable } from '../../src/record/book.js';
import type { Estimate } from '../../src/statistic/estimate.js';
import type { SmallSeason } from './small-season.js';
import { leavingExpectation, trueArrivingRate, trueMedianWait } from './true-values.js';

/** What one season said of one measure, beside the truth. */
export interface Judged {
  readonly measure: string;
  readonly truth: number;
  readonly estimate: Estimate;
}

function askRows(finding: Finding, book: Book, passes: (table: BookTable) => (row: number) => boolean): FindingTable {
  const table = book.tables.get(finding.table)!;
  const rows = Uint32Array.from({ length: table.rowCount }, (_, row) => row).filter(passes(table));
  return finding.find(book, table, rows, [], choicesOf(finding));
}

function estimateAt(found: FindingTable, row: readonly unknown[] | undefined, name: string): Estimate | null {
  const cell = row?.[found.columns.findIndex((column) => column.name === name)];
  return typeof cell === 'object' && cell !== null ? (cell as Estimate) : null;
}

/** Parts whose share of fouled craft is judged one by one; the rest are pooled. */
export const judgedParts = ['hull below waterline', 'transom', 'propeller'] as const;

/** Every measure of a season whose truth the generator knows. */
export function judge({ inspections, book }: SmallSeason): Judged[] {
  const full = inspections.filter(({ extent }) => extent === 'full');
  const leaving = full.filter(({ direction }) => direction === 'leaving');
  const arriving = full.filter(({ direction }) => direction !== 'leaving');
  const isLeaving = (table: BookTable) => isValue(table, 'direction', 'leaving');
  const isArriving = (table: BookTable) => {
    const out = isLeaving(table);
    return (row: number): boolean => !out(row);
  };
  const of = (measure: string, truth: number, estimate: Estimate | null): Judged[] =>
    estimate === null ? [] : [{ measure, truth, estimate }];

  const inbound = askRows(interceptions, book, isArriving);
  const outbound = askRows(interceptions, book, isLeaving);
  const expected = leavingExpectation(leaving);
  const arrivingRate = trueArrivingRate(arriving);
  const leavingRate = expected.fouled / leaving.length;

  const sites = askRows(foulingSites, book, isLeaving);
  const bySite = new Map(sites.rows.map((row) => [row[0], row]));
  const components = parts.flatMap(({ part }) => {
    const found = expected.found.get(part) ?? 0;
    if (found === 0) return [];
    const name = (judgedParts as readonly string[]).includes(part) ? part : 'other parts, pooled';
    const row = bySite.get(part);
    const looks = (expected.looked.get(part) ?? 0) > 0 ? found / expected.looked.get(part)! : 0;
    return [
      ...of(`share of fouled craft: ${name}`, found / expected.fouled, estimateAt(sites, row, 'share_of_fouled')),
      ...of(`fouled per look: ${name}`, looks, estimateAt(sites, row, 'fouled_rate')),
    ];
  });

  const waits = askRows(turnaround, book, () => () => true);
  const washed = inspections.filter(({ wash }) => wash !== null);
  return [
    ...of('interception, arriving', arrivingRate, estimateAt(inbound, inbound.rows[0], 'interception')),
    ...of(
      'interception, arriving, unclustered',
      arrivingRate,
      estimateAt(inbound, inbound.rows[0], 'interception_unclustered'),
    ),
    ...of('interception, leaving', leavingRate, estimateAt(outbound, outbound.rows[0], 'interception')),
    ...components,
    ...of('median wait', trueMedianWait(washed), estimateAt(waits, waits.rows[0], 'median')),
  ];
}

/** Whether an interval holds the truth; without an interval it does not. An end not reached holds everything beyond. */
export function covers({ truth, estimate: { interval } }: Judged): boolean {
  if (interval === null) return false;
  const slack = 1e-12 * Math.abs(truth);
  return (
    (interval.low ?? Number.NEGATIVE_INFINITY) <= truth + slack &&
    truth - slack <= (interval.high ?? Number.POSITIVE_INFINITY)
  );
}
