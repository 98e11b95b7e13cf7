/** What a formula tells beyond the records that its value is counted from. */
export interface Beyond {
  /** Columns of sheets, by `columnKey`, whose numbers decide what it gives, as the place in an order does. */
  readonly deciding: ReadonlySet<string>;
  /** Columns of sheets that it adds up; nothing beyond where the sum is a plain count. */
  readonly added: ReadonlySet<string>;
  /** The smaller share of records on one side of a quantile it asks for; 1 where it asks for none. */
  readonly tail: number;
  /** Whether it gives what one record has, as a highest value does. */
  readonly isOfOne: boolean;
  /** Whether it stands on a finding that does not say which records it counts. */
  readonly isUnknown: boolean;
}

/** Nothing beyond. */
export const nothingBeyond: Beyond = {
  deciding: new Set(),
  added: new Set(),
  tail: 1,
  isOfOne: false,
  isUnknown: false,
};

/** The key of a column of a sheet. */
export function columnKey(sheet: string, column: string): string {
  return JSON.stringify([sheet, column]);
}

/** All that several parts of a formula tell. */
export function joinBeyond(parts: readonly Beyond[]): Beyond {
  return {
    deciding: new Set(parts.flatMap(({ deciding }) => [...deciding])),
    added: new Set(parts.flatMap(({ added }) => [...added])),
    tail: Math.min(1, ...parts.map(({ tail }) => tail)),
    isOfOne: parts.some(({ isOfOne }) => isOfOne),
    isUnknown: parts.some(({ isUnknown }) => isUnknown),
  };
}
