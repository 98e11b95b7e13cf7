/** A month by one of its names: as it is written, and in the bytes of UTF-8 with the bit of small letters set. */
export interface MonthName {
  readonly month: number;
  readonly text: string;
  readonly bytes: Uint8Array;
}

const english = 'january february march april may june july august september october november december'.split(' ');
const french = 'janvier février mars avril mai juin juillet août septembre octobre novembre décembre'.split(' ');
const frenchShort = 'janv févr mars avr mai juin juil août sept oct nov déc'.split(' ');
/** July is cut short so in Canada. */
const canadian = frenchShort.map((name) => (name === 'juil' ? 'juill' : name));

/** The bit by which capitals of ASCII differ from small letters, and the second byte of É from that of é. */
const small = 32;

/** Names without their accents too, as many type them; the longest first, since mars begins as mar does. */
function named(...lists: readonly (readonly string[])[]): readonly MonthName[] {
  const all = new Map<string, number>();
  for (const list of lists) {
    for (const [index, name] of list.entries()) {
      all.set(name, index + 1);
      all.set(name.normalize('NFD').replace(/\p{M}/gu, ''), index + 1);
    }
  }
  const longest = [...all].sort(([a], [b]) => b.length - a.length || (a < b ? -1 : 1));
  return longest.map(([name, month]) => ({
    month,
    text: name,
    bytes: new TextEncoder().encode(name).map((byte) => byte | small),
  }));
}

/** The full names of months in English and French; no name stands for two months. CLDR, months wide. */
export const longNames = named(english, french);

/** Their names cut short, the French ones with or without their point. CLDR, months abbreviated; Sept is common practice. */
export const shortNames = named(
  english.map((name) => name.slice(0, 3)),
  english.map((name) => (name === 'september' ? 'sept' : name.slice(0, 3))),
  ...[frenchShort, canadian].flatMap((names) => [
    names,
    names.map((name) => (french.includes(name) ? name : `${name}.`)),
  ]),
);

/** The name that stands there; null for none. */
export function nameThere(names: readonly MonthName[], bytes: Uint8Array, at: number, end: number): MonthName | null {
  return names.find((name) => isThere(name.bytes, bytes, at, end)) ?? null;
}

function isThere(name: Uint8Array, bytes: Uint8Array, at: number, end: number): boolean {
  if (at + name.length > end) return false;
  for (let letter = 0; letter < name.length; letter++) if ((bytes[at + letter]! | small) !== name[letter]) return false;
  return true;
}
