/** In a page drawings are made by the page's own document, and stand in it only once they are settled. */
export function workshop(): Document {
  return document;
}
