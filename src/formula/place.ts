import { inDocument, type Problem } from '../problem/problem.js';

/** Where a text begins in its document: a line, and the column of its first character, both from 1. */
export interface TextPlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** A text with the place it was read at. */
export interface PlacedText {
  readonly text: string;
  readonly at: TextPlace;
}

/** A stretch of a text, in UTF-16 units from its beginning; `end` is the first one after it. */
export interface Span {
  readonly offset: number;
  readonly end: number;
}

/** What is wrong with a stretch of a formula, before it has a place in a document. */
export interface Mistake {
  readonly code: string;
  readonly wanted: string;
  readonly remedy: string;
}

const longestSeen = 60;

function shorten(text: string): string {
  return text.length <= longestSeen ? text : `${text.slice(0, longestSeen - 1)}…`;
}

/** A mistake at a stretch of a placed text, as a problem that fails the figure and points at the exact character. */
export function problemAt({ text, at }: PlacedText, { offset, end }: Span, mistake: Mistake): Problem {
  const before = text.slice(0, offset);
  const breaks = before.split('\n').length - 1;
  const column = breaks === 0 ? at.column + offset : offset - before.lastIndexOf('\n');
  const seen = text
    .slice(offset, end)
    .trim()
    .replace(/^"([^"]*)"$/, '$1');
  return {
    ...mistake,
    severity: 'sets aside',
    place: inDocument(at.file, at.line + breaks, column),
    seen: shorten(seen === '' ? text.trim() : seen),
  };
}
