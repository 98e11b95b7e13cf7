import { once } from '../../finding/book/once.js';
import type { BookTable } from '../../record/book.js';
import type { Environment } from '../environment.js';
import { recordedUnit } from '../unit/read-unit.js';
import type { Unit } from '../unit/unit.js';
import type { CountedRecords } from './account.js';
import { drawnTotals } from './drawn-totals.js';
import type { NumberValue } from './evaluated.js';
import { numberFrom } from './number.js';
import { drawTotals, totalsByCluster } from './resamples.js';

/** Rows of a table, with how they came to be the ones. */
export interface SelectedRows {
  readonly table: BookTable;
  readonly account: CountedRecords;
}

/**
 * What rows of a table give beyond their number: draws and spread over station-days, where they belong to any. Rows that
 * belong to none are given, so that few of them make no interval dishonest.
 */
export function clusteredTotals(
  table: BookTable,
  rows: Uint32Array,
  amounts: Float64Array | null,
  environment: Environment,
): Pick<NumberValue, 'draws' | 'clusters' | 'cautions' | 'fewest'> {
  if (table.clusterOf === null) {
    const cautions = [`${table.name}: taken as given, because its rows belong to no station-day`];
    return { draws: null, clusters: () => null, cautions, fewest: null };
  }
  const totals = once(() => totalsByCluster(table, rows, amounts, environment));
  return {
    draws: () => drawTotals(totals(), environment),
    clusters: () => ({ fewest: totals().cluster.length, most: totals().cluster.length }),
    cautions: [],
    fewest: rows.length,
  };
}

/** The same for rows that a threshold from records decides: it is drawn again with them. */
function decidedTotals(
  { table, account }: SelectedRows,
  amounts: Float64Array | null,
  drawnAmounts: Float64Array | null,
  environment: Environment,
): ReturnType<typeof clusteredTotals> {
  const known = clusteredTotals(table, account.rows, amounts, environment);
  const { drawn } = account;
  if (drawn === undefined || known.draws === null) return known;
  return {
    ...known,
    draws: () => drawnTotals(drawn, table, drawnAmounts, environment),
    clusters: () => {
      const [own, deciding] = [known.clusters()!, drawn.clusters()];
      if (deciding === null) return own;
      return { fewest: Math.min(own.fewest, deciding.fewest), most: Math.max(own.most, deciding.most) };
    },
    fewest: Math.min(account.rows.length, drawn.fewest ?? account.rows.length),
  };
}

const noneKnown = 'what the condition asks for is recorded in none of the rows';

const noneTold = 'no row has the field';

/**
 * How many rows there are: a census, in what the table's rows are counted in. Missing where a condition asks for what no row
 * says: what was never recorded was not found to be none.
 */
export function countOf(selected: SelectedRows, environment: Environment): NumberValue {
  const { table, account } = selected;
  const { rows } = account;
  const why = account.noneKnown === true ? noneKnown : null;
  return numberFrom(
    {
      value: why === null ? rows.length : null,
      why,
      unit: recordedUnit(table.counted),
      standing: 'census',
      counted: { table: table.name, rows },
      accounts: [account],
      ...decidedTotals(selected, null, null, environment),
    },
    environment,
  );
}

/**
 * The total of a field over rows that all have it, one amount a row: a census, in the field's unit. Missing where there are
 * rows and none of them has the field: what was never recorded does not add up to none. `drawnAmounts` are those
 * of the rows that a threshold decides anew, where one does.
 */
export function totalOf(
  selected: SelectedRows,
  amounts: Float64Array,
  unit: Unit,
  environment: Environment,
  drawnAmounts: Float64Array | null = null,
): NumberValue {
  const { account } = selected;
  const total = amounts.reduce((sum, amount) => sum + amount, 0);
  const isUntold = account.rows.length === 0 && account.skippedMissing > 0;
  const finite = Number.isFinite(total) ? null : 'the total is too large to be a number';
  const why = account.noneKnown === true ? noneKnown : isUntold ? noneTold : finite;
  return numberFrom(
    {
      value: why === null ? total : null,
      why,
      unit,
      standing: 'census',
      accounts: [account],
      ...decidedTotals(selected, amounts, drawnAmounts, environment),
    },
    environment,
  );
}
