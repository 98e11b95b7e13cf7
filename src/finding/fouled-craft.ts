import { type CraftParts, part } from './craft-parts.js';

/** The craft of gathered looks on which mussels were found. */
export interface FouledCraft {
  /** Their numbers, ascending. */
  readonly craft: Uint32Array;
  /** How many parts of each craft had mussels, of those without any too. */
  readonly partsOf: Uint8Array;
}

/** Craft found before: several findings of a page ask for those of the same looks. */
const found = new WeakMap<CraftParts, FouledCraft>();

/** The craft with mussels on any part; nobody changes what is given back. */
export function fouledCraft(parts: CraftParts): FouledCraft {
  const known = found.get(parts) ?? findFouled(parts);
  found.set(parts, known);
  return known;
}

function findFouled({ components, craftCount, marks }: CraftParts): FouledCraft {
  const partsOf = new Uint8Array(craftCount);
  const craft: number[] = [];
  for (let one = 0; one < craftCount; one++) {
    const from = one * components.length;
    for (let at = from; at < from + components.length; at++) if ((marks[at]! & part.mussels) !== 0) partsOf[one]!++;
    if (partsOf[one]! > 0) craft.push(one);
  }
  return { craft: Uint32Array.from(craft), partsOf };
}
