import type { DocumentEdit } from '../../../notebook/edit/document-edit.js';
import { numberOf } from './parts.js';
import { lineOf, partOf } from './slots.js';

/** How many rows and places each arrow key goes within a table. */
export const steps: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** The keys that change the document while Alt is held. */
export const editingKeys = new Set(['ArrowUp', 'ArrowDown', 'Enter', 'Delete']);

/** The edit that such a key asks for at a place; null where it asks for none there. */
export function editByKey(key: string, slot: HTMLElement): DocumentEdit | null {
  const row = slot.closest<HTMLElement>('.row');
  const isMove = key === 'ArrowUp' || key === 'ArrowDown';
  const down = key === 'ArrowDown';
  if (row === null) return isMove ? { change: 'move part', first: numberOf(partOf(slot), 'first'), down } : null;
  const line = lineOf(row);
  if (isMove) return { change: 'move row', line, down };
  if (key === 'Enter') return { change: 'add row', below: line };
  return key === 'Delete' ? { change: 'take row', line } : null;
}
