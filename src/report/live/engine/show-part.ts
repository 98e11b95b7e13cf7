import type { AskForCell } from '../cell-accounts.js';
import { isScrolled, markScrolled } from '../note-scrolling.js';
import { readyParts } from '../ready-parts.js';

/** The elements of a part that stand on the page. */
export function elementsOf(key: string): readonly HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>(`[data-part="${key}"]`)];
}

/** Dims a part until it is counted again, or shows it as it is. */
export function markStale(key: string, stale: boolean): void {
  for (const element of elementsOf(key)) element.toggleAttribute('data-stale', stale);
}

/** Says the accounts that are open in a part anew: its numbers may stay while the records behind them change. */
export function sayAccountsAgain(key: string): void {
  for (const account of within(elementsOf(key), 'details.account[open]')) account.dispatchEvent(new Event('toggle'));
}

/** Puts elements that stood there before in the place of a part. */
export function restorePart(key: string, before: readonly HTMLElement[]): void {
  const old = elementsOf(key);
  const place = placeOfFocus(old);
  const [first, ...others] = old;
  first?.replaceWith(...before);
  for (const other of others) other.remove();
  focusAgain(before, place);
}

/**
 * Puts HTML in the place of a part; what a reader had opened, scrolled, sorted or focused there stays so. Gives back the
 * elements that stood there. `ask` gives the accounts of its cells.
 */
export function showPart(key: string, html: string, ask: AskForCell): readonly HTMLElement[] {
  const old = elementsOf(key);
  const [first] = old;
  if (first === undefined) return old;
  const template = document.createElement('template');
  template.innerHTML = html;
  const fresh = template.content;
  readyParts(fresh, ask);
  const sorting = sortingOf(old);
  keepOpen(old, fresh);
  const scrolled = scrollsOf(old);
  const place = placeOfFocus(old);
  const parts = [...fresh.children];
  first.before(fresh);
  for (const element of old) element.remove();
  for (const part of parts) sortAgain(part, sorting);
  scrollAgain(parts, scrolled);
  focusAgain(parts, place);
  return old;
}

function within(parts: Iterable<Element>, selector: string): readonly Element[] {
  return [...parts].flatMap((part) => [...(part.matches(selector) ? [part] : []), ...part.querySelectorAll(selector)]);
}

function keepOpen(old: readonly Element[], fresh: DocumentFragment): void {
  const before = within(old, 'details');
  within(fresh.children, 'details').forEach((details, at) => {
    const was = before[at];
    if (details instanceof HTMLDetailsElement && was instanceof HTMLDetailsElement) details.open = was.open;
  });
}

const focusable = 'a[href],button,input,select,summary,[tabindex]';

/** Which of the focusable elements of a part has the focus, counted from its first; -1 where none has. */
function placeOfFocus(parts: readonly Element[]): number {
  const focused = document.activeElement;
  return focused === null ? -1 : within(parts, focusable).indexOf(focused);
}

/** Gives the focus to the element at that place, or to the last before it where the part has fewer now. */
function focusAgain(parts: readonly Element[], place: number): void {
  const now =
    place < 0
      ? undefined
      : within(parts, focusable)
          .slice(0, place + 1)
          .at(-1);
  if (now instanceof HTMLElement || now instanceof SVGElement) now.focus({ preventScroll: true });
}

type Scrolled = readonly [region: number, left: number, top: number];

function scrollsOf(old: readonly Element[]): readonly Scrolled[] {
  return within(old, '.scroll').flatMap((region, at): Scrolled[] =>
    isScrolled(region) ? [[at, region.scrollLeft, region.scrollTop]] : [],
  );
}

function scrollAgain(parts: readonly Element[], scrolled: readonly Scrolled[]): void {
  const regions = scrolled.length === 0 ? [] : within(parts, '.scroll');
  for (const [at, left, top] of scrolled) {
    const region = regions[at];
    if (region === undefined) continue;
    region.scrollTo(left, top);
    markScrolled(region);
  }
}

/** The tables that a reader sorted: by their id, the place of the head and how often it was pressed. */
function sortingOf(old: readonly Element[]): ReadonlyMap<string, readonly [number, number]> {
  return new Map(
    within(old, 'th[aria-sort]').map((head) => {
      const presses = head.getAttribute('aria-sort') === 'ascending' ? 1 : 2;
      return [head.closest('table')?.id ?? '', [(head as HTMLTableCellElement).cellIndex, presses]] as const;
    }),
  );
}

function sortAgain(part: Element, sorting: ReadonlyMap<string, readonly [number, number]>): void {
  for (const table of within([part], 'table.sortable')) {
    const [column, presses] = sorting.get(table.id) ?? [0, 0];
    const button = (table as HTMLTableElement).tHead?.rows[0]?.cells[column]?.querySelector('button');
    for (let press = 0; press < presses; press++) button?.click();
  }
}
