import { type Craft, makeCraft } from './craft.js';
import { type Random, randomStream } from './random.js';
import type { Station } from './stations.js';
import { positiveLake } from './waters.js';

/** The craft that a station sees: its regulars, those moored on its lake, and visitors, some of whom come again. */
export interface CraftPool {
  readonly local: (random: Random) => Craft;
  readonly moored: (random: Random) => Craft;
  /** A visitor; one seen before with that probability. */
  readonly visitor: (random: Random, again: number) => Craft;
}

/** Serial numbers for craft, never given twice in one run. */
export interface Serials {
  next: number;
}

/** The pool of a station. Visitors are shared: whoever passes the border may turn up at a ramp. */
export function craftPool(
  seed: number,
  scale: number,
  station: Station,
  serials: Serials,
  visitors: Craft[],
): CraftPool {
  const random = randomStream(seed, `craft ${station.station}`);
  const fleet = (share: number, use: 'day' | 'moored'): Craft[] =>
    Array.from({ length: Math.max(5, Math.round(station.arriving * scale * share)) }, () =>
      makeCraft(random, serials.next++, use, random.chance(0.85)),
    );
  const locals = fleet(0.45, 'day');
  const mooredHere = station.water === positiveLake ? fleet(0.25, 'moored') : [];
  return {
    local: (draw) => draw.pick(locals),
    moored: (draw) => draw.pick(mooredHere),
    visitor: (draw, again) => {
      if (visitors.length > 0 && draw.chance(again)) return draw.pick(visitors);
      const craft = makeCraft(draw, serials.next++, 'day', draw.chance(0.1));
      visitors.push(craft);
      return craft;
    },
  };
}
