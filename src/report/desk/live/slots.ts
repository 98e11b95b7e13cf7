import { numberOf, openParts } from './parts.js';

/** The part in which an element stands. */
export function partOf(element: Element): HTMLElement {
  return element.closest<HTMLElement>('.part')!;
}

/** The line of the document on which a place or row begins. */
export function lineOf(element: HTMLElement): number {
  return numberOf(partOf(element), 'first') + numberOf(element, 'line');
}

/** The button that opens a place. */
export function buttonOf(slot: HTMLElement): HTMLButtonElement | null {
  return slot.querySelector('button.open');
}

/** Sets focus to the place on a line, to the one with that number in its row where there is one. */
export function focusLine(line: number, place: string | null): HTMLElement | null {
  const part = openParts().find((one) => numberOf(one, 'first') <= line && line <= numberOf(one, 'last'));
  if (part === undefined) return null;
  const slots = [...part.querySelectorAll<HTMLElement>('.slot')];
  const onLine = slots.filter((slot) => lineOf(slot) === line);
  const found = onLine.find(({ dataset }) => place !== null && placeIn(dataset) === place) ?? onLine[0] ?? slots[0];
  if (found === undefined) return null;
  buttonOf(found)?.focus();
  return found;
}

/** Which place of its row a slot is. */
export function placeIn({ row, place, holds }: DOMStringMap): string {
  return `${holds} ${row === undefined ? '' : place === undefined ? row : holds}`;
}

/** Leaves one button of each table to the Tab key; arrow keys reach the others. */
export function settleTabStops(): void {
  for (const part of openParts()) {
    const buttons = [...part.querySelectorAll<HTMLButtonElement>('.slot[data-row] > button.open')];
    const stop = buttons.find((button) => button.tabIndex === 0 && button.hasAttribute('tabindex')) ?? buttons[0];
    for (const button of buttons) button.tabIndex = button === stop ? 0 : -1;
  }
}

/** Makes a button the one that Tab reaches in its table. */
export function makeTabStop(button: HTMLButtonElement): void {
  for (const other of partOf(button).querySelectorAll<HTMLButtonElement>('.slot[data-row] > button.open')) {
    other.tabIndex = other === button ? 0 : -1;
  }
}

/** The place that lies so many rows and places from one, in the same table; null at its edge. */
export function neighbour(slot: HTMLElement, rows: number, places: number): HTMLElement | null {
  const row = numberOf(slot, 'row') + rows;
  const place = numberOf(slot, 'place') + places;
  const slots = [...partOf(slot).querySelectorAll<HTMLElement>('.slot[data-row]')];
  const inRow = slots.filter((one) => numberOf(one, 'row') === row);
  return inRow.find((one) => numberOf(one, 'place') === place) ?? (rows === 0 ? null : (inRow.at(-1) ?? null));
}
