import type { Book, BookTable } from '../record/book.js';
import { writtenNumber, writtenWords } from '../record/written-numbers.js';
import { newcombeDifference } from '../statistic/difference/newcombe.js';
import { koopmanRatio } from '../statistic/ratio/score.js';
import { cochranArmitage } from '../statistic/trend/cochran-armitage.js';
import { textChoice } from './choices.js';
import { countColumn, estimateColumn, keyCells, keyColumns, numberColumn, shareColumn } from './columns.js';
import { comparedEstimate } from './compared-estimate.js';
import { countedBy, counting, modelled, type NumberRules, sharing } from './counted-rows.js';
import { definitionBreak } from './definition-break.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { bookText, countRows, isValue } from './row-tests.js';
import { type SeasonMeasure, seasonMeasures } from './season-measures.js';
import { calendarDay, dayInWords, type SeasonWindow, sharedWindow } from './season-window.js';
import { sentence } from './sentence.js';
import { clusterPlaces, type ShareCount, shareOfRows } from './shares.js';
import { fewEvents, withheld } from './small-numbers.js';

const columns: readonly FindingColumn[] = [
  numberColumn('season', 'season', null, 'year', 'The year, by the stations’ own clocks.'),
  countColumn('full', 'full inspections', 'inspections', 'Full inspections within the shared calendar window.'),
  countColumn('cases', 'cases', 'inspections', 'Those with what is compared.'),
  shareColumn('rate', 'per 1,000', 'per 1,000', 'Cases by full inspections; clustered by station-day.'),
  shareColumn('difference', 'change on the season before', 'per 1,000', 'This rate less that of the season before.'),
  estimateColumn('ratio', 'times the season before', null, 'two decimals', 'This rate by that of the season before.'),
];

interface Season {
  readonly season: number;
  /** Full inspections within the window on which what is compared was recorded; those with it. */
  readonly full: Uint32Array;
  readonly isCase: (row: number) => boolean;
  readonly count: ShareCount;
  /** Why it cannot be compared with the season before; null where it can. */
  readonly broken: string | null;
}

function seasonsOf(
  book: Book,
  table: BookTable,
  full: Uint32Array,
  measure: SeasonMeasure,
): { seasons: Season[]; window: SeasonWindow | null; outside: number } {
  const groups = groupRows(table, full, ['season']).filter(({ key }) => key[0] !== null);
  const dayOf = calendarDay(table);
  const window = sharedWindow(
    groups.map(({ rows }) => rows),
    dayOf,
  );
  const isCase = isValue(table, measure.field, measure.value);
  const known = bookText(table, measure.field).codes;
  let outside = 0;
  const seasons = groups.map(({ key, rows }, at): Season => {
    const within = rows.filter((row) => {
      const day = dayOf(row);
      return window !== null && day !== null && day >= window.from && day <= window.to;
    });
    const full = within.filter((row) => known[row] !== 0);
    outside += rows.length - within.length;
    const season = key[0] as number;
    const count = shareOfRows(within, clusterPlaces(table, within), (row) => known[row] !== 0, isCase);
    const before = groups[at - 1]?.key[0] as number | undefined;
    const fields = { table: 'inspections', fields: measure.standsOn } as const;
    const change = before === undefined ? null : definitionBreak(book.sum, fields, [before, season]);
    return {
      season,
      full,
      isCase,
      count,
      broken:
        change === null ? null : `the meaning of ${change.field.replaceAll('_', ' ')} changed in ${change.season}`,
    };
  });
  return { seasons, window, outside };
}

function seasonCells({ season, count, broken }: Season, before: Season | undefined): FindingCell[] {
  const base = [season, count.trials, count.cases, count.clustered()];
  if (before === undefined) return [...base, withheld('the first season'), withheld('the first season')];
  if (broken !== null) return [...base, withheld(broken), withheld(broken)];
  const counts = [count.cases, count.trials, before.count.cases, before.count.trials] as const;
  const cautions = fewEvents(count.cases, before.count.cases);
  return [
    ...base,
    comparedEstimate(newcombeDifference(...counts), 'nothing was counted', cautions),
    comparedEstimate(koopmanRatio(...counts), 'no case in the season before', cautions),
  ];
}

/** Which inspections stand behind each number of the seasons. */
function rulesOf(seasons: readonly Season[]): readonly NumberRules[] {
  const rules = seasons.map(({ season, full, isCase }) => ({
    full: {
      words: `full inspections of ${season} within the shared window, with what is compared recorded`,
      within: () => full,
    },
    cases: { words: `cases of ${season} among them`, within: () => full, holds: isCase },
  }));
  return rules.map(({ full, cases }, at) => {
    const before = rules[at - 1];
    const uses = [cases, full, ...(before === undefined ? [] : [before.cases, before.full])];
    return {
      season: modelled('the name of the season, and no count', [full]),
      full: counting(full),
      cases: counting(cases),
      rate: sharing(cases, full),
      difference: modelled('the share of the season less that of the season before, with Newcombe’s limits', uses),
      ratio: modelled('the share of the season divided by that of the season before, with score limits', uses),
    };
  });
}

/** The seasons since the last break of the line. */
function unbroken(seasons: readonly Season[]): readonly Season[] {
  const last = seasons.reduce((at, { broken }, index) => (broken === null ? at : index), 0);
  return seasons.slice(last);
}

function trendSaid(seasons: readonly Season[]): string {
  const line = unbroken(seasons);
  const names = line.map(({ season }) => season).join(', ');
  if (line.length < 3)
    return `No trend is tested: it takes three seasons with one meaning, and there are ${line.length}.`;
  const trend = cochranArmitage(
    line.map(({ count }) => count.cases),
    line.map(({ count }) => count.trials),
    line.map(({ season }) => season),
  );
  if (trend.slope === null || trend.p === null || trend.pDeparture === null)
    return `No trend over ${names}: nothing varies.`;
  const slope = `${trend.slope < 0 ? '−' : '+'}${written(Math.abs(trend.slope * 1000), 2)} ${writtenWords('per 1,000')} a season`;
  return `Trend over ${names}: ${slope}, P ${writtenP(trend.p)}; departure from a straight line, P ${writtenP(trend.pDeparture)} (Cochran-Armitage, inspections taken as independent).`;
}

const written = (value: number, decimals: number): string => writtenNumber(value.toFixed(decimals));

/** A P value as tables show it. */
const writtenP = (p: number): string => (p < 0.0005 ? `under ${written(0.001, 3)}` : written(p, 3));

function windowSaid(window: SeasonWindow | null): string {
  return window === null
    ? 'The seasons share no stretch of the calendar, so nothing is compared.'
    : `Compared from ${dayInWords(window.from)} to ${dayInWords(window.to)}, which every season has.`;
}

/** Season against season over the same stretch of the calendar. */
export const seasonsCompared: Finding = {
  name: 'seasons compared',
  table: 'inspections',
  account: {
    definition:
      'A share of full inspections in each season, over the stretch of the calendar that all seasons have. A changed definition breaks the line: no difference, ratio or trend is given across it.',
    numerator: 'Full inspections within the window with what is compared.',
    denominator: 'Full inspections within the window on which it was recorded.',
    leftOut: 'Paper checks; inspections outside the shared window, or without a known day.',
    method:
      'Rates clustered by station-day; differences with Newcombe’s square-and-add limits, ratios with Koopman’s score limits, and from three seasons up the Cochran-Armitage trend with its departure from a straight line: all of these take inspections as independent.',
    source:
      'Newcombe 1998, Statistics in Medicine 17:873-890, method 10; Koopman 1984, Biometrics 40:513-517; Armitage 1955, Biometrics 11:375-386.',
    formula: 'change = cases ÷ full − cases ÷ full of the season before; times = their ratio',
    example: { by: [], options: {} },
  },
  options: [
    {
      name: 'measure',
      kind: 'text',
      unit: null,
      choices: seasonMeasures.map(({ name }) => name),
      usual: 'interception',
      meaning: 'What is compared.',
    },
  ],
  find: (book, table, rows, named, choices) => {
    const by = named.filter((field) => field !== 'season');
    const name = textChoice(choices, 'measure');
    const measure = seasonMeasures.find((one) => one.name === name) ?? seasonMeasures[0]!;
    const full = rows.filter(isValue(table, 'extent', 'full'));
    const groups = groupRows(table, full, by).map(({ key, rows: own }) => ({
      key,
      ...seasonsOf(book, table, own, measure),
    }));
    const outside = groups.reduce((sum, group) => sum + group.outside, 0);
    const paper = countRows(rows, isValue(table, 'extent', 'paper check'));
    const found = groups.flatMap(({ key, seasons }) => {
      const rules = rulesOf(seasons);
      return seasons.map((one, at) => ({
        cells: [...keyCells(table, by, key), ...seasonCells(one, seasons[at - 1])],
        rows: one.full,
        rules: rules[at]!,
      }));
    });
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!),
      leftOut: [
        ...sentence(paper, 'paper check is', 'paper checks are', 'left out.'),
        ...sentence(outside, 'full inspection lies', 'full inspections lie', 'outside the shared window.'),
      ],
      said: [
        `Cases are ${measure.meaning}.`,
        ...groups.flatMap(({ window, seasons }) =>
          groups.length > 1 || seasons.length === 0 ? [] : [windowSaid(window), trendSaid(seasons)],
        ),
      ],
    };
  },
};
