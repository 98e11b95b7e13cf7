/** No page carries the library of heat maps: they show what the page was made with, and nobody asks for them here. */
export function vegaDrawing(): never {
  throw new Error('a heat map is not drawn in a page');
}
