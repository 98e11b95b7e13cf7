/** How a page is set on paper by the command. */
export interface Paper {
  readonly size: PaperSize;
  /** Whether every account of how a number was made is printed too. */
  readonly accounts: boolean;
}

/** A size of paper. */
export type PaperSize = keyof typeof paperSizes;

/** The sizes of paper there are, as style sheets name them. */
export const paperSizes = { letter: 'letter', a4: 'A4' } as const;

/** The style by which a page takes that paper; with accounts, a brief's workings follow it on sheets of their own. */
export function paperStyle({ size, accounts }: Paper): string {
  const workings = '@media print{.workings{display:block;break-before:page}}';
  return `@page{size:${paperSizes[size]}}\n${accounts ? workings : ''}`;
}
