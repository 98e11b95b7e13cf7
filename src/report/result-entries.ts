import type { NumberResult, Result } from '../formula/result.js';
import { saysLeftOpen } from '../formula/value/left-open.js';
import { showAmount, showFraction, showInterval, showResult } from '../notebook/shown.js';
import type { Entry } from './definition-list.js';
import { problemBox } from './problem-box.js';
import { words } from './words.js';

/**
 * Why a number that needs no interval has none: it is counted in full, or made of inputs alone. Null where so much is unknown
 * beside what was counted that it was not counted in full.
 */
export function notEstimated({ cautions, given }: NumberResult): string | null {
  if (cautions.some(saysLeftOpen)) return null;
  return given === true ? words.given : words.census;
}

/** What an account says of a value: the value itself, unit, numerator, denominator, interval with its method, and cautions. */
export function resultEntries(result: Result, shownAs: string): Entry[] {
  if (result.kind === 'problem') return [[words.value, problemBox(result.problems)]];
  const entries: Entry[] = [[words.value, showResult(result, shownAs)]];
  if (result.kind === 'missing') entries.push([words.whyNot, result.why]);
  if (result.kind !== 'number') return entries;
  if (result.unit !== '') entries.push([words.unit, result.unit]);
  if (result.numerator !== null) entries.push([words.numerator, showAmount(result.numerator)]);
  if (result.denominator !== null) entries.push([words.denominator, showAmount(result.denominator)]);
  const counted = showFraction(result) === '' && result.interval === null && result.why === null;
  const whole = counted ? notEstimated(result) : null;
  if (whole !== null) entries.push([words.interval, whole]);
  if (result.interval !== null) {
    entries.push([words.interval, showInterval(result, shownAs)], [words.method, result.interval.method]);
  }
  if (result.why !== null) entries.push([words.whyNot, result.why]);
  for (const caution of result.cautions) entries.push([words.caution, caution]);
  return entries;
}
