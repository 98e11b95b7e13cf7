/** How far a table's numbers were checked against their source. */
export type StandardTag = 'second-hand' | 'from memory' | 'common practice, no source';

/** Least values that a table asks of a wash; null where it asks nothing. It is data to compare with, never advice. */
export interface WashStandard {
  /** How a sheet's sentence names it. */
  readonly name: string;
  readonly source: string;
  readonly tag: StandardTag;
  /** Of water where it touches the part. */
  readonly contactTemperatureF: number | null;
  readonly contactSeconds: number | null;
  /** Of an engine's flush. */
  readonly flushMinutes: number | null;
  readonly flushExitTemperatureF: number | null;
}
