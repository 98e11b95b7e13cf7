import { binomialCumulative, binomialMass } from '../distribution/binomial.js';
import { chiSquaredUpper } from '../distribution/chi-squared.js';

/** Tests of equal shares in pairs, from the two kinds of pairs that disagree. */
export interface McNemarTest {
  /** Null, as are the chi-squared values, without a pair that disagrees. */
  readonly z: number | null;
  readonly chiSquared: number | null;
  readonly p: number;
  readonly chiSquaredCorrected: number | null;
  readonly pCorrected: number;
  readonly pExact: number;
  readonly pMid: number;
}

/**
 * McNemar's test of b pairs one way against c the other. McNemar Q (1947) Psychometrika 12:153-157; mid-P: Fagerland
 * MW, Lydersen S, Laake P (2013) BMC Medical Research Methodology 13:91.
 */
export function mcNemar(b: number, c: number): McNemarTest {
  if (![b, c].every((count) => Number.isInteger(count) && count >= 0)) throw new RangeError(`${b} and ${c} pairs`);
  const pairs = b + c;
  if (pairs === 0) {
    return { z: null, chiSquared: null, p: 1, chiSquaredCorrected: null, pCorrected: 1, pExact: 1, pMid: 1 };
  }
  const z = (b - c) / Math.sqrt(pairs);
  const corrected = Math.max(0, Math.abs(b - c) - 1) ** 2 / pairs;
  const fewer = Math.min(b, c);
  const mass = binomialMass(fewer, pairs, 0.5);
  const doubled = 2 * binomialCumulative(fewer, pairs, 0.5);
  return {
    z,
    chiSquared: z * z,
    p: chiSquaredUpper(z * z, 1),
    chiSquaredCorrected: corrected,
    pCorrected: chiSquaredUpper(corrected, 1),
    pExact: Math.min(1, doubled),
    pMid: b === c ? 1 - mass / 2 : doubled - mass,
  };
}
