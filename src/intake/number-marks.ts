/** What may stand between groups of three digits: its letters, by the word that a crosswalk uses. */
export const thousandsMarks = { comma: ',', point: '.', space: ' \u00a0\u202f', apostrophe: "'\u2019" } as const;

/** The word for a mark between groups of three digits. */
export type ThousandsMark = keyof typeof thousandsMarks;

/** How numbers are written: the decimal mark, and what stands between groups of three digits, if anything. */
export interface NumberMarks {
  readonly decimal: '.' | ',';
  readonly thousands: ThousandsMark | null;
}

/** The source of an expression for a number without its sign: groups of three digits or none, then decimals. */
export function numberSource({ decimal, thousands }: NumberMarks): string {
  const decimals = `(?:[${decimal}]\\d+)?`;
  return thousands === null
    ? `\\d+${decimals}`
    : `(?:\\d{1,3}(?:[${thousandsMarks[thousands]}]\\d{3})+|\\d+)${decimals}`;
}

/** The same number with a point and no other mark; null where the text is none. */
export function plainDigits(text: string, marks: NumberMarks): string | null {
  if (!new RegExp(`^[-+]?${numberSource(marks)}$`, 'u').test(text)) return null;
  const ungrouped =
    marks.thousands === null ? text : text.replace(new RegExp(`[${thousandsMarks[marks.thousands]}]`, 'gu'), '');
  return ungrouped.replace(marks.decimal, '.');
}
