import type { ElementContent } from 'hast';

/** The elements of a part of a page that can count again, each carrying the part's key, by which the script finds them. */
export function markedPart(key: string, elements: readonly ElementContent[]): ElementContent[] {
  return elements.map((element) =>
    element.type === 'element' ? { ...element, properties: { ...element.properties, dataPart: key } } : element,
  );
}
