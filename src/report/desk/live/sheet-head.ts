import type { KnownName } from '../../../notebook/known-names.js';
import { lineOf, partOf } from './slots.js';

/** The line of the heads of a sheet's own columns, two above the first of them; null for other parts. */
export function headLine(slot: HTMLElement): number | null {
  const first = slot.dataset.holds === 'sheet' ? partOf(slot).querySelector<HTMLElement>('th.row') : null;
  return first === null ? null : lineOf(first) - 2;
}

/** The columns of the sheet in which a place stands: its formulas may name them. */
export function columnsBeside(slot: HTMLElement): readonly KnownName[] {
  return [...partOf(slot).querySelectorAll<HTMLElement>('th .slot[data-holds=name]')].map(({ dataset }) => {
    return { name: dataset.text!, kind: 'figure', unit: 'column', meaning: '', of: '' };
  });
}
