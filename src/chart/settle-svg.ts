import type { Element, ElementContent } from 'hast';
import { s } from 'hastscript';

/** What an `svg` must say of itself. */
export interface Said {
  /** The chart's name; every address within the drawing begins with it. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
}

/** What is read of an element of a drawing, whether it is ours or a browser's. */
export interface SettledElement {
  readonly nodeName: string;
  readonly attributes: Iterable<{ readonly name: string; readonly value: string }>;
  readonly childNodes: Iterable<SettledNode>;
}

type SettledNode = {
  readonly nodeType: number;
  readonly nodeName: string;
  readonly nodeValue?: string | null;
} & Partial<Pick<SettledElement, 'attributes' | 'childNodes'>>;

/** The elements below one, in the order in which they stand. */
export function* elementsBelow({ childNodes }: SettledElement): Generator<SettledElement> {
  for (const child of childNodes) {
    if (!isElement(child)) continue;
    yield child;
    yield* elementsBelow(child);
  }
}

function isElement(node: SettledNode): node is SettledNode & SettledElement {
  return node.nodeType === 1;
}

/** Attributes a drawing library writes for its own page or reader, which have no place in ours. */
const dropped =
  /^(class|style|font-family|xmlns|xmlns:.*|version|aria-label|aria-description|aria-roledescription|role)$/;

/**
 * An `svg` of a drawing library as an element of our page: no style of its own, addresses made from the chart's name, one
 * title and description for the whole, and coordinates to a hundredth of a pixel.
 */
export function settleSvg(svg: SettledElement, said: Said): Element {
  const ids = new Map<string, string>();
  for (const { attributes } of elementsBelow(svg)) {
    for (const { name, value } of attributes) if (name === 'id') ids.set(value, `${said.name}-mark-${ids.size + 1}`);
  }
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

function settleElement(element: SettledElement, ids: ReadonlyMap<string, string>): Element {
  const attributes: Record<string, string> = {};
  for (const { name, value } of element.attributes) {
    if (name === 'style' && !ownStyle.test(value)) throw new Error(`a drawing has a style of its own: ${value}`);
    if (dropped.test(name)) continue;
    attributes[name] = settleValue(value, ids);
  }
  const children: ElementContent[] = [];
  for (const child of element.childNodes) {
    if (isElement(child)) {
      if (child.nodeName.toLowerCase() !== 'style') children.push(settleElement(child, ids));
    } else if (child.nodeType === 3 && child.nodeValue) {
      children.push({ type: 'text', value: child.nodeValue });
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
