/** What is said of one problem of one row beside its place: its code, the reason and the remedy. */
export interface Saying {
  readonly code: string;
  readonly reason: string;
  readonly remedy: string;
}

/** What follows from a remark for its row. */
export type Follows = 'sets aside' | 'notes';
