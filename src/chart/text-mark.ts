/** A short mark that tells a text from others: FNV-1a, 32 bits, over its UTF-16 units, in hexadecimal; the same in a page. */
export function textMark(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
