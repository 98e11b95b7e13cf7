/** Counts of one stratum: cases and others of the first group, then of the second. */
export interface Stratum {
  readonly cases1: number;
  readonly others1: number;
  readonly cases2: number;
  readonly others2: number;
}
