/** Chances of detection from two looks that were not independent; null where the counts do not allow it. */
export interface DependentObservers {
  readonly first: number | null;
  readonly second: number | null;
  readonly either: number | null;
  /** All that were there, seen or not. */
  readonly total: number | null;
}

/**
 * Two observers who change places, the second told what the first saw: found by 1 as first (x11), by 2 after 1 (x21),
 * by 2 as first (x22), by 1 after 2 (x12). Cook RD, Jacobson JO (1979) Biometrics 35:735-742; Nichols JD et al. (2000)
 * The Auk 117:393-408.
 */
export function dependentObservers(x11: number, x12: number, x22: number, x21: number): DependentObservers {
  const both = x11 * x22;
  const share = (other: number) => (both - x12 * x21) / (both + other);
  const first = share(x22 * x21);
  const second = share(x11 * x12);
  const either = 1 - (1 - first) * (1 - second);
  if (!(either > 0)) return { first: null, second: null, either: null, total: null };
  return { first, second, either, total: (x11 + x12 + x22 + x21) / either };
}

/** What two passes that both take away what they find say of the whole; null where the second found as much or more. */
export interface TwoPassRemoval {
  readonly chance: number | null;
  readonly total: number | null;
  readonly standardError: number | null;
}

/**
 * x1 taken away at the first pass, x2 at the second. Seber GAF, Le Cren ED (1967) Journal of Animal Ecology 36:631-643.
 */
export function twoPassRemoval(x1: number, x2: number): TwoPassRemoval {
  if (!(x1 > x2 && x2 >= 0)) return { chance: null, total: null, standardError: null };
  const gap = x1 - x2;
  return { chance: gap / x1, total: x1 ** 2 / gap, standardError: (x1 * x2 * Math.sqrt(x1 + x2)) / gap ** 2 };
}
