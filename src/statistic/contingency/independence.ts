import { chiSquaredUpper } from '../distribution/chi-squared.js';

/** Tests of independence of rows and columns. All parts null where a margin is empty or there is one row or column. */
export interface IndependenceTest {
  readonly chiSquared: number | null;
  readonly degreesOfFreedom: number;
  readonly p: number | null;
  /** The likelihood-ratio statistic and its p-value. */
  readonly likelihoodRatio: number | null;
  readonly pLikelihoodRatio: number | null;
  /** Under 5 the approximation is in doubt. */
  readonly smallestExpected: number | null;
  readonly cramersV: number | null;
  /** With Yates's correction, for two by two only. */
  readonly chiSquaredYates: number | null;
  readonly pYates: number | null;
}

/**
 * Pearson's and the likelihood-ratio test of independence in a table of counts. Pearson K (1900) Philosophical Magazine
 * 50:157-175; Yates F (1934) JRSS Supplement 1:217-235; Cramér H (1946) Mathematical Methods of Statistics, section
 * 21.9.
 */
export function independence(table: readonly (readonly number[])[]): IndependenceTest {
  const columns = table[0]?.length ?? 0;
  if (table.some((row) => row.length !== columns)) throw new RangeError('rows of different lengths');
  const rowTotals = table.map((row) => row.reduce((sum, count) => sum + count, 0));
  const columnTotals = Array.from({ length: columns }, (_, j) => table.reduce((sum, row) => sum + row[j]!, 0));
  const all = rowTotals.reduce((sum, count) => sum + count, 0);
  const degreesOfFreedom = Math.max(0, (table.length - 1) * (columns - 1));
  const smaller = Math.min(table.length, columns) - 1;
  if (degreesOfFreedom === 0 || rowTotals.includes(0) || columnTotals.includes(0)) {
    const nothing = {
      chiSquared: null,
      p: null,
      likelihoodRatio: null,
      pLikelihoodRatio: null,
      smallestExpected: null,
    };
    return { ...nothing, degreesOfFreedom, cramersV: null, chiSquaredYates: null, pYates: null };
  }
  const cells = table.flatMap((row, i) =>
    row.map((seen, j) => ({ seen, expected: (rowTotals[i]! * columnTotals[j]!) / all })),
  );
  const sum = (term: (seen: number, expected: number) => number) =>
    cells.reduce((total, { seen, expected }) => total + term(seen, expected), 0);
  const chiSquared = sum((seen, expected) => (seen - expected) ** 2 / expected);
  const likelihoodRatio = 2 * sum((seen, expected) => (seen === 0 ? 0 : seen * Math.log(seen / expected)));
  const correction = Math.min(0.5, ...cells.map(({ seen, expected }) => Math.abs(seen - expected)));
  const twoByTwo = table.length === 2 && columns === 2;
  const yates = twoByTwo ? sum((seen, expected) => (Math.abs(seen - expected) - correction) ** 2 / expected) : null;
  return {
    chiSquared,
    degreesOfFreedom,
    p: chiSquaredUpper(chiSquared, degreesOfFreedom),
    likelihoodRatio,
    pLikelihoodRatio: chiSquaredUpper(likelihoodRatio, degreesOfFreedom),
    smallestExpected: Math.min(...cells.map(({ expected }) => expected)),
    cramersV: Math.sqrt(chiSquared / (all * smaller)),
    chiSquaredYates: yates,
    pYates: yates === null ? null : chiSquaredUpper(yates, 1),
  };
}
