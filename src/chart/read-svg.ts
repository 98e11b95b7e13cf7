import { SaxesParser } from 'saxes';
import { type DrawnElement, drawnDocument } from './drawn-node.js';

/** The element that a library's SVG text writes; throws where it is not well-formed. */
export function readSvg(text: string): DrawnElement {
  const document = drawnDocument();
  const open: DrawnElement[] = [];
  let whole: DrawnElement | null = null;
  const parser = new SaxesParser();
  parser.on('error', (mistake) => {
    throw mistake;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element = document.createElementNS('', name);
    for (const [attribute, value] of Object.entries(attributes)) element.setAttribute(attribute, value);
    open.at(-1)?.appendChild(element);
    whole ??= element;
    open.push(element);
  });
  parser.on('closetag', () => void open.pop());
  parser.on('text', (written) => void open.at(-1)?.appendChild(document.createTextNode(written)));
  parser.write(text).close();
  if (whole === null) throw new Error('a drawing without an element');
  return whole;
}
