import type { BookTable } from '../record/book.js';
import { mantelHaenszel } from '../statistic/contingency/mantel-haenszel.js';
import type { Stratum } from '../statistic/contingency/stratum.js';
import { koopmanRatio } from '../statistic/ratio/score.js';
import { countColumn, estimateColumn, keyCells, keyColumns, shareColumn, wordColumn } from './columns.js';
import { comparedEstimate } from './compared-estimate.js';
import { countedBy, counting, modelled, type NumberRules, sharing } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { type FactorLevels, levelsOf, riskFactors } from './risk-factors.js';
import { countRows, hasText, isValue } from './row-tests.js';
import { sentence } from './sentence.js';
import { clusterPlaces, shareOfRows } from './shares.js';
import { fewEvents, withheld } from './small-numbers.js';

const columns: readonly FindingColumn[] = [
  wordColumn('factor', 'factor', 'What craft are told apart by.'),
  wordColumn('level', 'level', 'The level compared with the reference.'),
  wordColumn('reference', 'reference', 'The level that the others are compared with.'),
  countColumn('full', 'full inspections', 'inspections', 'Full inspections at that level.'),
  countColumn('intercepted', 'interceptions', 'inspections', 'Those that ended in an interception.'),
  shareColumn('interception', 'per 1,000', 'per 1,000', 'Interceptions by full inspections, clustered by station-day.'),
  estimateColumn('ratio', 'ratio to the reference', null, 'two decimals', 'Its rate by that of the reference.'),
  estimateColumn(
    'pooled_ratio',
    'ratio, like with like',
    null,
    'two decimals',
    'The same within season, direction and setting, pooled over them.',
  ),
];

/** What is kept apart when like is compared with like. */
const strata = ['season', 'direction', 'setting'] as const;

interface Counted {
  readonly cases: number;
  readonly trials: number;
}

function count(rows: Uint32Array, has: (row: number) => boolean, isCase: (row: number) => boolean): Counted {
  let cases = 0;
  let trials = 0;
  for (const row of rows) {
    if (!has(row)) continue;
    trials++;
    if (isCase(row)) cases++;
  }
  return { cases, trials };
}

function factorRows(table: BookTable, full: Uint32Array, { factor, levels, levelOf }: FactorLevels): FindingCell[][] {
  const intercepted = isValue(table, 'outcome', 'intercepted');
  const at = levels.indexOf(factor.reference);
  const apart = groupRows(table, full, strata).map(({ rows }) =>
    levels.map((_, level) => count(rows, (row) => levelOf(row) === level, intercepted)),
  );
  const places = clusterPlaces(table, full);
  return levels.map((name, level) => {
    const share = shareOfRows(full, places, (row) => levelOf(row) === level, intercepted);
    const counts = [factor.label, name, factor.reference, share.trials, share.cases, share.clustered()];
    if (level === at) return [...counts, withheld('the reference itself'), withheld('the reference itself')];
    if (at < 0) return [...counts, withheld('no craft has the reference'), withheld('no craft has the reference')];
    const base = count(full, (row) => levelOf(row) === at, intercepted);
    const cautions = fewEvents(share.cases, base.cases);
    const noCase = 'no interception in one group';
    const pooled = mantelHaenszel(apart.map((some) => stratumOf(some[level]!, some[at]!))).riskRatio;
    return [
      ...counts,
      comparedEstimate(koopmanRatio(share.cases, share.trials, base.cases, base.trials), noCase, cautions),
      comparedEstimate(pooled, 'no stratum has interceptions to compare', cautions),
    ];
  });
}

/** Which full inspections stand behind the numbers of each level of a factor. */
function rulesOf(table: BookTable, { factor, levels, levelOf }: FactorLevels): readonly NumberRules[] {
  const intercepted = isValue(table, 'outcome', 'intercepted');
  const rules = levels.map((name, level) => {
    const at = `with ${factor.label} ${name}`;
    const holds = (row: number): boolean => levelOf(row) === level;
    return {
      full: { words: `full inspections ${at}`, holds },
      found: { words: `interceptions ${at}`, holds: (row: number) => holds(row) && intercepted(row) },
    };
  });
  const base = rules[levels.indexOf(factor.reference)];
  return rules.map(({ full, found }) => {
    const uses = [found, full, ...(base === undefined || base.full === full ? [] : [base.found, base.full])];
    return {
      full: counting(full),
      intercepted: counting(found),
      interception: sharing(found, full),
      ratio: modelled('the share at the level divided by that at the reference, with score limits', uses),
      pooled_ratio: modelled(
        'a Mantel-Haenszel ratio: level against reference within each season, direction and setting, then pooled',
        uses,
      ),
    };
  });
}

function stratumOf(one: Counted, other: Counted): Stratum {
  return {
    cases1: one.cases,
    others1: one.trials - one.cases,
    cases2: other.cases,
    others2: other.trials - other.cases,
  };
}

/** Full inspections among some rows, ascending. */
function fullOf(table: BookTable, rows: Uint32Array): Uint32Array {
  const full = isValue(table, 'extent', 'full');
  return rows.filter(full);
}

/** How many times as often craft of one kind are intercepted as craft of another. */
export const riskRatios: Finding = {
  name: 'risk ratios',
  table: 'inspections',
  account: {
    definition:
      'The interception rate of craft with something (a last water’s status, days since on water, haul, type, standing water, plants) by that of craft at the reference level. Found together, not caused: craft differ in more than one thing.',
    numerator: 'Full inspections with the outcome intercepted, at the level and at the reference.',
    denominator: 'Full inspections at the level and at the reference.',
    leftOut: 'Paper checks; for each factor, inspections on which it was not recorded.',
    method:
      'Ratio of proportions with Koopman’s score limits; beside it the Mantel-Haenszel ratio within season, direction and setting with Greenland-Robins limits. Both take inspections as independent. A caution stands where a group has under five interceptions.',
    source:
      'Koopman 1984, Biometrics 40:513-517; Mantel and Haenszel 1959, JNCI 22:719-748; Greenland and Robins 1985, Biometrics 41:55-68.',
    formula: 'ratio = (x₁ ÷ n₁) ÷ (x₀ ÷ n₀); like with like = Σ x₁ n₀ ÷ n over Σ x₀ n₁ ÷ n, summed over strata',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const by = named.filter((field) => !riskFactors.some((factor) => factor.field === field));
    const full = fullOf(table, rows);
    const unknown = riskFactors.flatMap((factor) => {
      const isRecorded = hasText(table, factor.field);
      const open = countRows(full, (row) => !isRecorded(row));
      return sentence(open, 'full inspection has', 'full inspections have', `no ${factor.label} recorded.`);
    });
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) => {
      const fullHere = fullOf(table, own);
      return riskFactors.flatMap((factor) => {
        const levels = levelsOf(table, factor, fullHere);
        const rules = rulesOf(table, levels);
        return factorRows(table, fullHere, levels).map((cells, at) => {
          return { cells: [...keyCells(table, by, key), ...cells], rows: fullHere, rules: rules[at]! };
        });
      });
    });
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!),
      leftOut: [
        ...sentence(
          countRows(rows, isValue(table, 'extent', 'paper check')),
          'paper check is',
          'paper checks are',
          'left out.',
        ),
        ...unknown,
      ],
    };
  },
};
