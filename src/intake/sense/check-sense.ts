import type { Crosswalk } from '../crosswalk.js';
import type { FileReading } from '../read-file.js';
import { checkClocks } from './check-clocks.js';
import { checkDays } from './check-days.js';
import { checkOutcomes } from './check-outcomes.js';
import { checkShares } from './check-shares.js';
import { checkSides } from './check-sides.js';
import { checkWashes } from './check-washes.js';
import { followParents } from './follow-parents.js';
import { LocalDays } from './local-days.js';

/**
 * Holds the kept rows of all files against each other once keys and links are sound: what cannot be true together is
 * remarked as the crosswalk of its file sets the rule. `inspections` is how many keys of inspections were met.
 */
export function checkSense(all: readonly FileReading[], inspections: number, crosswalks: readonly Crosswalk[]): void {
  const before = new Map(all.map((reading) => [reading, reading.remarks.size]));
  const days = new LocalDays(all);
  checkOutcomes(all, inspections);
  checkSides(all, inspections);
  checkWashes(all, inspections);
  checkDays(all, days);
  followParents(all, before);
  checkClocks(all);
  checkShares(all, crosswalks, days);
}
