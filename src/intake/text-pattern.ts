/** A text that may hold stars, each standing for any letters or none: its pieces between them. */
export interface TextPattern {
  readonly pieces: readonly string[];
}

/** A pattern from its text; everything but a star stands for itself. */
export function textPattern(text: string): TextPattern {
  return { pieces: text.split('*') };
}

/** Whether a whole text is like a pattern. Every piece is looked for once from the left, so that no text takes long. */
export function matchesText({ pieces }: TextPattern, text: string): boolean {
  const first = pieces[0]!;
  if (pieces.length === 1) return text === first;
  const last = pieces.at(-1)!;
  if (text.length < first.length + last.length || !text.startsWith(first) || !text.endsWith(last)) return false;
  let at = first.length;
  for (const piece of pieces.slice(1, -1)) {
    const found = text.indexOf(piece, at);
    if (found < 0) return false;
    at = found + piece.length;
  }
  return at <= text.length - last.length;
}
