import type { Result } from '../formula/result.js';
import { saysLeftOpen } from '../formula/value/left-open.js';
import { showFraction, showInterval, showNumber, showResult } from '../notebook/shown.js';
import type { Entry } from './definition-list.js';
import { problemBox } from './problem-box.js';
import { words } from './words.js';

/** What an account says of a value: the value itself, unit, numerator, denominator, interval with its method, and cautions. */
export function resultEntries(result: Result, shownAs: string): Entry[] {
  if (result.kind === 'problem') return [[words.value, problemBox(result.problems)]];
  const entries: Entry[] = [[words.value, showResult(result, shownAs)]];
  if (result.kind === 'missing') entries.push([words.whyNot, result.why]);
  if (result.kind !== 'number') return entries;
  if (result.unit !== '') entries.push([words.unit, result.unit]);
  if (result.numerator !== null) entries.push([words.numerator, showNumber(result.numerator, 'whole', '')]);
  if (result.denominator !== null) entries.push([words.denominator, showNumber(result.denominator, 'whole', '')]);
  if (
    showFraction(result) === '' &&
    result.interval === null &&
    result.why === null &&
    !result.cautions.some(saysLeftOpen)
  ) {
    entries.push([words.interval, result.given === true ? words.given : words.census]);
  }
  if (result.interval !== null) {
    entries.push([words.interval, showInterval(result, shownAs)], [words.method, result.interval.method]);
  }
  if (result.why !== null) entries.push([words.whyNot, result.why]);
  for (const caution of result.cautions) entries.push([words.caution, caution]);
  return entries;
}
