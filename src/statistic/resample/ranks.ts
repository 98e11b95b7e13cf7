import type { Interval } from '../estimate.js';
import { tailBeyond } from '../interval.js';
import { quantile } from '../quantile.js';
import { randomFrom } from '../random.js';
import { checkSameLength } from '../same-length.js';

/** What one kind of unit adds to some of the items. */
export interface ItemCounts {
  readonly items: readonly number[];
  readonly counts: readonly number[];
}

/** Units to draw from, such as craft or station-days, by what they add: units alike in it are one pattern. */
export interface RankedUnits {
  /** The stratum that each unit is drawn within. */
  readonly stratumOf: ArrayLike<number>;
  /** The pattern of each unit. */
  readonly patternOf: ArrayLike<number>;
  readonly patterns: readonly ItemCounts[];
  /** How many items are ranked. */
  readonly items: number;
}

/** Where an item stands, 1 for the highest total, and how sure that is; equals share the mean of their places. */
export interface ResampledRank {
  readonly rank: number;
  readonly interval: Interval;
  /** The share of resamples in which it is among the first `top`; equals at the edge share the places left. */
  readonly inTop: number;
}

/** Mean ranks of totals, highest first, and how far each is inside the first `top`. */
function rank(totals: Float64Array, top: number, ranks: Float64Array, inside: Float64Array): void {
  for (let i = 0; i < totals.length; i += 1) {
    let above = 0;
    let alike = 0;
    for (let j = 0; j < totals.length; j += 1) {
      if (totals[j]! > totals[i]!) above += 1;
      else if (totals[j]! === totals[i]!) alike += 1;
    }
    ranks[i] = above + (alike + 1) / 2;
    inside[i] = Math.min(1, Math.max(0, top - above) / alike);
  }
}

/** The units of each stratum, one after another, as the patterns they add. */
function patternsByStratum({ stratumOf, patternOf }: RankedUnits): Uint32Array[] {
  const lists = new Map<number, number[]>();
  for (let unit = 0; unit < stratumOf.length; unit += 1) {
    const list = lists.get(stratumOf[unit]!);
    if (list === undefined) lists.set(stratumOf[unit]!, [patternOf[unit]!]);
    else list.push(patternOf[unit]!);
  }
  return [...lists.values()].map((list) => Uint32Array.from(list));
}

/**
 * Ranks of items by their totals over all units, with limits by drawing the units again within their strata. Patterns
 * are drawn and then added up once, so that many units alike cost no more than one. Goldstein H, Spiegelhalter DJ (1996)
 * JRSS A 159:385-443.
 */
export function resampledRanks(
  units: RankedUnits,
  top: number,
  resamples: number,
  seed: number,
  confidence = 0.95,
): readonly ResampledRank[] {
  const { patterns, items } = units;
  checkSameLength({ strata: units.stratumOf, patterns: units.patternOf });
  const random = randomFrom(seed);
  const strata = patternsByStratum(units);
  const drawn = new Uint32Array(patterns.length);
  const totals = new Float64Array(items);
  const ranks = new Float64Array(items);
  const inside = new Float64Array(items);
  const addUp = (): void => {
    totals.fill(0);
    patterns.forEach((pattern, at) => {
      const times = drawn[at]!;
      if (times === 0) return;
      for (let k = 0; k < pattern.items.length; k += 1) totals[pattern.items[k]!]! += times * pattern.counts[k]!;
    });
    rank(totals, top, ranks, inside);
  };
  for (const stratum of strata) for (const pattern of stratum) drawn[pattern]! += 1;
  addUp();
  const seen = Float64Array.from(ranks);
  const byItem = Array.from({ length: items }, () => new Float64Array(resamples));
  const inTop = new Float64Array(items);
  const chances = new Uint32Array(strata.reduce((most, { length }) => Math.max(most, length), 0));
  for (let resample = 0; resample < resamples; resample += 1) {
    drawn.fill(0);
    for (const stratum of strata) {
      const size = stratum.length;
      random.fill(chances.subarray(0, size));
      for (let draw = 0; draw < size; draw += 1) drawn[stratum[(chances[draw]! * (size / 4294967296)) | 0]!]! += 1;
    }
    addUp();
    for (let item = 0; item < items; item += 1) {
      byItem[item]![resample] = ranks[item]!;
      inTop[item]! += inside[item]!;
    }
  }
  const tail = tailBeyond(confidence);
  const method = 'resampled ranks, middle share';
  return byItem.map((own, item): ResampledRank => {
    const sorted = own.sort();
    const [low, high] = [quantile(sorted, tail, 1), quantile(sorted, 1 - tail, 1)];
    return {
      rank: seen[item]!,
      interval: { low, high, confidence, sides: 'two', method },
      inTop: resamples === 0 ? 0 : inTop[item]! / resamples,
    };
  });
}
