import type { BookTable } from '../record/book.js';
import { writtenNumber } from '../record/written-numbers.js';
import type { Estimate } from '../statistic/estimate.js';
import { overDispersion } from '../statistic/funnel/over-dispersion.js';
import { type BetaPrior, betaBinomialFit, shrunkProportion } from '../statistic/shrinkage/beta-binomial.js';
import { directRate } from '../statistic/standard/direct.js';
import { expectedEvents, standardisedRatio } from '../statistic/standard/indirect.js';
import { countColumn, estimateColumn, keyCells, keyColumns, numberColumn, shareColumn } from './columns.js';
import {
  type CountedGroup,
  countedBy,
  counting,
  modelled,
  type NumberRules,
  type RowRule,
  sharing,
} from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { countRows, isValue } from './row-tests.js';
import { sentence } from './sentence.js';
import { clusterPlaces, shareOfRows } from './shares.js';
import { eventRate, fewEvents, withheld } from './small-numbers.js';
import { enoughInStratum, joinStrata, stationTraffic, type TrafficStrata, trafficStrata } from './traffic-strata.js';

const columns: readonly FindingColumn[] = [
  countColumn('full', 'full inspections', 'inspections', 'The craft itself was looked over.'),
  countColumn('intercepted', 'interceptions', 'inspections', 'Full inspections that ended in an interception.'),
  shareColumn('interception', 'as counted', 'per 1,000', 'Interceptions by full inspections, clustered.'),
  shareColumn(
    'standardised',
    'at the mix of all',
    'per 1,000',
    'What the rate would be had the station met the traffic of all stations together.',
  ),
  countColumn('strata', 'strata used', 'strata', 'Strata left when near-empty ones were joined with their neighbours.'),
  numberColumn('expected', 'expected', 'inspections', 'one decimal', 'Interceptions, had the rates of all held here.'),
  estimateColumn('ratio', 'seen by expected', null, 'two decimals', 'Interceptions by those expected.'),
  shareColumn('shrunk', 'drawn to the others', 'per 1,000', 'The rate after it borrows from the others.'),
];

function standardised(cases: number, joined: ReturnType<typeof joinStrata>): Estimate {
  const trials = joined.trials.reduce((sum, count) => sum + count, 0);
  if (trials === 0) return withheld('nothing was counted', 0, 0);
  const rate = directRate(joined.cases, joined.trials, joined.standard);
  if (rate === null) return withheld('nothing to standardise to');
  const known = { value: rate.adjusted, numerator: null, denominator: trials, why: null, cautions: fewEvents(cases) };
  if (cases > 0) return { ...known, interval: rate.interval };
  // One side at 95 % is the upper of two at 90 %.
  const high = directRate(joined.cases, joined.trials, joined.standard, 0.9)?.interval.high ?? null;
  const method = 'gamma (Fay-Feuer), one-sided upper limit with no event';
  return { ...known, interval: { low: 0, high, confidence: 0.95, sides: 'upper', method } };
}

function ratio(cases: number, expected: number): Estimate {
  if (!(expected > 0)) return withheld('no interception was expected', cases, 0);
  const cautions = fewEvents(cases);
  if (cases === 0) return { ...eventRate(0, expected), cautions };
  const { ratio: value, exact } = standardisedRatio(cases, expected);
  return { value, numerator: cases, denominator: expected, interval: exact, why: null, cautions };
}

function shrunk(cases: number, trials: number, prior: BetaPrior | null): Estimate {
  if (prior === null) return withheld('stations spread no more than chance, or nothing was found', cases, trials);
  const { mean, interval } = shrunkProportion(cases, trials, prior);
  return { value: mean, numerator: null, denominator: trials, interval, why: null, cautions: [] };
}

interface ComparedStation extends CountedGroup {
  readonly cells: FindingCell[];
}

interface Compared {
  readonly stations: ComparedStation[];
  readonly said: string[];
}

const decimals = (value: number, places: number): string => writtenNumber(value.toFixed(places));

function spreadSaid(cases: readonly number[], trials: readonly number[]): string[] {
  const [x, n] = [cases.reduce((a, b) => a + b, 0), trials.reduce((a, b) => a + b, 0)];
  if (!(x > 0 && x < n) || cases.length < 2) return [];
  const spread = overDispersion(cases, trials, x / n);
  if (spread === null) return [];
  const [plain, drawn] = [decimals(spread.factor, 2), decimals(spread.factorWinsorised, 2)];
  return [
    `Over-dispersion: stations spread ${plain} times as far as chance alone (mean squared z; ${drawn} with the outermost tenths drawn in), 1 being chance alone.`,
  ];
}

/** Which full inspections stand behind each number of a station; `all` are those of every station beside it. */
function rulesOf(isCase: (row: number) => boolean, all: Uint32Array): NumberRules {
  const full: RowRule = { words: 'full inspections of the station' };
  const found: RowRule = { words: 'interceptions of the station', holds: isCase };
  const every: RowRule = { words: 'full inspections of all stations', within: () => all };
  const everyCase: RowRule = { words: 'interceptions of all stations', holds: isCase, within: () => all };
  const strata = 'strata of month, setting and last water’s status';
  return {
    full: counting(full),
    intercepted: counting(found),
    interception: sharing(found, full),
    standardised: modelled(
      `the station’s rates within ${strata}, weighed by the traffic of all stations`,
      [found, every],
      { among: full },
    ),
    strata: modelled(`${strata} that are left once near-empty ones are joined`, [full, every]),
    expected: modelled(`the rates of all stations within ${strata}, times the station’s inspections`, [
      full,
      everyCase,
      every,
    ]),
    ratio: modelled('the station’s interceptions by those expected of it', [full, everyCase, every], {
      counted: found,
    }),
    shrunk: modelled(
      'a beta-binomial model of all stations, to which the station’s rate is drawn',
      [everyCase, every],
      {
        counted: found,
        among: full,
      },
    ),
  };
}

function compare(table: BookTable, rows: Uint32Array): Compared {
  const isCase = isValue(table, 'outcome', 'intercepted');
  const full = rows.filter(isValue(table, 'extent', 'full'));
  const strata: TrafficStrata = trafficStrata(table, full, isCase);
  const stations = groupRows(table, full, ['station']).map(({ key, rows: own }) => ({ key, own }));
  const trials = stations.map(({ own }) => own.length);
  const cases = stations.map(({ own }) => own.filter(isCase).length);
  const prior = betaBinomialFit(cases, trials);
  const rules = rulesOf(isCase, full);
  return {
    said: spreadSaid(cases, trials),
    stations: stations.map(({ key, own }, at): ComparedStation => {
      const traffic = stationTraffic(strata, own, isCase);
      const joined = joinStrata(traffic, strata.all, strata.groups);
      const expected = expectedEvents(strata.rates, traffic.trials);
      const cells = [
        keyCells(table, ['station'], key)[0]!,
        trials[at]!,
        cases[at]!,
        shareOfRows(own, clusterPlaces(table, own), () => true, isCase).clustered(),
        standardised(cases[at]!, joined),
        joined.trials.length,
        expected,
        ratio(cases[at]!, expected),
        shrunk(cases[at]!, trials[at]!, prior),
      ];
      return { cells, rows: own, rules };
    }),
  };
}

/** Stations beside each other, as counted and as if they had met the same traffic. Never ranked. */
export const stationsCompared: Finding = {
  name: 'stations compared',
  table: 'inspections',
  account: {
    definition:
      'A station’s interception rate as counted, at the mix of traffic of all stations (month, setting, status of the last water), against what the rates of all would give, and drawn to the others as far as its own numbers are thin. No ranking: a higher rate is no better work.',
    numerator: 'Full inspections with the outcome intercepted.',
    denominator: 'Full inspections of the station.',
    leftOut: `Paper checks. Strata in which the station has fewer than ${enoughInStratum} inspections, or less than a fifth of what the standard’s weight would call for, are joined with their neighbours, months first, then settings, then statuses; a stratum without a recorded status is one of its own.`,
    method:
      'Direct standardisation with Fay-Feuer gamma limits; standardised ratio with exact Poisson limits, the expected taken as known; beta-binomial shrinkage with equal-tailed limits. All take inspections as independent. A station stands in one setting only, so joined strata carry the weight of settings it never sees: read the ratio beside.',
    source:
      'Fay and Feuer 1997, Statistics in Medicine 16:791-801; Garwood 1936, Biometrika 28:437-442; Griffiths 1973, Biometrics 29:637-648; Spiegelhalter 2005, Statistics in Medicine 24:1185-1202.',
    formula:
      'at the mix of all = Σ w ÷ Σ w × cases ÷ trials by stratum; expected = Σ rate of all × trials; drawn = (α + cases) ÷ (α + β + trials)',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const by = named.filter((field) => field !== 'station');
    const groups = groupRows(table, rows, by).map(({ key, rows: own }) => ({ key, found: compare(table, own) }));
    const stations = groups.flatMap(({ key, found }) => found.stations.map((one) => ({ ...one, key })));
    return {
      columns: [...keyColumns(table, [...by, 'station']), ...columns],
      rows: stations.map(({ key, cells }) => [...keyCells(table, by, key), ...cells]),
      counted: countedBy((row) => stations[row]!),
      leftOut: sentence(
        countRows(rows, isValue(table, 'extent', 'paper check')),
        'paper check is',
        'paper checks are',
        'left out.',
      ),
      said: groups.length === 1 ? groups[0]!.found.said : [],
    };
  },
};
