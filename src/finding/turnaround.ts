import type { BookTable } from '../record/book.js';
import type { Estimate } from '../statistic/estimate.js';
import { everyLower, zeroUpper } from '../statistic/proportion/zero-cases.js';
import type { SurvivalCurve } from '../statistic/survival/curve.js';
import { incidenceAt } from '../statistic/survival/incidence-at.js';
import { survivalQuantile } from '../statistic/survival/quantile.js';
import { restrictedMean } from '../statistic/survival/restricted-mean.js';
import { washStages } from './book/washes.js';
import { numberChoice } from './choices.js';
import { countColumn, keyCells, keyColumns, minutesColumn, numberColumn, shareColumn, wordColumn } from './columns.js';
import { countedBy, counting, modelled, type NumberRules, type RowRule } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows, type RowGroup } from './group-rows.js';
import { sentence } from './sentence.js';
import { type WaitRules, type WaitTimes, waitCause, waitCurve, waitRules, waitTimes } from './wait-times.js';

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
  shareColumn(
    'left_share',
    'left unwashed by the horizon',
    'percent',
    'The share that had left unwashed by then (cumulative incidence, the other ending being through).',
  ),
];

const insideColumn = shareColumn(
  'inside',
  'through within the target',
  'percent',
  'The share through by the target, of all whose stage had begun (cumulative incidence, leaving unwashed competing).',
);

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

/** The share that came to one end by a time, with limits that take station-days as clusters. */
function endedBy({ times }: FollowedGroup, cause: number, minutes: number | null): Estimate {
  if (minutes === null) return minutesEstimate(null, null, times.minutes.length, 'no group has five endings');
  const { value, interval } = incidenceAt(times.minutes, times.cause, cause, minutes, times.cluster);
  const subjects = times.minutes.length;
  const whyNot = subjects === 0 ? 'nothing was counted' : 'not followed that long';
  if (value !== 0 && value !== 1) return minutesEstimate(value, interval, subjects, whyNot);
  // Nobody ended so, or everybody: the one-sided limit of those who ended at all or were followed that far.
  const told = times.minutes.filter((length, at) => times.cause[at] !== waitCause.open || length >= minutes).length;
  return minutesEstimate(value, value === 0 ? zeroUpper(told).interval : everyLower(told), subjects, whyNot);
}

function measure(group: FollowedGroup, horizon: number | null, target: number | null): FindingCell[] {
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
    endedBy(group, waitCause.left, horizon),
    ...(target === null ? [] : [endedBy(group, waitCause.done, target)]),
  ];
}

/** Which washes stand behind each number of a stage; `all` are those of every group that shares its horizon. */
function rulesOf({ followed, done, open, left, unknown }: WaitRules, all: Uint32Array): NumberRules {
  const among = { among: followed };
  const ends = [done, open, left];
  const curve = 'Kaplan-Meier: those that ended among those still followed; open ones are followed to the cut-off';
  const time = modelled(curve, ends, among);
  const share = (end: RowRule) =>
    modelled(
      'a cumulative incidence: the share that ended so, the other ending competing',
      [end, ...ends.filter((one) => one !== end)],
      among,
    );
  return {
    washes: counting(followed),
    done: counting(done),
    open: counting(open),
    left_unwashed: counting(left),
    unknown: counting(unknown),
    median: time,
    p80: time,
    p90: time,
    horizon: modelled('how far the shortest followed of the groups reaches, and no count', [
      { ...followed, words: `${followed.words}, of all groups`, within: () => all },
    ]),
    mean_to_horizon: time,
    left_share: share(left),
    inside: share(done),
  };
}

function stageRows(
  table: BookTable,
  stage: string,
  groups: readonly RowGroup[],
  by: readonly string[],
  target: number | null,
  rules: NumberRules,
) {
  const followed = groups.map(({ key, rows }): FollowedGroup => {
    const times = waitTimes(table, stage, rows);
    return { key, times, curve: waitCurve(times) };
  });
  const horizon = sharedHorizon(followed);
  return followed.map((group, at) => ({
    cells: [...keyCells(table, by, group.key), stage, ...measure(group, horizon, target)],
    rows: groups[at]!.rows,
    rules,
  }));
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
      'Kaplan-Meier with log-log limits; stages open at the cut-off, and craft that left unwashed, are followed until then. Shares that left, and that were through within a target, are cumulative incidences with station-days as clusters; where nobody did, the limit is one-sided, of those that ended or were followed that far. The limits of times take washes as independent.',
    source:
      'Kaplan and Meier 1958, JASA 53:457-481; Brookmeyer and Crowley 1982, Biometrics 38:29-41; Aalen and Johansen 1978, Scand J Statist 5:141-150.',
    formula:
      'S(t) = Π (1 − ended at u ÷ still there before u) over u ≤ t; median = first t with S(t) ≤ ½, or the middle of the stretch on which S is exactly ½; mean to the horizon = ∫ S(t) dt',
    example: { by: [], options: { target: 60 } },
  },
  options: [
    {
      name: 'target',
      kind: 'number',
      unit: 'minutes',
      choices: null,
      usual: null,
      meaning: 'Minutes within which a stage should end; then the share that did is given.',
    },
  ],
  find: (_book, table, rows, by, choices) => {
    const target = numberChoice(choices, 'target');
    const groups = groupRows(table, rows, by);
    const unknown = waitTimes(table, 'turnaround', rows).unknown;
    const found = washStages.flatMap(({ name }) =>
      stageRows(table, name, groups, by, target, rulesOf(waitRules(table, name), rows)),
    );
    return {
      columns: [...keyColumns(table, by), stageColumn, ...columns, ...(target === null ? [] : [insideColumn])],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!),
      leftOut: sentence(unknown, 'wash is', 'washes are', 'left out of the turnaround, whose length is not known.'),
    };
  },
};
