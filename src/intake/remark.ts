/** Something found about one row of one file; it becomes a line of a ledger once the row's fate is known. */
export interface Remark {
  readonly severity: 'sets aside' | 'notes';
  readonly line: number;
  /** The row's place in the draft; null for a row that never got there. */
  readonly row: number | null;
  /** The column's place in the header, from 0; null for the row as a whole. */
  readonly position: number | null;
  /** The cell as it stands in the file; null until the row is read again for it. */
  seen: string | null;
  readonly code: string;
  readonly reason: string;
  readonly remedy: string;
}

/** What a remark says beside its place: the problem's code, the reason and the remedy. */
export type Saying = Pick<Remark, 'code' | 'reason' | 'remedy'>;
