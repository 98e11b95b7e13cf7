import type { Element, ElementContent } from 'hast';
import { s } from 'hastscript';

/** What an `svg` must say of itself. */
export interface Said {
  /** The chart's name; every address within the drawing begins with it. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
}

/** Attributes a drawing library writes for its own page or reader, which have no place in ours. */
const dropped =
  /^(class|style|font-family|xmlns|xmlns:.*|version|aria-label|aria-description|aria-roledescription|role)$/;

/**
 * An `svg` of a drawing library as an element of our page: no style of its own, addresses made from the chart's name, one
 * title and description for the whole, and coordinates to a hundredth of a pixel.
 */
export function settleSvg(svg: globalThis.Element, said: Said): Element {
  const ids = new Map<string, string>();
  for (const element of svg.querySelectorAll('[id]')) ids.set(element.id, `${said.name}-mark-${ids.size + 1}`);
  const settled = settleElement(svg, ids);
  settled.properties = {
    ...settled.properties,
    className: ['drawing'],
    fontSize: '12',
    role: 'img',
    ariaLabelledBy: [`${said.name}-title`],
    ariaDescribedBy: [`${said.name}-description`],
  };
  settled.children.unshift(
    s('title', { id: `${said.name}-title` }, [said.title]),
    s('desc', { id: `${said.name}-description` }, [said.description]),
  );
  return settled;
}

function settleElement(element: globalThis.Element, ids: ReadonlyMap<string, string>): Element {
  const attributes: Record<string, string> = {};
  // By name: libraries for documents keep attributes in orders of their own.
  const named = [...element.attributes].sort((one, other) => (one.name < other.name ? -1 : 1));
  for (const { name, value } of named) {
    if (name === 'style' && !ownStyle.test(value)) throw new Error(`a drawing has a style of its own: ${value}`);
    if (dropped.test(name)) continue;
    attributes[name] = settleValue(value, ids);
  }
  const children: ElementContent[] = [];
  for (const child of element.childNodes) {
    if (child.nodeType === 3 && child.nodeValue !== null && child.nodeValue !== '') {
      children.push({ type: 'text', value: child.nodeValue });
    } else if (child.nodeType === 1 && child.nodeName.toLowerCase() !== 'style') {
      children.push(settleElement(child as globalThis.Element, ids));
    }
  }
  return s(element.nodeName, attributes, children);
}

/** Styles that say nothing on a still page. */
const ownStyle = /^\s*(pointer-events:\s*none;?)?\s*$/;

function settleValue(value: string, ids: ReadonlyMap<string, string>): string {
  const named =
    ids.get(value) ?? value.replace(/url\(#([^)]+)\)/g, (whole, id: string) => addressOf(ids.get(id), whole));
  return named.replace(/-?\d+\.\d{3,}/g, (number) => String(Number(Number(number).toFixed(2))));
}

function addressOf(id: string | undefined, otherwise: string): string {
  return id === undefined ? otherwise : `url(#${id})`;
}
