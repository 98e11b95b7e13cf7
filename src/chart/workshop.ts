import { drawnDocument } from './drawn-node.js';

/** The document in which drawings are made; nothing in it is shown or run. In a page it is the page's own. */
export function workshop(): Document {
  // The parts of a document that the library draws with; whatever else it asked for would throw.
  return drawnDocument() as unknown as Document;
}
