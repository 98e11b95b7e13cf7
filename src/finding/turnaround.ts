import type { BookTable } from '../record/book.js';
import type { Estimate } from '../statistic/estimate.js';
import { cumulativeIncidence } from '../statistic/survival/cumulative-incidence.js';
import type { SurvivalCurve } from '../statistic/survival/curve.js';
import { survivalQuantile } from '../statistic/survival/quantile.js';
import { restrictedMean } from '../statistic/survival/restricted-mean.js';
import { washStages } from './book/washes.js';
import { countColumn, keyCells, keyColumns, minutesColumn, numberColumn, wordColumn } from './columns.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows, type RowGroup } from './group-rows.js';
import { sentence } from './sentence.js';
import { type WaitTimes, waitCause, waitCurve, waitTimes } from './wait-times.js';

const stageColumn = wordColumn(
  'stage',
  'stage',
  'wait: order to start; washing: start to finish; hold: finish to release; turnaround: order to release.',
);

const columns: readonly FindingColumn[] = [
  countColumn('washes', 'washes', 'washes', 'Washes whose stage had begun and is known.'),
  countColumn('done', 'ended', 'washes', 'Washes whose stage was seen to end.'),
  countColumn('open', 'still open', 'washes', 'Washes whose stage still went on at the cut-off; followed until then.'),
  countColumn('left_unwashed', 'left unwashed', 'washes', 'Craft that went away first; followed until they left.'),
  countColumn('unknown', 'not begun or not known', 'washes', 'Washes whose stage has no known length; left out.'),
  minutesColumn('median', 'median', 'Half of the craft were through by then.'),
  minutesColumn('p80', '80th percentile', 'Eight of ten craft were through by then.'),
  minutesColumn('p90', '90th percentile', 'Nine of ten craft were through by then.'),
  numberColumn(
    'horizon',
    'horizon',
    'minutes',
    'minutes',
    'As far as every group with at least five endings can be followed; the same for all groups of a stage.',
  ),
  minutesColumn('mean_to_horizon', 'mean to the horizon', 'The mean of the time or the horizon, whichever is first.'),
  numberColumn(
    'left_share',
    'left unwashed by the horizon',
    null,
    'percent',
    'The share that had left unwashed by then (cumulative incidence, the other ending being through).',
  ),
];

/** Groups with fewer endings than this do not set the shared horizon. */
const enoughEndings = 5;

interface FollowedGroup {
  readonly key: RowGroup['key'];
  readonly times: WaitTimes;
  readonly curve: SurvivalCurve;
}

/** A value with its limits, or why there is none. */
function minutesEstimate(
  value: number | null,
  interval: Estimate['interval'],
  denominator: number,
  whyNot: string,
): Estimate {
  const limits = interval !== null && (interval.low !== null || interval.high !== null) ? interval : null;
  const why = value === null ? whyNot : limits === null ? 'the limits are not reached' : null;
  return { value, numerator: null, denominator, interval: value === null ? null : limits, why, cautions: [] };
}

function quantileEstimate({ curve }: FollowedGroup, p: number): Estimate {
  if (curve.subjects === 0) return minutesEstimate(null, null, 0, 'nothing was counted');
  const { value, interval } = survivalQuantile(curve, p);
  return minutesEstimate(value, interval, curve.subjects, `fewer than ${p * 100} % were seen to end`);
}

/** How far the shortest followed of the groups reaches; a group all of whose stages ended can be followed for ever. */
function sharedHorizon(groups: readonly FollowedGroup[]): number | null {
  const counted = groups.filter(({ times }) => times.done >= enoughEndings);
  const followed = (some: readonly FollowedGroup[]): number[] => some.map(({ curve }) => curve.followedTo ?? 0);
  const unfinished = counted.filter(({ curve }) => curve.survival.at(-1) !== 0);
  const horizon = unfinished.length > 0 ? Math.min(...followed(unfinished)) : Math.max(0, ...followed(counted));
  return horizon > 0 ? horizon : null;
}

function meanEstimate({ curve }: FollowedGroup, horizon: number | null): Estimate {
  if (horizon === null) return minutesEstimate(null, null, curve.subjects, 'no group has five endings');
  const { value, interval } = restrictedMean(curve, horizon);
  return minutesEstimate(value, interval, curve.subjects, 'not followed as far as the horizon');
}

function leftShare({ times }: FollowedGroup, horizon: number | null): number | null {
  if (horizon === null || times.minutes.length === 0) return null;
  const byCause = cumulativeIncidence(times.minutes, times.cause, [horizon]);
  const left = byCause.find(({ cause }) => cause === waitCause.left);
  return left === undefined ? 0 : (left.incidence[0] ?? null);
}

function measure(group: FollowedGroup, horizon: number | null): FindingCell[] {
  const { times } = group;
  return [
    times.minutes.length,
    times.done,
    times.open,
    times.left,
    times.unknown,
    quantileEstimate(group, 0.5),
    quantileEstimate(group, 0.8),
    quantileEstimate(group, 0.9),
    horizon,
    meanEstimate(group, horizon),
    leftShare(group, horizon),
  ];
}

function stageRows(table: BookTable, stage: string, groups: readonly RowGroup[], by: readonly string[]) {
  const followed = groups.map(({ key, rows }): FollowedGroup => {
    const times = waitTimes(table, stage, rows);
    return { key, times, curve: waitCurve(times) };
  });
  const horizon = sharedHorizon(followed);
  return followed.map((group) => [...keyCells(table, by, group.key), stage, ...measure(group, horizon)]);
}

/** How long craft wait, are washed and are held; a craft still held is followed to the cut-off, not dropped. */
export const turnaround: Finding = {
  name: 'turnaround',
  table: 'decontaminations',
  account: {
    definition:
      'Minutes from order to start (wait), start to finish (washing), finish to release (hold), and order to release (turnaround), in elapsed time.',
    numerator: 'Washes whose stage was seen to end.',
    denominator: 'Washes whose stage had begun; open ones count as long as they were followed.',
    leftOut: 'Stages not begun, or whose beginning or passed end was not recorded, or whose times are out of order.',
    method:
      'Kaplan-Meier with log-log limits; stages open at the cut-off, and craft that left unwashed, are followed until then. The share that left is a cumulative incidence. The limits take washes as independent.',
    source:
      'Kaplan and Meier 1958, JASA 53:457-481; Brookmeyer and Crowley 1982, Biometrics 38:29-41; Aalen and Johansen 1978.',
    formula:
      'S(t) = Π (1 − ended at u ÷ still there before u) over u ≤ t; median = first t with S(t) ≤ ½; mean to the horizon = ∫ S(t) dt',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, by) => {
    const groups = groupRows(table, rows, by);
    const unknown = waitTimes(table, 'turnaround', rows).unknown;
    return {
      columns: [...keyColumns(table, by), stageColumn, ...columns],
      rows: washStages.flatMap(({ name }) => stageRows(table, name, groups, by)),
      leftOut: sentence(unknown, 'wash is', 'washes are', 'left out of the turnaround, whose length is not known.'),
    };
  },
};
