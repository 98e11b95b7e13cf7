import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../../formula/result.js';
import { saysTakenAsKnown } from '../../formula/value/taken-as-known.js';
import { showFraction, showInterval, showNumber, showResult } from '../../notebook/shown.js';
import { words } from '../words.js';

/** A figure's value with its interval and what it was counted from, or why there is none. */
export function worthElement(result: Result | null, shownAs: string): Element {
  return h('span', { className: ['worth'] }, result === null ? [] : worth(result, shownAs));
}

function worth(result: Result, shownAs: string): ElementContent[] {
  if (result.kind === 'problem') return [h('em', [words.noValue])];
  const main = h('span', { className: ['shown'] }, [showResult(result, shownAs)]);
  const beside = besideOf(result, shownAs);
  return beside.length === 0
    ? [main]
    : [main, { type: 'text', value: ' ' }, h('span', { className: ['small'] }, [beside.join('; ')])];
}

function besideOf(result: Result, shownAs: string): readonly string[] {
  if (result.kind === 'missing') return [result.why];
  if (result.kind !== 'number') return [];
  const why = result.why === null ? '' : result.value === null ? result.why : words.noInterval(result.why);
  const known = result.cautions.filter(saysTakenAsKnown).map((said) => `${words.caution}: ${said}`);
  return [showInterval(result, shownAs), showFraction(result), why, ...known].filter((text) => text !== '');
}

/** What stands in a cell of a sheet. */
export function cellWorth(result: Result, shownAs: string, isKey: boolean): ElementContent[] {
  if (result.kind === 'missing') return [h('em', [isKey ? words.notRecorded : words.noValue])];
  if (result.kind === 'problem') return [h('em', [words.noValue])];
  if (result.kind !== 'number' || result.value === null) return [{ type: 'text', value: showResult(result, shownAs) }];
  if (isKey)
    return [
      {
        type: 'text',
        value:
          Number.isInteger(result.value) && shownAs === ''
            ? String(result.value)
            : showNumber(result.value, shownAs, result.unit),
      },
    ];
  const shown = showNumber(result.value, shownAs, result.unit);
  const interval = showInterval(result, shownAs).replace(/^95 % interval /, '');
  return interval === ''
    ? [{ type: 'text', value: shown }]
    : [{ type: 'text', value: shown }, h('span', { className: ['small'] }, [interval])];
}
