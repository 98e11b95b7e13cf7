import { parseHTML } from 'linkedom';

let document: Document | null = null;

/** The document in which drawings are made; nothing in it is shown or run. In a page it is the page's own. */
export function workshop(): Document {
  document ??= parseHTML('<!doctype html><html><body></body></html>').document;
  return document;
}
