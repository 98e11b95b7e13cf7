/** A survival curve: one entry a distinct time at which something ended, in order. */
export interface SurvivalCurve {
  readonly times: readonly number[];
  /** Still open just before each time. */
  readonly atRisk: readonly number[];
  readonly events: readonly number[];
  /** Lost from view, still open, from each time until the next. */
  readonly censored: readonly number[];
  /** The share still open just after each time. */
  readonly survival: readonly number[];
  /** Greenwood's; null where the curve has reached 0. */
  readonly standardError: readonly (number | null)[];
  /** Limits of the share at each time alone, not of the whole curve; null where the curve has reached 0. */
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
  readonly confidence: number;
  /** All that were followed, ended or not. */
  readonly subjects: number;
  /** How long the longest was followed, ended or not; null without any. */
  readonly followedTo: number | null;
}
