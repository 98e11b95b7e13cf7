import { heavyPower, looking, sideShare, typeFouling } from '../truth.js';
import type { Craft } from './craft.js';
import { type Part, parts } from './parts.js';
import type { Random } from './random.js';

export type Side = 'port' | 'starboard' | 'none';
export type Load = 'light' | 'heavy';

/** What was found on a fouled part. */
export interface Found {
  readonly finding: string;
  readonly stage: string | null;
  readonly abundance: string | null;
  readonly viability: string | null;
  readonly by: string;
}

/** One look at one side of one part. */
export interface Look {
  readonly part: number;
  readonly side: Side;
  readonly state: 'absent' | 'not checked' | 'clean' | 'fouled';
  readonly found: Found | null;
}

/** The settled sites of a craft: for each part, which sides; null for a part without settlement. */
export type Sites = readonly (readonly Side[] | null)[];

const plainLooks = new Map<string, Look>();

/** A look that found nothing; looks alike are one object, since there are hundreds of thousands of them. */
function plainLook(part: number, side: Side, state: 'absent' | 'not checked' | 'clean'): Look {
  const name = `${part} ${side} ${state}`;
  let look = plainLooks.get(name);
  if (look === undefined) {
    look = { part, side, state, found: null };
    plainLooks.set(name, look);
  }
  return look;
}

/** The probability that a part which a craft carries is settled under a load. */
export function foulingProbability(part: Part, type: string, load: Load): number {
  const light = Math.min(0.95, part.fouling * (typeFouling[type] ?? 1));
  return load === 'light' ? light : 1 - Math.exp(heavyPower * Math.log(1 - light));
}

/** Where a load sits on a craft. */
export function settle(random: Random, craft: Craft, load: Load): Sites {
  return parts.map((part, index) => {
    if (!craft.carries[index] || !random.chance(foulingProbability(part, craft.type, load))) return null;
    if (!part.sided) return ['none'];
    const sides = random.weighted([sideShare.both, sideShare.port, sideShare.starboard]);
    return sides === 0 ? ['port', 'starboard'] : [sides === 1 ? 'port' : 'starboard'];
  });
}

function mussels(random: Random, hidden: boolean, load: Load): Found {
  const settler = random.chance(0.15);
  const abundance = random.weighted(load === 'heavy' ? [0.15, 0.35, 0.35, 0.15] : [0.55, 0.32, 0.12, 0.01]);
  const means = hidden
    ? ['mirror', 'light', 'feel', 'camera', 'sight']
    : ['sight', 'feel', 'light', 'magnifier', 'mirror'];
  return {
    finding: 'mussels',
    stage: settler ? 'settler' : 'attached',
    abundance: ['trace', 'some', 'many', 'encrusted'][abundance]!,
    viability: random.pick(['undetermined', 'undetermined', 'undetermined', 'dead', 'alive']),
    by: settler ? 'feel' : means[random.weighted([0.5, 0.25, 0.15, 0.04, 0.06])]!,
  };
}

/**
 * One walk around a craft: every part of the list in order, skipped or looked at side by side; after the first find
 * parts are skipped more.
 */
export function walk(random: Random, craft: Craft, sites: Sites | null, load: Load, longList: boolean): Look[] {
  const looks: Look[] = [];
  let anyFind = false;
  parts.forEach((part, index) => {
    if (!longList && !part.standard) return;
    const sides: readonly Side[] = part.sided ? ['port', 'starboard'] : ['none'];
    if (!craft.carries[index]) {
      if (longList || carriedByAny(part, craft)) for (const side of sides) looks.push(plainLook(index, side, 'absent'));
      return;
    }
    const depth = part.hidden ? 'hidden' : 'plain';
    const skipped = random.chance((anyFind ? looking.skipAfterFind : looking.skip)[depth]);
    const leftOut = !skipped && part.sided && random.chance(looking.oneSideOnly) ? random.pick(sides) : null;
    let found = false;
    for (const side of sides) {
      if (skipped || side === leftOut) looks.push(plainLook(index, side, 'not checked'));
      else if (sites?.[index]?.includes(side) && random.chance(looking.find[depth])) {
        looks.push({ part: index, side, state: 'fouled', found: mussels(random, part.hidden, load) });
        found = true;
      } else looks.push(plainLook(index, side, 'clean'));
    }
    anyFind ||= found;
  });
  return looks;
}

/** The short list shows only the parts that craft of the type may carry. */
function carriedByAny(part: Part, craft: Craft): boolean {
  if (part.carriedBy[craft.type] === undefined) return false;
  return part.drives === null || (craft.drive !== null && part.drives.includes(craft.drive));
}

/** Whether a look found mussels. */
export const foundMussels = (look: Look): boolean => look.found?.finding === 'mussels';

/** The looks with one clean look among the named parts turned into a find of that kind, if there is one. */
export function withOtherFind(looks: Look[], names: readonly string[], finding: string): Look[] {
  const at = looks.findIndex((look) => look.state === 'clean' && names.includes(parts[look.part]!.part));
  if (at < 0) return looks;
  const found: Found = { finding, stage: null, abundance: null, viability: null, by: 'sight' };
  return looks.with(at, { ...looks[at]!, state: 'fouled', found });
}
