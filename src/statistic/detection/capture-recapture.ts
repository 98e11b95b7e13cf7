import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';
import { raisedTo } from '../raised-to.js';

/** How many there were, from two independent looks, and how many of them each look found. */
export interface CaptureRecapture {
  /** n1 n2 / m; null without a match, as are its error and the chances. */
  readonly lincolnPetersen: number | null;
  readonly lincolnPetersenError: number | null;
  /** Nearly unbiased, and defined without a match. */
  readonly chapman: number;
  readonly chapmanError: number;
  /** Null where one look found all that the other did: the error is then zero, and limits would have no width. */
  readonly normal: Interval | null;
  /** Log-normal on those not seen, so never below the number seen; null as the normal limits are. */
  readonly logNormal: Interval | null;
  /** The chance of being found at the first look, at the second, and at either. */
  readonly first: number | null;
  readonly second: number | null;
  readonly either: number | null;
}

/**
 * n1 found at the first look, n2 at the second, m at both. Chapman DG (1951) Univ California Publ Statist 1:131-160;
 * Seber GAF (1982) The Estimation of Animal Abundance, section 3.1; log-normal limits: Burnham KP et al. (1987), p.
 * 212.
 */
export function captureRecapture(n1: number, n2: number, m: number, confidence = 0.95): CaptureRecapture {
  if (!(m >= 0 && m <= Math.min(n1, n2))) throw new RangeError(`${m} matches of ${n1} and ${n2}`);
  const missed = (n1 - m) * (n2 - m);
  const chapman = ((n1 + 1) * (n2 + 1)) / (m + 1) - 1;
  const chapmanError = Math.sqrt(((n1 + 1) * (n2 + 1) * missed) / ((m + 1) ** 2 * (m + 2)));
  const seen = n1 + n2 - m;
  const [first, second] = m === 0 ? [null, null] : [m / n2, m / n1];
  return {
    lincolnPetersen: m === 0 ? null : (n1 * n2) / m,
    lincolnPetersenError: m === 0 ? null : Math.sqrt((n1 * n2 * missed) / raisedTo(m, 3)),
    chapman,
    chapmanError,
    ...limitsOf(chapman, chapmanError, seen, confidence),
    first,
    second,
    either: m === 0 ? null : 1 - (1 - m / n2) * (1 - m / n1),
  };
}

function limitsOf(chapman: number, error: number, seen: number, confidence: number) {
  if (error === 0) return { normal: null, logNormal: null };
  const z = normalZ(confidence);
  const unseen = chapman - seen;
  const factor = Math.exp(z * Math.sqrt(Math.log1p((error / unseen) ** 2)));
  return {
    normal: twoSided(chapman - z * error, chapman + z * error, confidence, 'Chapman, normal'),
    logNormal: twoSided(seen + unseen / factor, seen + unseen * factor, confidence, 'Chapman, log-normal'),
  };
}
