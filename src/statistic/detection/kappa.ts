import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';

/** Agreement of two looks at the same things. Null where it is not defined. */
export interface Agreement {
  readonly observed: number;
  readonly byChance: number;
  readonly kappa: number | null;
  readonly standardError: number | null;
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
  const share = (i: number, j: number) => (table[i]?.[j] ?? 0) / all;
  const index = table.map((_, i) => i);
  const sum = (term: (i: number) => number) => index.reduce((total, i) => total + term(i), 0);
  const row = index.map((i) => sum((j) => share(i, j)));
  const column = index.map((j) => sum((i) => share(i, j)));
  const at = (list: readonly number[], i: number) => list[i] ?? 0;
  const observed = sum((i) => share(i, i));
  const byChance = sum((i) => at(row, i) * at(column, i));
  const twoSum = (term: (i: number, j: number) => number) => sum((i) => sum((j) => term(i, j)));
  const closeness = (i: number, j: number) => 1 - Math.abs(i - j) / (size - 1);
  const closeObserved = twoSum((i, j) => closeness(i, j) * share(i, j));
  const closeByChance = twoSum((i, j) => closeness(i, j) * at(row, i) * at(column, j));
  const both = share(0, 0);
  const ratio = (above: number, below: number) => (below > 0 ? above / below : null);
  return {
    observed,
    byChance,
    ...kappaWithErrors(),
    kappaWeighted: ratio(closeObserved - closeByChance, 1 - closeByChance),
    kappaEvenUse: (observed - 1 / size) / (1 - 1 / size),
    positive: size === 2 ? ratio(2 * both, at(row, 0) + at(column, 0)) : null,
    negative: size === 2 ? ratio(2 * share(1, 1), at(row, 1) + at(column, 1)) : null,
  };

  function kappaWithErrors() {
    const room = 1 - byChance;
    if (!(room > 0)) return { kappa: null, standardError: null, interval: null, standardErrorNull: null };
    const kappa = (observed - byChance) / room;
    const diagonal = sum((i) => share(i, i) * (1 - (at(row, i) + at(column, i)) * (1 - kappa)) ** 2);
    const off = twoSum((i, j) => (i === j ? 0 : share(i, j) * (at(column, i) + at(row, j)) ** 2)) * (1 - kappa) ** 2;
    const spread = diagonal + off - (kappa - byChance * (1 - kappa)) ** 2;
    const standardError = Math.sqrt(Math.max(0, spread) / all) / room;
    const mixed = sum((i) => at(row, i) * at(column, i) * (at(row, i) + at(column, i)));
    const half = normalZ(confidence) * standardError;
    return {
      kappa,
      standardError,
      interval: twoSided(kappa - half, kappa + half, confidence, 'kappa, large samples'),
      standardErrorNull: Math.sqrt(Math.max(0, byChance + byChance ** 2 - mixed) / all) / room,
    };
  }
}
