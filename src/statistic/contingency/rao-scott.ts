import { chiSquaredUpper } from '../distribution/chi-squared.js';
import { clusteredProportion } from '../proportion/clustered.js';
import { checkSameLength } from '../same-length.js';
import { independence } from './independence.js';

/** A test of equal proportions in groups whose trials came in clusters. */
export interface RaoScottTest {
  /** One a group, in ascending order of group; null where a group has one cluster, or only cases, or none. */
  readonly designEffects: readonly (number | null)[];
  /** As if trials were independent. */
  readonly chiSquaredUnadjusted: number | null;
  /** From counts divided by their group's design effect; null where one is missing. */
  readonly chiSquared: number | null;
  readonly degreesOfFreedom: number;
  readonly p: number | null;
}

/** Rao JNK, Scott AJ (1992) Biometrics 48:577-585: cases and trials of each cluster, and the group each belongs to. */
export function raoScott(cases: readonly number[], trials: readonly number[], group: readonly number[]): RaoScottTest {
  checkSameLength({ cases, trials, groups: group });
  const groups = [...new Set(group)].sort((a, b) => a - b);
  const estimates = groups.map((code) => {
    const inGroup = (_: number, i: number) => group[i] === code;
    return clusteredProportion({ cases: cases.filter(inGroup), trials: trials.filter(inGroup) });
  });
  const effects = estimates.map((estimate) => estimate.designEffect);
  const plain = estimates.map((estimate) => [estimate.cases, estimate.trials - estimate.cases]);
  const usable = effects.every((effect) => effect !== null && effect > 0);
  const divided = plain.map((row, i) => row.map((count) => count / (effects[i] ?? 1)));
  const chiSquared = usable ? independence(divided).chiSquared : null;
  const degreesOfFreedom = Math.max(0, groups.length - 1);
  return {
    designEffects: effects,
    chiSquaredUnadjusted: independence(plain).chiSquared,
    chiSquared,
    degreesOfFreedom,
    p: chiSquared === null || degreesOfFreedom === 0 ? null : chiSquaredUpper(chiSquared, degreesOfFreedom),
  };
}
