import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';

/** Agreement of two looks at the same things. Null where it is not defined. */
export interface Agreement {
  readonly observed: number;
  readonly byChance: number;
  readonly kappa: number | null;
  readonly standardError: number | null;
  /** Null as well where all looks agree: the error is then zero, and limits would have no width. */
  readonly interval: Interval | null;
  /** If there were no agreement beyond chance: for a test. */
  readonly standardErrorNull: number | null;
  /** Kappa with weights that fall evenly with distance between ordered categories; equal to kappa for two. */
  readonly kappaWeighted: number | null;
  /** Kappa if both looks used all categories alike. */
  readonly kappaEvenUse: number | null;
  /** For two categories, of which the first is the finding: agreement on it, and on its absence. */
  readonly positive: number | null;
  readonly negative: number | null;
}

/**
 * Agreement from a square table of counts, first look by rows. Cohen J (1960) Educational and Psychological Measurement
 * 20:37-46; errors: Fleiss JL, Cohen J, Everitt BS (1969) Psychological Bulletin 72:323-327; weights: Cicchetti DV,
 * Allison T (1971); positive agreement: Cicchetti DV, Feinstein AR (1990) J Clin Epidemiol 43:551-558.
 */
export function agreement(table: readonly (readonly number[])[], confidence = 0.95): Agreement {
  const size = table.length;
  const all = table.flat().reduce((sum, count) => sum + count, 0);
  if (size < 2 || !(all > 0) || table.some((row) => row.length !== size)) throw new RangeError('not a square table');
  const shares = sharesOf(table, all);
  const { share, row, column, sum } = shares;
  const observed = sum((i, j) => (i === j ? share(i, j) : 0));
  const byChance = sum((i, j) => (i === j ? row(i) * column(j) : 0));
  const closeness = (i: number, j: number) => 1 - Math.abs(i - j) / (size - 1);
  const closeObserved = sum((i, j) => closeness(i, j) * share(i, j));
  const closeByChance = sum((i, j) => closeness(i, j) * row(i) * column(j));
  const ratio = (above: number, below: number) => (below > 0 ? above / below : null);
  return {
    observed,
    byChance,
    ...kappaWithErrors(shares, observed, byChance, confidence),
    kappaWeighted: ratio(closeObserved - closeByChance, 1 - closeByChance),
    kappaEvenUse: (observed - 1 / size) / (1 - 1 / size),
    positive: size === 2 ? ratio(2 * share(0, 0), row(0) + column(0)) : null,
    negative: size === 2 ? ratio(2 * share(1, 1), row(1) + column(1)) : null,
  };
}

/** Shares of the whole by cell, row and column, and sums over all cells. */
interface Shares {
  readonly all: number;
  readonly share: (i: number, j: number) => number;
  readonly row: (i: number) => number;
  readonly column: (j: number) => number;
  readonly sum: (term: (i: number, j: number) => number) => number;
}

function sharesOf(table: readonly (readonly number[])[], all: number): Shares {
  const share = (i: number, j: number) => (table[i]?.[j] ?? 0) / all;
  const rows = table.map((row) => row.reduce((total, count) => total + count, 0) / all);
  const columns = table.map((_, j) => table.reduce((total, row) => total + (row[j] ?? 0), 0) / all);
  const sum = (term: (i: number, j: number) => number) =>
    table.reduce((total, row, i) => row.reduce((running, _, j) => running + term(i, j), total), 0);
  return { all, share, row: (i) => rows[i] ?? 0, column: (j) => columns[j] ?? 0, sum };
}

function kappaWithErrors(shares: Shares, observed: number, byChance: number, confidence: number) {
  const { all, share, row, column, sum } = shares;
  const room = 1 - byChance;
  if (!(room > 0)) return { kappa: null, standardError: null, interval: null, standardErrorNull: null };
  const kappa = (observed - byChance) / room;
  const rest = 1 - kappa;
  const agreeing = sum((i, j) => (i === j ? share(i, i) * (1 - (row(i) + column(i)) * rest) ** 2 : 0));
  const differing = sum((i, j) => (i === j ? 0 : share(i, j) * (column(i) + row(j)) ** 2)) * rest ** 2;
  const spread = agreeing + differing - (kappa - byChance * rest) ** 2;
  const mixed = sum((i, j) => (i === j ? row(i) * column(i) * (row(i) + column(i)) : 0));
  const standardError = Math.sqrt(Math.max(0, spread) / all) / room;
  const half = normalZ(confidence) * standardError;
  const allAgree = sum((i, j) => (i === j ? 0 : share(i, j))) === 0;
  return {
    kappa,
    standardError,
    interval: allAgree ? null : twoSided(kappa - half, kappa + half, confidence, 'kappa, large samples'),
    standardErrorNull: Math.sqrt(Math.max(0, byChance + byChance ** 2 - mixed) / all) / room,
  };
}
