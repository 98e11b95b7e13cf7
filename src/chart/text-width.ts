/**
 * About how wide a text stands, in pixels, in an ordinary sans-serif of that size. A guess on the wide side: text cannot be
 * measured where pages are made, and readers' fonts differ.
 */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const letter of text)
    ems += /[iIjlftr.,:;'|! ()[\]]/.test(letter) ? 0.34 : /[mwMW@%—]/.test(letter) ? 0.92 : 0.6;
  return Math.ceil(ems * size * 1.04);
}

/** The widest of some texts. */
export function widestText(texts: readonly string[], size: number): number {
  return texts.reduce((widest, text) => Math.max(widest, textWidth(text, size)), 0);
}
