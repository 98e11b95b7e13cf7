import type { BookTable } from '../record/book.js';
import { funnelChances, funnelLimit } from '../statistic/funnel/limits.js';
import { countColumn, keyCells, keyColumns, numberColumn, shareColumn, wordColumn } from './columns.js';
import { countedBy, counting, modelled, type NumberRules, sharing } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { countRows, isValue } from './row-tests.js';
import { sentence } from './sentence.js';
import { clusterPlaces, type ShareCount, shareOfRows } from './shares.js';
import { enoughEvents } from './small-numbers.js';

/** The limits of the funnel, by the chance of staying at or under them. */
const limits = [
  { name: 'low_998', label: '99.8 % limit, low', chance: funnelChances.outerLow },
  { name: 'low_95', label: '95 % limit, low', chance: funnelChances.innerLow },
  { name: 'high_95', label: '95 % limit, high', chance: funnelChances.innerHigh },
  { name: 'high_998', label: '99.8 % limit, high', chance: funnelChances.outerHigh },
] as const;

const columns: readonly FindingColumn[] = [
  countColumn('full', 'full inspections', 'inspections', 'The craft itself was looked over.'),
  countColumn('intercepted', 'interceptions', 'inspections', 'Full inspections that ended in an interception.'),
  shareColumn('interception', 'per 1,000', 'per 1,000', 'Interceptions by full inspections, clustered by station-day.'),
  numberColumn('target', 'all stations', null, 'per 1,000', 'The rate of all stations together.'),
  ...limits.map(({ name, label }) =>
    numberColumn(name, label, null, 'per 1,000', 'Where a station of that size would fall by chance alone.'),
  ),
  wordColumn('place', 'place', `Against the limits; too few under ${enoughEvents} interceptions.`),
];

type Limits = readonly [number, number, number, number];

function limitsFor(target: number, trials: number): Limits {
  const [low998, low95, high95, high998] = limits;
  const at = ({ chance }: (typeof limits)[number]): number => funnelLimit(target, trials, chance).proportion;
  return [at(low998), at(low95), at(high95), at(high998)];
}

function placeOf(rate: number, events: number, limit: Limits | null): string {
  if (events < enoughEvents || limit === null) return 'too few';
  if (rate > limit[3]) return 'above 99.8 %';
  if (rate > limit[2]) return 'above 95 %';
  if (rate < limit[0]) return 'below 99.8 %';
  return rate < limit[1] ? 'below 95 %' : 'inside';
}

function stationCells(count: ShareCount, target: number | null): FindingCell[] {
  const { cases, trials } = count;
  // A target of 0 or 1 leaves no room for chance, and a station without full inspections has no place in a funnel.
  const limited = target !== null && target > 0 && target < 1 && trials > 0;
  const limit = limited ? limitsFor(target, trials) : null;
  return [
    trials,
    cases,
    count.clustered(),
    target,
    ...(limit ?? [null, null, null, null]),
    placeOf(cases / trials, cases, limit),
  ];
}

/** The stations of some rows, each against the rate of all of them. */
function funnelOf(
  table: BookTable,
  rows: Uint32Array,
): { station: FindingCell; cells: FindingCell[]; own: Uint32Array }[] {
  const full = isValue(table, 'extent', 'full');
  const intercepted = isValue(table, 'outcome', 'intercepted');
  const trials = countRows(rows, full);
  const cases = countRows(rows, (row) => full(row) && intercepted(row));
  const target = trials === 0 ? null : cases / trials;
  return groupRows(table, rows, ['station']).map(({ key, rows: own }) => ({
    station: keyCells(table, ['station'], key)[0]!,
    cells: stationCells(shareOfRows(own, clusterPlaces(table, own), full, intercepted), target),
    own,
  }));
}

/** Which inspections stand behind each number of a station; `all` are those of every station it is placed among. */
function rulesOf(table: BookTable): (all: Uint32Array) => NumberRules {
  const full = isValue(table, 'extent', 'full');
  const intercepted = isValue(table, 'outcome', 'intercepted');
  const found = (row: number): boolean => full(row) && intercepted(row);
  const among = { words: 'full inspections', holds: full };
  const counted = { words: 'full inspections that were interceptions', holds: found };
  return (all) => {
    const amongAll = { words: 'full inspections of all stations', holds: full, within: () => all };
    const ofAll = { words: 'interceptions of all stations', holds: found, within: () => all };
    const limit = modelled(
      'a limit of what chance spreads around the rate of all stations, at this station’s number of full inspections',
      [among, ofAll, amongAll],
    );
    return {
      full: counting(among),
      intercepted: counting(counted),
      interception: sharing(counted, among),
      target: sharing(ofAll, amongAll),
      ...Object.fromEntries(limits.map(({ name }) => [name, limit])),
    };
  };
}

/** Stations against what chance alone would spread around the rate of all, within each group of rows. */
export const stationFunnel: Finding = {
  name: 'station funnel',
  table: 'inspections',
  account: {
    definition:
      'A station lies outside the funnel when its rate differs from that of all stations by more than chance would explain at its number of inspections. Outside is a reason to look, not a verdict: stations see different traffic.',
    numerator: 'Full inspections with the outcome intercepted.',
    denominator: 'Full inspections of the station.',
    leftOut: `Paper checks. Stations with fewer than ${enoughEvents} interceptions are shown but not placed; nothing is ranked.`,
    method:
      'Exact binomial limits at 95 and 99.8 %, interpolated, around the rate of all stations in the group; not adjusted for traffic or for clustering.',
    source: 'Spiegelhalter 2005, Statistics in Medicine 24:1185-1202.',
    formula:
      'limit = (r − (P(X ≤ r) − c) ÷ P(X = r)) ÷ n, with X binomial(n, target) and r the least count whose chance reaches c',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const by = named.filter((field) => field !== 'station');
    const rulesAmong = rulesOf(table);
    const stations = groupRows(table, rows, by).flatMap(({ key, rows: all }) => {
      const rules = rulesAmong(all);
      return funnelOf(table, all).map((one) => ({ ...one, key, rules }));
    });
    return {
      columns: [...keyColumns(table, [...by, 'station']), ...columns],
      rows: stations.map(({ key, station, cells }) => [...keyCells(table, by, key), station, ...cells]),
      counted: countedBy((row) => ({ rows: stations[row]!.own, rules: stations[row]!.rules })),
      leftOut: sentence(
        countRows(rows, isValue(table, 'extent', 'paper check')),
        'paper check is',
        'paper checks are',
        'left out.',
      ),
    };
  },
};
