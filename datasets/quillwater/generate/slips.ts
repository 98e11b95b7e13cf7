import type { Inspection } from './inspection.js';
import { foundMussels } from './looks.js';
import { parts } from './parts.js';
import type { Random } from './random.js';

const plain = (inspection: Inspection): boolean =>
  !inspection.protected &&
  inspection.wash === null &&
  inspection.recheck === null &&
  !inspection.looks.some(foundMussels);

/** How many slips of a kind a season has: a share of its forms, but at least one. */
const slipCount = (inspections: readonly Inspection[], share: number): number =>
  Math.max(1, Math.round(inspections.length * share));

function choose(random: Random, from: readonly Inspection[], count: number): Inspection[] {
  const left = [...from];
  const chosen: Inspection[] = [];
  while (chosen.length < count && left.length > 0) chosen.push(...left.splice(random.below(left.length), 1));
  for (const inspection of chosen) inspection.protected = true;
  return chosen;
}

/**
 * The slips of people in one season of one format, made before its forms are numbered: outcomes that contradict the
 * parts, parts recorded on one side only, craft entered twice. Gives the inspections with the second entries among them.
 */
export function withSlips(random: Random, inspections: readonly Inspection[], sidesMayBeLost: boolean): Inspection[] {
  const full = inspections.filter(({ extent }) => extent === 'full');
  // Among leaving craft these few are lost in the many; among arriving ones they would pass for true interceptions.
  const outcomeOnly = full.filter(
    (inspection) => plain(inspection) && inspection.direction === 'leaving' && inspection.outcome === 'cleared',
  );
  for (const inspection of choose(random, outcomeOnly, slipCount(full, 0.0001))) inspection.outcome = 'intercepted';

  const found = full.filter((inspection) => inspection.direction === 'leaving' && inspection.looks.some(foundMussels));
  if (found.length > 20) {
    for (const inspection of choose(random, found, 2)) inspection.outcome = 'cleaned on site';
  }
  if (sidesMayBeLost) {
    for (const inspection of choose(random, full.filter(plain), slipCount(full, 0.001))) {
      const lost = inspection.looks.findIndex(({ side, state }) => side === 'starboard' && state === 'clean');
      if (lost >= 0 && parts[inspection.looks[lost]!.part]!.sided)
        inspection.looks = inspection.looks.toSpliced(lost, 1);
    }
  }
  const twice = full.filter((inspection) => plain(inspection) && inspection.craftKnown);
  const originals = new Set(choose(random, twice, slipCount(full, 0.0006)));
  const entered: Inspection[] = [];
  const waiting: { readonly copy: Inspection; readonly at: number }[] = [];
  inspections.forEach((inspection, index) => {
    entered.push(inspection);
    if (originals.has(inspection)) {
      const copy = { ...inspection, repeats: inspection, kept: false };
      waiting.push({ copy, at: index + 1 + random.below(15) });
    }
    while (waiting.length > 0 && waiting[0]!.at <= index) entered.push(waiting.shift()!.copy);
  });
  entered.push(...waiting.map(({ copy }) => copy));
  return entered;
}

/**
 * Forms whose number was already given to an earlier form: paper checks, which have no children that could go astray.
 * Gives the earlier form for each.
 */
export function repeatedNumbers(random: Random, inspections: readonly Inspection[]): Map<Inspection, Inspection> {
  const repeated = new Map<Inspection, Inspection>();
  const papers = inspections.filter((inspection) => inspection.extent === 'paper check' && !inspection.protected);
  const chosen = choose(random, papers, slipCount(inspections, 0.0002));
  for (const later of chosen) {
    const earlier = inspections[inspections.indexOf(later) - 1 - random.below(40)];
    if (earlier === undefined || earlier.repeats !== null || chosen.includes(earlier)) continue;
    earlier.protected = true;
    later.number = earlier.number;
    later.kept = false;
    repeated.set(later, earlier);
  }
  return repeated;
}
