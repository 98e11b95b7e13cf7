import type { Clusters } from '../../record/book.js';
import { numberAt } from '../../record/column.js';
import type { Estimate, Interval } from '../../statistic/estimate.js';
import { costPerEvent } from '../../statistic/ratio/cost-per-event.js';
import { clusterWeights } from '../../statistic/resample/cluster-weights.js';
import { weightedTotals } from '../../statistic/resample/weighted-totals.js';
import { estimateColumn, keyCells, keyColumns, numberColumn, wordColumn } from '../columns.js';
import { countedBy, counting, modelled } from '../counted-rows.js';
import type { Finding, FindingChoices, FindingColumn } from '../finding.js';
import { groupRows } from '../group-rows.js';
import { bookNumber } from '../row-tests.js';
import { sentence } from '../sentence.js';
import { withheld } from '../small-numbers.js';
import { costLimits } from './cost-limits.js';
import { type OutcomeEvent, ofHighRisk, outcomes } from './outcomes.js';

const columns: readonly FindingColumn[] = [
  wordColumn('outcome', 'for each', 'The denominator: what was counted, in the same years and at the same station.'),
  numberColumn('count', 'counted', null, 'whole', 'How many were recorded.'),
  numberColumn('spent', 'spent', 'dollars', 'dollars', 'All that was booked, refunds taken off.'),
  estimateColumn('cost_each', 'cost of each', 'dollars', 'dollars and cents', 'What was spent by what was counted.'),
];

type Resamples = FindingChoices['resamples'];

/** With fewer of a thing, drawing days again says too little of its chance. Common practice, no source. */
const enoughOfIt = 20;

/** Draws of the station-days of some stations and years, whether or not anything was counted on them. */
interface DrawnDays {
  readonly placeOf: ReadonlyMap<number, number>;
  readonly weights: Uint8Array;
  readonly count: number;
}

/** Draws made before: edits and notebooks ask for those of the same stations and years again. */
const drawnFor = new WeakMap<Clusters, Map<string, DrawnDays>>();

/** Each takes as many bytes as it has days and draws, some three million for a season of a large program. */
const mostDrawn = 8;

function drawDays(clusters: Clusters, events: readonly OutcomeEvent[], { count, seed }: Resamples): DrawnDays {
  const { stratumOf } = clusters;
  const strata = new Set(events.map(({ cluster }) => stratumOf[cluster]!));
  const known = drawnFor.get(clusters) ?? new Map<string, DrawnDays>();
  drawnFor.set(clusters, known);
  const key = [count, seed, ...[...strata].sort((one, other) => one - other)].join(' ');
  const drawn = known.get(key) ?? drawDaysOf(strata, clusters, count, seed);
  // The one that was asked for longest ago is let go.
  known.delete(key);
  known.set(key, drawn);
  if (known.size > mostDrawn) known.delete(known.keys().next().value!);
  return drawn;
}

function drawDaysOf(strata: ReadonlySet<number>, clusters: Clusters, draws: number, seed: number): DrawnDays {
  const { count, stratumOf } = clusters;
  const days = Array.from({ length: count }, (_, cluster) => cluster).filter((day) => strata.has(stratumOf[day]!));
  const weights = clusterWeights(
    days.map((day) => stratumOf[day]!),
    draws,
    seed,
  );
  return { placeOf: new Map(days.map((day, place) => [day, place])), weights, count: draws };
}

function limitsOf(cost: number, events: readonly OutcomeEvent[], drawn: DrawnDays) {
  const totals = new Map<number, number>();
  for (const { cluster, amount } of events) {
    const place = drawn.placeOf.get(cluster)!;
    totals.set(place, (totals.get(place) ?? 0) + amount);
  }
  const total = { cluster: [...totals.keys()], total: [...totals.values()] };
  return costLimits(cost, totals.size, () => weightedTotals(drawn.weights, total, drawn.count, drawn.placeOf.size));
}

function costEach(
  cost: number,
  count: number,
  events: readonly OutcomeEvent[],
  rare: boolean,
  drawn: DrawnDays,
): Estimate {
  const known = { numerator: null, denominator: count, cautions: [] };
  if (cost <= 0) return withheld('nothing was spent', null, count);
  if (rare) {
    const { value, interval, lowerIfNone } = costPerEvent(cost, count);
    const why = value === null ? 'none was counted: each costs at least the lower limit' : null;
    if (value !== null) return { value, interval, why, ...known };
    const least: Interval = { ...interval, low: lowerIfNone, high: null, sides: 'lower' };
    return { value, interval: least, why, ...known };
  }
  if (count === 0) return withheld('none was counted', null, 0);
  return { value: cost / count, ...limitsOf(cost, events, drawn), ...known };
}

const riskUntold = 'The risk of no inspection was recorded, so that those of high risk are not told.';

/** What each hour, inspection, wash and interception cost, each by a denominator of its own. */
export const outcomeCosts: Finding = {
  name: 'outcome costs',
  table: 'spending',
  account: {
    definition:
      'What was spent, by each thing it is held against. The same money gives a different cost for every denominator, so each is named.',
    numerator: 'Dollars booked, refunds taken off.',
    denominator:
      'What the row names, of the calendar years of the fiscal years asked of, at the station where one is named.',
    leftOut:
      'Money that no station was named for stands in no station’s cost. High-risk inspections, where the risk of none was recorded.',
    method:
      'A ratio of totals: an average, not what one more would cost. The cost is taken as known. Limits come from the count: its station-days drawn again within station and year; under 20 counted, exact Poisson limits; with none counted, a lower limit alone.',
    source: 'Efron 1979, Annals of Statistics 7:1-26; Garwood 1936, Biometrika 28:437-442.',
    formula: 'cost of each = Σ dollars ÷ count',
    example: { by: [], options: {} },
  },
  find: (book, table, rows, by, choices) => {
    const amount = bookNumber(table, 'amount');
    const year = bookNumber(table, 'fiscal_year');
    const bought = outcomes(book);
    const stationAt = by.indexOf('station');
    const groups = groupRows(table, rows, by);
    const placed = groups.filter(({ key }) => stationAt < 0 || key[stationAt] !== null);
    const found = placed.flatMap(({ key, rows: own }) => {
      const years = new Set([...own].map((row) => numberAt(year, row)));
      const spent = own.reduce((sum, row) => sum + (numberAt(amount, row) ?? 0), 0);
      const station = stationAt < 0 ? undefined : (key[stationAt] as string);
      const inGroup = bought.map(({ name, events, rowsIn }) => ({
        name,
        counted: rowsIn(years, station),
        here: events.filter((event) => years.has(event.year) && (stationAt < 0 || event.station === key[stationAt])),
      }));
      const drawn = drawDays(
        book.clusters,
        inGroup.flatMap(({ here }) => here),
        choices.resamples,
      );
      const booked = { words: 'all that was booked', adds: 'amount' };
      return inGroup.map(({ name, here, counted }) => {
        const count = here.reduce((sum, event) => sum + event.amount, 0);
        const rare = name === 'interception' && count < enoughOfIt;
        const each = costEach(spent, count, here, rare, drawn);
        const costs = 'what was spent by what was counted, the cost taken as known; limits from the count alone';
        return {
          cells: [...keyCells(table, by, key), name, count, spent, each],
          rows: own,
          rules: {
            count: counting(counted),
            spent: counting(booked),
            cost_each: modelled(costs, [], { counted: booked, among: counted }),
          },
        };
      });
    });
    const elsewhere = groups.filter((group) => !placed.includes(group)).flatMap(({ rows: own }) => [...own]);
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!),
      leftOut: [
        ...sentence(elsewhere.length, 'amount names', 'amounts name', 'no station and stand in no station’s cost.'),
        ...(bought.some(({ name }) => name === ofHighRisk) ? [] : [riskUntold]),
      ],
    };
  },
};
