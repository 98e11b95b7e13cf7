import { createHash } from 'node:crypto';
import type { ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';

/** A part as the open page gets it. */
export interface ShippedPart {
  readonly key: string;
  /** The line it begins on; 0 where it has none. */
  readonly first: number;
  readonly last: number;
  /** The same for the same HTML, so that the page asks for what it does not have. */
  readonly mark: string;
  readonly html: string;
}

/** A part of a page as HTML with its mark. */
export function shipPart(key: string, first: number, last: number, elements: readonly ElementContent[]): ShippedPart {
  const html = elements.map(htmlOf).join('');
  return { key, first, last, mark: createHash('sha256').update(html).digest('hex').slice(0, 16), html };
}

// Drawings are large and stay the same objects from one showing to the next.
const written = new WeakMap<ElementContent, string>();

function htmlOf(element: ElementContent): string {
  const kept = written.get(element);
  if (kept !== undefined) return kept;
  const html = toHtml(element);
  written.set(element, html);
  return html;
}

/** The element that holds a part, empty: the script fills and replaces what is inside. */
export function partFrame(
  part: Omit<ShippedPart, 'html'>,
  kind: string,
  elements: readonly ElementContent[],
): ElementContent {
  return h(
    'div',
    {
      className: ['part', kind],
      'data-key': part.key,
      'data-first': String(part.first),
      'data-last': String(part.last),
      'data-mark': part.mark,
    },
    [...elements],
  );
}
