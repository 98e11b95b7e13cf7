import type { Edited } from './document-edit.js';
import { linesOf, withLines } from './text-lines.js';

/** A cell's text as a pipe table can hold it: one line, and no bar that would end it. */
export function cellText(text: string): string {
  return text
    .trim()
    .replace(/\s*[\r\n]+\s*/g, ' ')
    .replace(/(?<!\\)\|/g, '\\|');
}

/**
 * The text with another text in one cell of a pipe table. Only the cell's own line changes: its padding takes up the difference
 * while it can, so that the table stays as straight as it was, and no other row is touched.
 */
export function editCell(text: string, line: number, column: number, was: string, now: string): Edited {
  const all = linesOf(text);
  const old = all.lines[line - 1];
  const start = column - 1;
  if (old === undefined || old.slice(start, start + was.length) !== was) return { refused: staleCell };
  const head = old.slice(0, start);
  const tail = old.slice(start + was.length);
  const after = /^\s*/.exec(tail)![0].length;
  const put = cellText(now);
  const rest = tail.slice(after);
  // Between two bars a cell keeps one blank on either side.
  const least = rest.startsWith('|') || rest === '' ? 1 : 0;
  const padding = rest === '' && after === 0 ? 0 : Math.max(least, after + was.length - put.length);
  const lead = /\|$/.test(head) ? ' ' : '';
  return { text: withLines(all, line, line, [head + lead + put + ' '.repeat(padding) + rest]), line: null };
}

/** Said where a document is no longer what the edit was made for. */
export const staleCell = 'something else stands there by now';
