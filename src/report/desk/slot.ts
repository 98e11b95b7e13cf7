import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Cell } from '../../notebook/document.js';

/** What a place of the desk holds: decides its editor and which names complete it. */
export type Holds =
  | 'name'
  | 'value'
  | 'unit'
  | 'source'
  | 'formula'
  | 'rows'
  | 'shown as'
  | 'prose'
  | 'heading'
  | 'sheet'
  | 'chart'
  | 'settings';

/** A place that can be opened and changed. Lines count from the first line of its part (0), so that a part that moves stays the same. */
export interface Slot {
  readonly holds: Holds;
  readonly line: number;
  /** The last line, where it holds whole lines; null for a cell of a table. */
  readonly last: number | null;
  readonly column: number;
  readonly text: string;
  /** What is shown while it is closed. */
  readonly shown: readonly (string | ElementContent)[];
  /** What it is, for those who hear the page. */
  readonly label: string;
  /** Where arrow keys find it: its row and its place in the row; null where it is no part of a table. */
  readonly at: readonly [row: number, place: number] | null;
}

/** A closed place: a button with what it shows, which the script opens where it stands. */
export function slotElement(slot: Slot): Element {
  return h('span', slotProperties(slot), [
    h('button', { type: 'button', className: ['open'] }, [
      h('span', { className: ['unseen'] }, [`${slot.label}: `]),
      ...slot.shown,
    ]),
  ]);
}

/** The properties by which the script knows a place. */
export function slotProperties({
  holds,
  line,
  last,
  column,
  text,
  label,
  at,
}: Slot): Record<string, string | string[]> {
  return {
    className: ['slot', `holds-${holds.replace(' ', '-')}`],
    'data-holds': holds,
    'data-line': String(line),
    'data-column': String(column),
    'data-text': text,
    'data-label': label,
    ...(last === null ? {} : { 'data-last': String(last) }),
    ...(at === null ? {} : { 'data-row': String(at[0]), 'data-place': String(at[1]) }),
  };
}

/** A place that is a cell of a table in the part that begins on line `first`. */
export function cellSlot(cell: Cell, first: number, parts: Pick<Slot, 'holds' | 'label' | 'shown' | 'at'>): Slot {
  return { ...parts, line: cell.line - first, last: null, column: cell.column, text: cell.text };
}
