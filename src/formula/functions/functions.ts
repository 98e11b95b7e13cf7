import { count } from './count.js';
import { earliest, latest } from './date-extremes.js';
import { dateOf, dayOfMonth, daysBetween, monthOf, weekdayOf, yearOf } from './dates.js';
import type { FunctionDeclaration } from './declaration.js';
import { distinct } from './distinct.js';
import { highest, lowest } from './extremes.js';
import { listed } from './listed.js';
import { mean } from './mean.js';
import { yearlyCost, yearsToBreakEven } from './money.js';
import { absolute, choose, firstKnown, largest, smallest } from './on-each.js';
import { median, quantile } from './quantile.js';
import { rankFromHighest, rankFromLowest, runningSum } from './ranks.js';
import { rate, ratio, share } from './rate.js';
import { share_within } from './share-within.js';
import { sum } from './sum.js';
import { contains, joined, lowerCase, startsWith, upperCase } from './texts.js';

/** Every function of the language, in the order in which a reference page shows them. */
export const formulaFunctions: readonly FunctionDeclaration[] = [
  count,
  sum,
  mean,
  median,
  quantile,
  share_within,
  lowest,
  highest,
  distinct,
  earliest,
  latest,
  listed,
  rate,
  share,
  ratio,
  rankFromHighest,
  rankFromLowest,
  runningSum,
  choose,
  firstKnown,
  absolute,
  smallest,
  largest,
  yearlyCost,
  yearsToBreakEven,
  yearOf,
  monthOf,
  weekdayOf,
  dayOfMonth,
  dateOf,
  daysBetween,
  joined,
  lowerCase,
  upperCase,
  contains,
  startsWith,
];

const byName = new Map(formulaFunctions.map((declaration) => [declaration.name, declaration]));

/** The function of that name, or null. */
export function functionNamed(name: string): FunctionDeclaration | null {
  return byName.get(name) ?? null;
}

/** The names of all functions. */
export function functionNames(): readonly string[] {
  return formulaFunctions.map(({ name }) => name);
}
