import { nearestName } from '../../problem/nearest.js';
import type { Alias } from './alias.js';

/** What a name stands for: a water, none, or more than one. */
export type WaterMatch =
  | { readonly kind: 'water'; readonly waterbody: string }
  | { readonly kind: 'unmatched'; readonly why: string }
  | { readonly kind: 'ambiguous'; readonly why: string };

interface Known {
  readonly name: string;
  readonly region: string;
  readonly waterbodies: Set<string>;
}

/** A name without regard to case, accents, spaces and punctuation: `Héron  Pt.` is `heron pt`. */
function plain(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** The names of waters by region. A name means a water only in its own region: never in another by guess. */
export class WaterNames {
  readonly #byName = new Map<string, Map<string, Known>>();
  readonly #keys: ReadonlySet<string>;

  /** @param keys the keys of the waters themselves, which mean themselves in any region */
  constructor(aliases: Iterable<Alias>, keys: ReadonlySet<string>) {
    this.#keys = keys;
    for (const { name, region, waterbody } of aliases) {
      const regions = this.#byName.get(plain(name)) ?? new Map<string, Known>();
      this.#byName.set(plain(name), regions);
      const known = regions.get(plain(region)) ?? { name, region, waterbodies: new Set<string>() };
      known.waterbodies.add(waterbody);
      regions.set(plain(region), known);
    }
  }

  /** The water that a name means in a region; an empty region is one that the cell does not tell. */
  match(name: string, region: string): WaterMatch {
    if (this.#keys.has(name)) return { kind: 'water', waterbody: name };
    const regions = this.#byName.get(plain(name));
    if (regions === undefined) return { kind: 'unmatched', why: 'no water of that name is known' };
    const known = regions.get(plain(region));
    const elsewhere = [...regions.values()].map((other) => other.region || 'no region').sort();
    if (known === undefined && region === '') {
      return { kind: 'ambiguous', why: `known in ${elsewhere.join(', ')}, and the cell tells no region` };
    }
    if (known === undefined) {
      return { kind: 'unmatched', why: `known in ${elsewhere.join(', ')}, and not in ${region}` };
    }
    const [waterbody, ...others] = known.waterbodies;
    if (others.length === 0) return { kind: 'water', waterbody: waterbody! };
    return { kind: 'ambiguous', why: `stands for ${[...known.waterbodies].sort().join(' and ')}` };
  }

  /** The known name of a region that is nearest to a misspelt one; empty for none. */
  nearest(name: string, region: string): string {
    const names = new Map<string, string>();
    for (const [key, regions] of this.#byName) {
      const known = regions.get(plain(region));
      if (known !== undefined) names.set(key, known.name);
    }
    const near = nearestName(plain(name), names.keys());
    return near === null ? '' : names.get(near)!;
  }
}
