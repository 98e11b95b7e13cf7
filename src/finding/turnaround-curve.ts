import type { Estimate } from '../statistic/estimate.js';
import type { SurvivalCurve } from '../statistic/survival/curve.js';
import { washStages } from './book/washes.js';
import { countColumn, keyCells, keyColumns, numberColumn, shareColumn } from './columns.js';
import { countedBy, counting, modelled } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { sentence } from './sentence.js';
import { waitCurve, waitRules, waitTimes } from './wait-times.js';

const columns: readonly FindingColumn[] = [
  numberColumn('minutes', 'minutes', 'minutes', 'minutes', 'Minutes since the stage began.'),
  shareColumn(
    'still_there',
    'share not through',
    'percent',
    'The share of craft not yet through just after that time.',
  ),
  countColumn('followed', 'followed', 'washes', 'Washes still open and followed just before that time.'),
];

/** At most this many steps of a curve are kept; with both ends that is fewer than 120 points. */
const mostSteps = 100;

/** The steps of a curve to draw: those at which the share has fallen by a hundredth since the last one kept, and the last step. */
export function keptSteps({ survival }: SurvivalCurve): number[] {
  const kept: number[] = [];
  let last = 1;
  survival.forEach((share, step) => {
    const isLast = step === survival.length - 1;
    if (!isLast && survival.length > mostSteps && last - share < 1 / mostSteps) return;
    kept.push(step);
    last = share;
  });
  return kept;
}

function shareAt(curve: SurvivalCurve, step: number): Estimate {
  const value = curve.survival[step]!;
  const low = curve.low[step] ?? null;
  const high = curve.high[step] ?? null;
  const base = { value, numerator: null, denominator: curve.subjects, cautions: [] };
  if (low === null || high === null) return { ...base, interval: null, why: 'no limits where the curve reaches 0' };
  const { confidence } = curve;
  return { ...base, interval: { low, high, confidence, sides: 'two', method: 'Kaplan-Meier, log-log' }, why: null };
}

function pointsOf(curve: SurvivalCurve): FindingCell[][] {
  if (curve.subjects === 0) return [];
  const start: Estimate = {
    value: 1,
    numerator: null,
    denominator: curve.subjects,
    interval: null,
    why: 'everybody is there at the start',
    cautions: [],
  };
  const steps = keptSteps(curve).map((step) => [curve.times[step]!, shareAt(curve, step), curve.atRisk[step]!]);
  const end = curve.followedTo!;
  const tail = end > (curve.times.at(-1) ?? 0) ? [[end, steps.at(-1)?.[1] ?? start, null]] : [];
  return [[0, start, curve.subjects], ...steps, ...tail];
}

/** The curve of one stage of a wash as points for a chart. */
function stageCurve(stage: string, meaning: string): Finding {
  return {
    name: `${stage} curve`,
    table: 'decontaminations',
    account: {
      definition: `The share of craft not yet through, by minutes. ${meaning}`,
      numerator: 'Washes whose stage still goes on at that time.',
      denominator: 'Washes whose stage had begun.',
      leftOut: 'Stages not begun, or without a known length.',
      method:
        'Kaplan-Meier with log-log limits at each time alone; of more than 100 steps, those are kept at which the share has fallen by a hundredth.',
      source: 'Kaplan and Meier 1958, JASA 53:457-481.',
      formula: 'S(t) = Π (1 − ended at u ÷ still there before u) over u ≤ t',
      example: { by: [], options: {} },
    },
    find: (_book, table, rows, by) => {
      const { followed, done, open, left, atRisk } = waitRules(table, stage);
      const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) =>
        pointsOf(waitCurve(waitTimes(table, stage, own))).map((cells) => ({ key, cells, rows: own })),
      );
      const time = modelled('a time at which the curve is drawn, and no count', [followed]);
      const share = modelled(
        'Kaplan-Meier: those that ended among those still followed; open ones are followed to the cut-off',
        [done, open, left],
        { among: followed },
      );
      return {
        columns: [...keyColumns(table, by), ...columns],
        rows: found.map(({ key, cells }) => [...keyCells(table, by, key), ...cells]),
        counted: countedBy((row) => {
          const { cells, rows: own } = found[row]!;
          const [minutes] = cells;
          return {
            rows: own,
            rules: { minutes: time, still_there: share, followed: counting(atRisk(Number(minutes))) },
          };
        }),
        leftOut: sentence(
          waitTimes(table, stage, rows).unknown,
          'wash is',
          'washes are',
          'left out: not begun, or of no known length.',
        ),
      };
    },
  };
}

/** One curve a stage: `wait curve`, `washing curve`, `hold curve`, `turnaround curve`. */
export const stageCurves: readonly Finding[] = washStages.map(({ name, meaning }) => stageCurve(name, meaning));
