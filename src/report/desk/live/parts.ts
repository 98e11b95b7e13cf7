import type { DeskState, Having, SentPart } from '../desk-state.js';
import { morph } from './morph.js';
import type { Readying } from './readied.js';

const holder = (): HTMLElement => document.getElementById('parts')!;

/** Every part of the open page. */
export function openParts(): readonly HTMLElement[] {
  return [...holder().children].filter((child) => child instanceof HTMLElement);
}

/** The marks of the parts that the page has. */
export function marksHere(): Having['marks'] {
  return Object.fromEntries(openParts().map(({ dataset }) => [dataset.key!, dataset.mark!]));
}

/** Makes the page's parts those of a state: parts that stay the same are not touched, those that change are readied again. */
export function showParts({ parts }: DeskState, ready: Readying): void {
  const byKey = new Map(openParts().map((part) => [part.dataset.key!, part]));
  let at: Element | null = holder().firstElementChild;
  for (const sent of parts) {
    const here = byKey.get(sent.key) ?? frameOf(sent);
    byKey.delete(sent.key);
    if (here === at) at = at.nextElementSibling;
    else holder().insertBefore(here, at);
    fill(here, sent, ready);
  }
  for (const gone of byKey.values()) gone.remove();
}

function frameOf({ key, kind }: SentPart): HTMLElement {
  const frame = document.createElement('div');
  frame.className = `part ${kind}`;
  frame.dataset.key = key;
  return frame;
}

function fill(part: HTMLElement, { first, last, mark, html }: SentPart, ready: Readying): void {
  part.dataset.first = String(first);
  part.dataset.last = String(last);
  part.dataset.mark = mark;
  if (html === undefined) return;
  const wanted = part.cloneNode(false) as HTMLElement;
  wanted.innerHTML = html;
  const readied = ready(part);
  morph(part, wanted);
  readied();
}

/** The number that an element carries under a name. */
export function numberOf(element: HTMLElement, name: string): number {
  return Number(element.dataset[name]);
}
