import type { ReadNotebook } from '../read-document.js';
import type { AddedPart, Edited } from './document-edit.js';
import { staleCell } from './edit-cell.js';
import { freeName } from './edit-rows.js';
import { linesBetween, linesOf, type TextLines, withLines } from './text-lines.js';

/** The text with other lines in the place of some; no line outside them changes. */
export function editLines(text: string, first: number, last: number, was: string, now: string): Edited {
  const all = linesOf(text);
  if (linesBetween(all, first, last) !== was) return { refused: staleCell };
  const lines = now.replace(/\r\n?/g, '\n').replace(/\s+$/, '').replace(/^\n+/, '').split('\n');
  return { text: withLines(all, first, last, lines), line: null };
}

/** The text with a new part below that line (0: at the top), between empty lines; it computes as it stands, to be changed. */
export function addPart(
  text: string,
  { document }: ReadNotebook,
  below: number,
  part: AddedPart,
  taken: ReadonlySet<string>,
): Edited {
  const all = linesOf(text);
  if (below > all.lines.length) return { refused: staleCell };
  const sheet = document.parts.findLast((one) => one.kind === 'sheet');
  const lines = newPart(part, taken, sheet?.kind === 'sheet' ? sheet.sheet.name.text : 'by_station');
  const above = below === 0 || all.lines[below - 1] === '' ? [] : [''];
  const under = below >= all.lines.length || all.lines[below] === '' ? [] : [''];
  const added = withLines(all, below + 1, below, [...above, ...lines, ...under]);
  return { text: added, line: below + 1 + above.length };
}

function newPart(part: AddedPart, taken: ReadonlySet<string>, sheet: string): readonly string[] {
  switch (part) {
    case 'paragraph':
      return ['Write here.'];
    case 'heading':
      return ['## A heading'];
    case 'inputs':
      return ['| input | value | unit | source |', '|---|---|---|---|', `| ${freeName('input', taken)} | 0 | | |`];
    case 'records':
      return ['| selection | rows |', '|---|---|', `| ${freeName('selection', taken)} | inspections |`];
    case 'figures':
      return [
        '| figure | formula | shown as |',
        '|---|---|---|',
        `| ${freeName('figure', taken)} | count(inspections) | whole |`,
      ];
    case 'sheet':
      return [
        `Sheet ${freeName('sheet', taken)}: each station of inspections.`,
        '',
        '| column | formula | shown as |',
        '|---|---|---|',
        '| inspected | count() | whole |',
      ];
    case 'chart':
      return [`![What the chart shows](dots?sheet=${sheet})`];
  }
}

/** The text without one part and the empty lines behind it. */
export function takePart(text: string, read: ReadNotebook, first: number, last: number): Edited {
  const all = linesOf(text);
  const known = read.written.some((part) => part.first === first && part.last === last);
  if (!known) return { refused: staleCell };
  return { text: withLines(all, first, behind(all, last), []), line: first };
}

/** The last of the empty lines that follow a line. */
function behind({ lines }: TextLines, last: number): number {
  let end = last;
  while (end < lines.length && lines[end]!.trim() === '') end++;
  return end;
}

/** The text with a part changing places with its neighbour; the lines between them stay where they are. */
export function movePart(text: string, { written }: ReadNotebook, first: number, down: boolean): Edited {
  const at = written.findIndex((part) => part.first === first);
  const upper = written[down ? at : at - 1];
  const lower = written[down ? at + 1 : at];
  if (at < 0) return { refused: staleCell };
  if (upper === undefined || lower === undefined) {
    return { refused: down ? 'it is the last part of the notebook' : 'it is the first part of the notebook' };
  }
  const all = linesOf(text);
  const slice = (from: number, to: number) => all.lines.slice(from - 1, to);
  const lines = [
    ...slice(lower.first, lower.last),
    ...slice(upper.last + 1, lower.first - 1),
    ...slice(upper.first, upper.last),
  ];
  const line = down ? first + lower.last - upper.last : upper.first;
  return { text: withLines(all, upper.first, lower.last, lines), line };
}
