import type { BookTable } from '../record/book.js';
import type { Estimate } from '../statistic/estimate.js';
import { incidenceAt } from '../statistic/survival/incidence-at.js';
import { kaplanMeier } from '../statistic/survival/kaplan-meier.js';
import { keyCells, keyColumns, numberColumn, shareColumn } from './columns.js';
import { countedBy, modelled } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { sentence } from './sentence.js';
import { keptSteps } from './turnaround-curve.js';
import { waitCause, waitRules, waitTimes } from './wait-times.js';

const endingColumns: readonly FindingColumn[] = [
  numberColumn('minutes', 'minutes', 'minutes', 'minutes', 'Minutes since the order.'),
  shareColumn('through', 'released', 'percent', 'The share released after a wash by then.'),
  shareColumn('left', 'left unwashed', 'percent', 'The share that had left unwashed by then.'),
];

/** Minutes at which both shares are told: the steps of the curve kept for drawing. */
function endingPoints(table: BookTable, rows: Uint32Array): FindingCell[][] {
  const { minutes, cause, cluster } = waitTimes(table, 'turnaround', rows);
  const anyEnd = kaplanMeier(
    minutes,
    cause.map((code) => (code === waitCause.open ? 0 : 1)),
  );
  const share = (of: number, at: number): Estimate => {
    const { value, interval } = incidenceAt(minutes, cause, of, at, cluster);
    const why = interval === null ? 'no limits where nobody, or everybody, has ended so' : null;
    return { value, numerator: null, denominator: minutes.length, interval, why, cautions: [] };
  };
  return [0, ...keptSteps(anyEnd).map((step) => anyEnd.times[step]!)].map((at) => [
    at,
    share(waitCause.done, at),
    share(waitCause.left, at),
  ]);
}

/** Both ends of a turnaround over time: released, and left unwashed. */
export const endingCurve: Finding = {
  name: 'ending curve',
  table: 'decontaminations',
  account: {
    definition: 'Of craft ordered to be washed, the share released, and the share that left unwashed, by minutes.',
    numerator: 'Washes that ended so by that time.',
    denominator: 'Washes ordered; those still open count as long as they were followed.',
    leftOut: 'Washes without a known length.',
    method:
      'Cumulative incidence of two competing ends, with log-log limits that take station-days as clusters; of more than 100 steps, those are kept at which the share has moved by a hundredth.',
    source: 'Aalen and Johansen 1978, Scand J Statist 5:141-150; Therneau and Grambsch 2000, section 2.2.',
    formula: 'F(t) = Σ S(u−) × ended so at u ÷ still there before u, over u ≤ t; S falls by every end',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, by) => {
    const { followed, done, open, left } = waitRules(table, 'turnaround');
    const share = modelled(
      'a cumulative incidence: those that ended so by then, the other ending competing',
      [done, left, open],
      {
        among: followed,
      },
    );
    const rules = {
      minutes: modelled('a time at which the curve is drawn, and no count', [followed]),
      through: share,
      left: share,
    };
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) =>
      endingPoints(table, own).map((cells) => ({ cells: [...keyCells(table, by, key), ...cells], rows: own, rules })),
    );
    return {
      columns: [...keyColumns(table, by), ...endingColumns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!),
      leftOut: sentence(
        waitTimes(table, 'turnaround', rows).unknown,
        'wash is',
        'washes are',
        'left out: of no known length.',
      ),
    };
  },
};
