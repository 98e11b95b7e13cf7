import { proportionEstimate } from '../../statistic/proportion/estimate.js';
import type { Environment } from '../environment.js';
import { plain } from '../unit/unit.js';
import { mergeAccounts } from './account.js';
import type { IntervalFound, NumberValue } from './evaluated.js';
import { drawnNumber, joinSpreads, least, liftDraws } from './lift.js';
import { numberFrom } from './number.js';
import { totalsByCluster } from './resamples.js';

/** The first place from `from` on at which ascending numbers reach some number, looked for in growing steps. */
function placeOf(number: number, ascending: Uint32Array, from: number): number {
  let step = 1;
  while (ascending[from + step]! < number) step *= 2;
  let [low, high] = [from + (step >> 1), Math.min(from + step, ascending.length)];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle]! < number) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Whether every one of some ascending row numbers is among others, ascending too. */
export function isPartOf(rows: Uint32Array, among: Uint32Array): boolean {
  if (rows === among) return true;
  if (rows.length > among.length) return false;
  // Among few others, every one of them is gone through; among many, steps are taken over them.
  const isDense = rows.length * 8 > among.length;
  for (let position = 0, at = 0; position < rows.length; position += 1) {
    const row = rows[position]!;
    if (isDense) while (among[at]! < row) at += 1;
    else at = placeOf(row, among, at);
    if (among[at] !== row) return false;
  }
  return true;
}

/** Whether one number is the count of some of the rows that the other counts, so that their ratio is a share. */
export function isShare(cases: NumberValue, trials: NumberValue): boolean {
  if (cases.counted === null || trials.counted === null) return false;
  return cases.counted.table === trials.counted.table && isPartOf(cases.counted.rows, trials.counted.rows);
}

/** What each station-day has of the cases and trials of a share; nothing for a table whose rows belong to none. */
export function perCluster(cases: NumberValue, trials: NumberValue, environment: Environment) {
  const table = environment.book.tables.get(trials.counted!.table)!;
  if (table.clusterOf === null) return { clusters: undefined, stationDays: null };
  const of = (number: NumberValue) => totalsByCluster(table, number.counted!.rows, null, environment);
  const [some, all] = [of(cases), of(trials)];
  const caseTotals = new Float64Array(environment.book.clusters.count);
  some.cluster.forEach((cluster, at) => {
    caseTotals[cluster] = some.total[at]!;
  });
  const clusters = {
    cases: Float64Array.from(all.cluster, (cluster) => caseTotals[cluster]!),
    trials: Float64Array.from(all.total),
  };
  return { clusters, stationDays: all.cluster };
}

/** Whether something from records decided which rows a number counts, so that methods for rows that are given do not hold. */
export function isDecided({ accounts }: NumberValue): boolean {
  return accounts.some(({ decidedBy }) => decidedBy !== undefined);
}

/** The share of counted rows that are also among others, as a plain number with its exact interval for clusters. */
export function proportion(cases: NumberValue, trials: NumberValue, environment: Environment): NumberValue {
  const counts = { cases: cases.value!, trials: trials.value! };
  const value = counts.trials === 0 ? null : counts.cases / counts.trials;
  const each = (some: number, all: number) => (all === 0 ? Number.NaN : some / all);
  const decided = isDecided(cases) || isDecided(trials);
  const exact = (): IntervalFound => {
    const { clusters } = perCluster(cases, trials, environment);
    const { interval, why, cautions } = proportionEstimate(clusters === undefined ? counts : { ...counts, clusters });
    return { interval, why, cautions };
  };
  return numberFrom(
    {
      value,
      unit: plain,
      why: value === null ? 'nothing was counted, so that there is no share' : null,
      standing: 'estimate',
      numerator: counts.cases,
      denominator: counts.trials,
      shareOf: { cases, trials },
      draws: liftDraws(each, [drawnNumber(cases), drawnNumber(trials)]),
      ownInterval: decided ? null : exact,
      barred: cases.barred ?? trials.barred,
      fewest: least([counts.cases, counts.trials - counts.cases, cases.fewest, trials.fewest]),
      clusters: () => joinSpreads([cases, trials]),
      accounts: mergeAccounts([cases.accounts, trials.accounts]),
    },
    environment,
  );
}
