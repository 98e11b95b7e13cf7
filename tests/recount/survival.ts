import { z95 } from './textbook.js';

/** One time of a Kaplan-Meier curve, as the recount's SQL gives it. */
export interface CurveTime {
  readonly minutes: number;
  readonly done: number;
  readonly at_risk: number;
  /** The share not through by then. */
  readonly survival: number;
  /** Σ done ÷ (at risk × (at risk − done)), which Greenwood's variance stands on. */
  readonly greenwood: number;
  /** The share through by then, and the share that left, each with the other as a competing end. */
  readonly through: number;
  readonly gone: number;
}

/** Shares this near are the same: sums of products differ in their last digits. */
const same = 1e-9;

/** S raised to exp(± z √greenwood ÷ log S): limits on log(−log S), −1 the lower one. Kalbfleisch JD, Prentice RL (1980), section 1.3. */
function limitAt({ survival, greenwood }: CurveTime, side: 1 | -1): number {
  if (survival >= 1 - same) return 1;
  if (survival <= same) return Number.NaN;
  return survival ** Math.exp((side * z95 * Math.sqrt(greenwood)) / Math.log(survival));
}

/**
 * The first time at which a curve falls below a level; where it rests on the level exactly, the middle of the stretch on which it
 * does, as R's survival library has it; null where it does not get there.
 */
function reaching(curve: readonly CurveTime[], level: number, shareAt: (time: CurveTime) => number): number | null {
  const first = curve.find((time) => shareAt(time) <= level + same);
  if (first === undefined) return null;
  if (shareAt(first) < level - same) return first.minutes;
  const below = curve.find((time) => shareAt(time) < level - same) ?? curve.at(-1)!;
  return (first.minutes + below.minutes) / 2;
}

/** The minutes by which a share was through, with limits. Brookmeyer R, Crowley J (1982) Biometrics 38:29-41. */
export function minutesUntil(share: number, curve: readonly CurveTime[]): readonly (number | null)[] {
  const shares = [
    (time: CurveTime) => time.survival,
    ...([-1, 1] as const).map((side) => (time: CurveTime) => limitAt(time, side)),
  ];
  return shares.map((shareAt) => reaching(curve, 1 - share, shareAt));
}

/** The share through, or gone, by some minutes. */
export function shareBy(minutes: number, curve: readonly CurveTime[], end: 'through' | 'gone'): number {
  return curve.findLast((time) => time.minutes <= minutes)?.[end] ?? 0;
}

/**
 * The mean up to the last time followed: the area under the curve, with normal limits. Klein JP, Moeschberger ML (2003) Survival
 * Analysis, eq. 4.5.2.
 */
export function meanToHorizon(curve: readonly CurveTime[]): readonly [number, number, number] {
  const horizon = curve.at(-1)!.minutes;
  const areas = curve.map(({ survival, minutes }, at) => survival * ((curve[at + 1]?.minutes ?? horizon) - minutes));
  const beyond = (at: number) => areas.slice(at).reduce((sum, area) => sum + area, 0);
  const mean = curve[0]!.minutes + beyond(0);
  const spread = curve.reduce((sum, { done, at_risk }, at) => {
    return done === 0 || done === at_risk ? sum : sum + (beyond(at) ** 2 * done) / (at_risk * (at_risk - done));
  }, 0);
  const half = z95 * Math.sqrt(spread);
  return [mean, mean - half, mean + half];
}
