// The few parts of a document that drawing libraries put an SVG together with. A library for whole documents takes half of a
// page's processor time to load, and draws slower.

/** A node of a drawing that is being made: an element, or the text within one. */
export type DrawnNode = DrawnElement | DrawnText;

/** Text within an element. */
export interface DrawnText {
  readonly nodeType: 3;
  readonly nodeName: '#text';
  readonly nodeValue: string;
  parentNode: DrawnElement | null;
}

/** The document that elements belong to. */
export interface DrawnDocument {
  readonly documentElement: DrawnElement;
  readonly createElementNS: (space: string, name: string) => DrawnElement;
  readonly createTextNode: (text: string) => DrawnText;
}

/** An element of a drawing; its attributes stand in the order in which they were first set. */
export class DrawnElement {
  readonly nodeType = 1;
  readonly nodeName: string;
  readonly namespaceURI: string;
  readonly ownerDocument: DrawnDocument;
  readonly childNodes: DrawnNode[] = [];
  parentNode: DrawnElement | null = null;
  readonly #attributes = new Map<string, string>();

  constructor(document: DrawnDocument, space: string, name: string) {
    this.ownerDocument = document;
    this.namespaceURI = space;
    this.nodeName = name;
  }

  get attributes(): readonly { readonly name: string; readonly value: string }[] {
    return Array.from(this.#attributes, ([name, value]) => ({ name, value }));
  }

  hasAttribute(name: string): boolean {
    return this.#attributes.has(name);
  }

  getAttribute(name: string): string | null {
    return this.#attributes.get(name) ?? null;
  }

  setAttribute(name: string, value: unknown): void {
    this.#attributes.set(name, String(value));
  }

  setAttributeNS(_space: string, name: string, value: unknown): void {
    this.setAttribute(name, value);
  }

  removeAttribute(name: string): void {
    this.#attributes.delete(name);
  }

  appendChild<Node extends DrawnNode>(node: Node): Node {
    return this.insertBefore(node, null);
  }

  insertBefore<Node extends DrawnNode>(node: Node, before: DrawnNode | null | undefined): Node {
    node.parentNode?.removeChild(node);
    const at = before == null ? this.childNodes.length : this.childNodes.indexOf(before);
    if (at < 0) throw new Error(`nothing of ${this.nodeName} is put before what is not in it`);
    this.childNodes.splice(at, 0, node);
    node.parentNode = this;
    return node;
  }

  removeChild(node: DrawnNode): void {
    const at = this.childNodes.indexOf(node);
    if (at < 0) throw new Error(`nothing is taken out of ${this.nodeName} that is not in it`);
    this.childNodes.splice(at, 1);
    node.parentNode = null;
  }

  get textContent(): string {
    return this.childNodes.map((node) => (node.nodeType === 3 ? node.nodeValue : node.textContent)).join('');
  }

  set textContent(text: unknown) {
    for (const node of this.childNodes.splice(0)) node.parentNode = null;
    const written = text == null ? '' : String(text);
    if (written !== '') this.appendChild(this.ownerDocument.createTextNode(written));
  }
}

const svgSpace = 'http://www.w3.org/2000/svg';

/** An empty document to draw in. */
export function drawnDocument(): DrawnDocument {
  const document: DrawnDocument = {
    get documentElement() {
      return root;
    },
    createElementNS: (space, name) => new DrawnElement(document, space, name),
    createTextNode: (text) => ({ nodeType: 3, nodeName: '#text', nodeValue: text, parentNode: null }),
  };
  const root = new DrawnElement(document, svgSpace, 'svg');
  return document;
}
