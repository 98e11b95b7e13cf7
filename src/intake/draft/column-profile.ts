/** What a column of a sample holds. */
export interface ColumnProfile {
  readonly heading: string;
  /** Rows looked at. */
  readonly rows: number;
  /** Rows that have any text in the column. */
  readonly filled: number;
  /** How often each text is met, the most frequent first; empty cells and missing marks are left out. */
  readonly values: readonly (readonly [text: string, times: number])[];
}

/** Texts that stand for missing wherever they are met. */
export const missingMarks = ['NA', 'N/A', 'n/a', 'NULL', 'null', '#N/A'];

/** What each column of some rows holds; texts that stand for missing are left out unless they are said to be marks. */
export function profilesOf(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  areMarks = false,
): readonly ColumnProfile[] {
  return headings.map((heading, place) => {
    const counts = new Map<string, number>();
    let filled = 0;
    for (const row of rows) {
      const text = row[place] ?? '';
      if (text === '' || (!areMarks && missingMarks.includes(text))) continue;
      filled++;
      counts.set(text, (counts.get(text) ?? 0) + 1);
    }
    const values = [...counts].sort(([a, times], [b, others]) => others - times || (a < b ? -1 : 1));
    return { heading, rows: rows.length, filled, values };
  });
}

/** The share of filled rows whose text passes a test, from 0 to 1; 0 where no row is filled. */
export function shareOf({ values, filled }: ColumnProfile, test: (text: string) => boolean): number {
  if (filled === 0) return 0;
  let passed = 0;
  for (const [text, times] of values) if (test(text)) passed += times;
  return passed / filled;
}
