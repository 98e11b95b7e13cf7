/** One piece of a pattern that takes a value out of a text. */
export type WithinPiece =
  | { readonly kind: 'any' }
  | { readonly kind: 'space' }
  | { readonly kind: 'literal'; readonly text: string }
  | { readonly kind: 'taken'; readonly what: 'number' | 'word' | 'text' };

/** A pattern that takes one value out of a text, such as `*temp {number} F*`. */
export interface WithinPattern {
  readonly text: string;
  readonly pieces: readonly WithinPiece[];
}

/** The longest text that a value is looked for in. */
export const longestText = 4096;

const takes = { number: /[-+]?\d+(?:[.,]\d+)*/y, word: /[^\s,;]+/y } as const;

/**
 * A pattern made ready, or a sentence saying why it cannot be one. `{number}`, `{word}` or `{text}` is what is taken, once; a
 * star stands for anything, a space for one space or more, and all else for itself, in capitals or not.
 */
export function readWithin(text: string): WithinPattern | string {
  const pieces: WithinPiece[] = [];
  for (const [piece] of text.matchAll(/\{[^}]*\}|\*|\s+|[^{*\s]+|\{/gu)) {
    const last = pieces.at(-1);
    const isOpen = last?.kind === 'any' || (last?.kind === 'taken' && last.what === 'text');
    if (piece === '*') {
      if (isOpen) return 'nothing stands between two parts that may be anything';
      pieces.push({ kind: 'any' });
    } else if (/^\s/u.test(piece)) pieces.push({ kind: 'space' });
    else if (piece.startsWith('{')) {
      const what = piece.slice(1, -1);
      if (what !== 'number' && what !== 'word' && what !== 'text')
        return `"${piece}" is none of {number}, {word}, {text}`;
      if (what === 'text' && isOpen) return 'nothing stands between two parts that may be anything';
      pieces.push({ kind: 'taken', what });
    } else pieces.push({ kind: 'literal', text: piece.toLowerCase() });
  }
  const taken = pieces.filter(({ kind }) => kind === 'taken').length;
  return taken === 1 ? { text, pieces } : `it takes ${taken === 0 ? 'nothing' : 'more than one value'}`;
}

/** Where pieces that follow one another end, from one place of a text on, and what was taken; null where they are not there. */
interface Met {
  readonly end: number;
  readonly taken: string | null;
}

function meet(pieces: readonly WithinPiece[], text: string, folded: string, from: number): Met | null {
  let at = from;
  let taken: string | null = null;
  for (const [index, piece] of pieces.entries()) {
    if (piece.kind === 'literal') {
      if (!folded.startsWith(piece.text, at)) return null;
      at += piece.text.length;
    } else if (piece.kind === 'space') {
      const start = at;
      while (at < text.length && /\s/u.test(text[at]!)) at++;
      if (at === start) return null;
    } else if (piece.kind === 'taken') {
      const start = at;
      if (piece.what === 'text') {
        const next = pieces[index + 1];
        at =
          next?.kind === 'literal'
            ? folded.indexOf(next.text, at)
            : next === undefined
              ? text.length
              : text.indexOf(' ', at);
        if (at < 0) return null;
      } else {
        const expression = takes[piece.what];
        expression.lastIndex = at;
        if (!expression.test(text)) return null;
        at = expression.lastIndex;
      }
      taken = text.slice(start, at).trim();
    }
  }
  return { end: at, taken };
}

/** What the pattern takes out of a text; null where the text is not like it. Takes time in proportion to the text's length. */
export function takenFrom({ pieces }: WithinPattern, text: string): string | null {
  if (text.length > longestText) return null;
  const folded = text.toLowerCase();
  // Letters that change their length with their case would shift every place.
  if (folded.length !== text.length) return null;
  const runs: WithinPiece[][] = [[]];
  for (const piece of pieces) {
    if (piece.kind === 'any') runs.push([]);
    else runs.at(-1)!.push(piece);
  }
  let at = 0;
  let taken: string | null = null;
  for (const [index, run] of runs.entries()) {
    const isLast = index === runs.length - 1;
    if (run.length === 0) {
      if (isLast && index > 0) at = text.length;
      continue;
    }
    let found: Met | null = null;
    const lastStart = index === 0 ? at : text.length;
    for (let start = at; start <= lastStart && found === null; start++) {
      const met = meet(run, text, folded, start);
      if (met !== null && (!isLast || met.end === text.length)) found = met;
    }
    if (found === null) return null;
    at = found.end;
    taken ??= found.taken;
  }
  return at === text.length ? taken : null;
}
