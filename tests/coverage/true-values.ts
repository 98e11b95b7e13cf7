import { calendarDay } from '../../datasets/quillwater/generate/calendar.js';
import { type CraftExpectation, expectedWalk } from '../../datasets/quillwater/generate/expectation.js';
import type { Inspection } from '../../datasets/quillwater/generate/inspection.js';
import { interceptionPerThousand, seasonRichness, waitSpread } from '../../datasets/quillwater/truth.js';
import { normalCumulative } from '../../src/statistic/distribution/normal.js';

/**
 * The true rate of interceptions of arriving craft: the mean, over the full inspections made, of the probability that the
 * generator gives one of its setting and month in its season. The traffic that came is taken as it is; what is left to
 * chance is which station-days are rich and which craft are intercepted.
 */
export function trueArrivingRate(arriving: readonly Inspection[]): number {
  const chances = arriving.map(({ station, started, season }) => {
    const { month } = calendarDay(Math.floor(started / 1440));
    return (interceptionPerThousand[station.setting][month - 3]! / 1000) * seasonRichness[season]!;
  });
  return chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
}

/** What the true parameters expect of craft that left the positive lake: sums over the craft that came, as they are. */
export interface LeavingExpectation {
  readonly fouled: number;
  readonly looked: ReadonlyMap<string, number>;
  readonly found: ReadonlyMap<string, number>;
}

/** The exact expectation of every walk, given each craft's build, the parts it carries, and whether it lay moored. */
export function leavingExpectation(leaving: readonly Inspection[]): LeavingExpectation {
  const known = new Map<string, CraftExpectation>();
  const looked = new Map<string, number>();
  const found = new Map<string, number>();
  let fouled = 0;
  for (const { craft, moored } of leaving) {
    const use = moored === true ? 'moored' : 'day';
    const key = `${craft.type} ${craft.drive} ${craft.carries.map(Number).join('')} ${use}`;
    const walk = known.get(key) ?? expectedWalk(craft, use);
    known.set(key, walk);
    fouled += walk.fouled;
    for (const part of walk.parts) {
      looked.set(part.part, (looked.get(part.part) ?? 0) + part.looked);
      found.set(part.part, (found.get(part.part) ?? 0) + part.found);
    }
  }
  return { fouled, looked, found };
}

/**
 * The true median wait in the whole minutes that are written down: the first minute by which half of a mixture has
 * begun, each wash waiting by the log-normal law of its station and written as the nearest minute. The washes ordered
 * are taken as they are; patience is drawn apart from waits, so that leaving hides no part of the law.
 */
export function trueMedianWait(washed: readonly Inspection[]): number {
  const begunBy = (minutes: number): number =>
    washed.reduce(
      (sum, { station }) => sum + normalCumulative(Math.log((minutes + 0.5) / station.wait) / waitSpread),
      0,
    );
  let minutes = 0;
  while (begunBy(minutes) < washed.length / 2) minutes++;
  return minutes;
}
