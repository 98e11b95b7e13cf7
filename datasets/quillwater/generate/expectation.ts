import { looking, settled, sideShare } from '../truth.js';
import type { Craft } from './craft.js';
import { foulingProbability, type Load } from './looks.js';
import { carryProbability, type Part, parts } from './parts.js';

/** What is expected of one part on one craft leaving the positive lake: shares of craft. */
export interface PartExpectation {
  readonly part: string;
  readonly carrying: number;
  readonly looked: number;
  readonly found: number;
}

/** What is expected of one craft leaving the positive lake. */
export interface CraftExpectation {
  /** The probability that mussels are found on it. */
  readonly fouled: number;
  readonly parts: readonly PartExpectation[];
}

/** A craft's build, and the parts that it carries where those are known. */
export type Build = Pick<Craft, 'type' | 'propulsion' | 'drive'> & Partial<Pick<Craft, 'carries'>>;

/** The probability that a fouled part which is looked at is found, whichever of its sides carries settlement. */
export function findProbability(part: Part): number {
  const find = looking.find[part.hidden ? 'hidden' : 'plain'];
  if (!part.sided) return find;
  const one = sideShare.port + sideShare.starboard;
  const bothLooked = sideShare.both * (1 - (1 - find) * (1 - find)) + one * find;
  const oneLooked = sideShare.both * find + one * find * 0.5;
  return (1 - looking.oneSideOnly) * bothLooked + looking.oneSideOnly * oneLooked;
}

/**
 * The exact expectation of a walk around a craft of that build: along the list only one thing matters for what comes
 * next, whether anything was found before. Skipping after a find is why looks at later parts are the cleaner craft's.
 */
export function expectedWalk(craft: Build, use: keyof typeof settled): CraftExpectation {
  const { share, heavy } = settled[use];
  const infested = (['light', 'heavy'] as const).map((load) => ({
    weight: share * (load === 'heavy' ? heavy : 1 - heavy),
    walk: loadedWalk(craft, load),
  }));
  const branches = [{ weight: 1 - share, walk: loadedWalk(craft, null) }, ...infested];
  const mixed = (of: (walk: CraftExpectation) => number): number =>
    branches.reduce((sum, { weight, walk }) => sum + weight * of(walk), 0);
  return {
    fouled: mixed((walk) => walk.fouled),
    parts: parts.map(({ part }, index) => ({
      part,
      carrying: mixed((walk) => walk.parts[index]!.carrying),
      looked: mixed((walk) => walk.parts[index]!.looked),
      found: mixed((walk) => walk.parts[index]!.found),
    })),
  };
}

function loadedWalk(craft: Build, load: Load | null): CraftExpectation {
  let foundBefore = 0;
  const walked = parts.map((part, index): PartExpectation => {
    const carrying = craft.carries === undefined ? carryProbability(part, craft) : Number(craft.carries[index]);
    const depth = part.hidden ? 'hidden' : 'plain';
    const lookedFresh = carrying * (1 - looking.skip[depth]);
    const lookedAfter = carrying * (1 - looking.skipAfterFind[depth]);
    const finds = load === null ? 0 : foulingProbability(part, craft.type, load) * findProbability(part);
    const looked = (1 - foundBefore) * lookedFresh + foundBefore * lookedAfter;
    foundBefore += (1 - foundBefore) * lookedFresh * finds;
    return { part: part.part, carrying, looked, found: looked * finds };
  });
  return { fouled: foundBefore, parts: walked };
}
