import type { BookTable } from '../record/book.js';
import type { Estimate } from '../statistic/estimate.js';
import { holm } from '../statistic/many-comparisons.js';
import { firthLogistic, type PenalisedCoefficient } from '../statistic/regression/firth-logistic.js';
import { independentColumns } from '../statistic/regression/independent-columns.js';
import type { CovariatePattern } from '../statistic/regression/penalised-likelihood.js';
import { countColumn, estimateColumn, keyCells, keyColumns, numberColumn, wordColumn } from './columns.js';
import { type CountedGroup, countedBy, counting, modelled } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { type FactorLevels, heldConstant, levelsOf, riskFactors } from './risk-factors.js';
import { isValue } from './row-tests.js';
import { sentence } from './sentence.js';
import { fewEvents, withheld } from './small-numbers.js';

const columns: readonly FindingColumn[] = [
  wordColumn('factor', 'factor', 'What craft are told apart by.'),
  wordColumn('level', 'level', 'The level compared with the reference.'),
  wordColumn('reference', 'reference', 'The level that the others are compared with.'),
  countColumn('full', 'full inspections', 'inspections', 'Full inspections at that level, in the model.'),
  countColumn('intercepted', 'interceptions', 'inspections', 'Those that ended in an interception.'),
  estimateColumn(
    'odds_ratio',
    'odds ratio, all else equal',
    null,
    'two decimals',
    'Odds of an interception by those at the reference, all other factors of the table alike.',
  ),
  numberColumn('p_value', 'P', null, 'P value', 'Penalised likelihood ratio test that the odds are the same.'),
  numberColumn('p_holm', 'P, Holm', null, 'P value', 'The same, adjusted for the number of tests in the model.'),
];

/** A level of a factor that has a column of its own in the model. */
interface Term {
  readonly factor: FactorLevels;
  readonly level: number;
  readonly column: number;
}

/** A column for every level but the reference; column 0 is what all share. */
function termsOf(factors: readonly FactorLevels[]): Term[] {
  let column = 0;
  return factors.flatMap((factor) => {
    const reference = Math.max(0, factor.levels.indexOf(factor.factor.reference));
    return factor.levels.flatMap((_, level) => {
      if (level === reference) return [];
      column++;
      return [{ factor, level, column }];
    });
  });
}

/** Inspections alike in every factor, added up. */
function patternsOf(
  rows: Uint32Array,
  factors: readonly FactorLevels[],
  terms: readonly Term[],
  isCase: (row: number) => boolean,
): CovariatePattern[] {
  const columnOf = factors.map((factor) =>
    factor.levels.map((_, level) => terms.find((term) => term.factor === factor && term.level === level)?.column ?? 0),
  );
  const found = new Map<number, { columns: number[]; cases: number; trials: number }>();
  for (const row of rows) {
    const levels = factors.map(({ levelOf }) => levelOf(row));
    const key = levels.reduce((sum, level, i) => sum * factors[i]!.levels.length + level, 0);
    let pattern = found.get(key);
    if (pattern === undefined) {
      const own = levels.map((level, i) => columnOf[i]![level]!).filter((column) => column > 0);
      pattern = { columns: [0, ...own], cases: 0, trials: 0 };
      found.set(key, pattern);
    }
    pattern.trials++;
    if (isCase(row)) pattern.cases++;
  }
  return [...found.values()].map((pattern) => ({ ...pattern, values: pattern.columns.map(() => 1) }));
}

/** A coefficient for each column; null for one that those before it settle. */
function modelOf(patterns: readonly CovariatePattern[], columns: number): readonly (PenalisedCoefficient | null)[] {
  const own = independentColumns(patterns, columns);
  let next = 0;
  const placeOf = own.map((independent) => (independent ? next++ : -1));
  const kept = patterns.map((pattern) => ({
    ...pattern,
    columns: pattern.columns.map((column) => placeOf[column]!).filter((place) => place >= 0),
    values: pattern.columns.filter((column) => own[column]).map(() => 1),
  }));
  const model = firthLogistic(kept, next);
  return placeOf.map((place) => (place < 0 ? null : (model?.coefficients[place] ?? null)));
}

function oddsRatio({ value, interval }: PenalisedCoefficient, cautions: readonly string[]): Estimate {
  const { low, high } = interval;
  const ratio = (log: number | null): number | null => (log === null ? null : Math.exp(log));
  return {
    value: Math.exp(value),
    numerator: null,
    denominator: null,
    interval: { ...interval, low: ratio(low), high: ratio(high) },
    why: null,
    cautions,
  };
}

interface ModelRow extends CountedGroup {
  readonly cells: FindingCell[];
}

function modelRows(table: BookTable, rows: Uint32Array): { found: ModelRow[]; incomplete: number } {
  const asked = [...riskFactors, ...heldConstant].map((factor) => levelsOf(table, factor, rows));
  const whole = rows.filter((row) => asked.every(({ levelOf }) => levelOf(row) >= 0));
  const factors = asked.map(({ factor }) => levelsOf(table, factor, whole));
  const terms = termsOf(factors);
  const intercepted = isValue(table, 'outcome', 'intercepted');
  const model = modelOf(patternsOf(whole, factors, terms, intercepted), terms.length + 1);
  const p = terms.map(({ column }) => model[column]?.p ?? null);
  const adjusted = holm(p.filter((value) => value !== null));
  const all = { words: 'full inspections of the model, on which every factor was recorded' };
  const cases = { words: 'interceptions of the model', holds: intercepted };
  let test = 0;
  const found = terms.map(({ factor, level, column }, at): ModelRow => {
    const own = whole.filter((row) => factor.levelOf(row) === level);
    const ofThese = own.filter(intercepted);
    const coefficient = model[column] ?? null;
    const estimate =
      coefficient === null
        ? withheld('cannot be told apart from the levels above')
        : oddsRatio(coefficient, fewEvents(ofThese.length));
    const reference = factor.levels[Math.max(0, factor.levels.indexOf(factor.factor.reference))]!;
    const holms = p[at] === null ? null : adjusted[test++]!;
    const name = factor.levels[level]!;
    const words = `with ${factor.factor.label} ${name}`;
    const atLevel = { words: `full inspections of the model ${words}`, within: () => own };
    const casesThere = { words: `interceptions of the model ${words}`, within: () => ofThese };
    const uses = [casesThere, atLevel, cases, all];
    return {
      cells: [factor.factor.label, name, reference, own.length, ofThese.length, estimate, p[at]!, holms],
      rows: whole,
      rules: {
        full: counting(atLevel),
        intercepted: counting(casesThere),
        odds_ratio: modelled('a logistic model of all factors at once, with Firth’s penalty', uses),
        p_value: modelled('a penalised likelihood ratio test within that model', uses),
        p_holm: modelled('that test’s P, adjusted by Holm for the tests of the model', uses),
      },
    };
  });
  return { found, incomplete: rows.length - whole.length };
}

/** How the odds of an interception change with one thing when all else is alike. */
export const adjustedOdds: Finding = {
  name: 'adjusted odds',
  table: 'inspections',
  account: {
    definition:
      'The odds of an interception at a level of one factor by those at its reference, with all other factors, the direction and the setting alike. For rare events odds ratios are near risk ratios.',
    numerator: 'Full inspections with the outcome intercepted.',
    denominator: 'Full inspections on which every factor was recorded.',
    leftOut: 'Paper checks; full inspections on which any factor of the model was not recorded.',
    method:
      'One logistic model without interactions, with Firth’s penalty against the bias of rare events; limits by profile of the penalised likelihood; Holm’s adjustment over the tests of a model. Inspections are taken as independent, so limits are somewhat too narrow.',
    source:
      'Firth 1993, Biometrika 80:27-38; Heinze and Schemper 2002, Statistics in Medicine 21:2409-2419; Holm 1979, Scand J Statist 6:65-70.',
    formula: 'log odds = b₀ + Σ b of each level; b maximises log likelihood + ½ log |information|; odds ratio = exp(b)',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const inModel = [...riskFactors, ...heldConstant].map(({ field }) => field);
    const by = named.filter((field) => !inModel.includes(field));
    const full = isValue(table, 'extent', 'full');
    const models = groupRows(table, rows, by).map(({ key, rows: own }) => ({
      key,
      ...modelRows(table, own.filter(full)),
    }));
    const found = models.flatMap(({ key, found: own }) => own.map((one) => ({ ...one, key })));
    const tests = found.filter(({ cells }) => cells[6] !== null).length;
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ key, cells }) => [...keyCells(table, by, key), ...cells]),
      counted: countedBy((row) => found[row]!),
      leftOut: sentence(
        models.reduce((sum, { incomplete }) => sum + incomplete, 0),
        'full inspection lacks',
        'full inspections lack',
        'one of the factors: in no model.',
      ),
      said: sentence(tests, 'test was', 'tests were', 'made; P, Holm is adjusted for those of its model.'),
    };
  },
};
