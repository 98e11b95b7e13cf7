import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../formula/result.js';
import { showFraction, showInterval, showNumber, showResult } from '../notebook/shown.js';
import { problemBox } from './problem-box.js';
import type { TableCell } from './table.js';
import { words } from './words.js';

/** The cell of a value: its number under a head that names the unit; below it the interval and what it was counted from. */
export function resultCell(result: Result, shownAs: string): TableCell {
  switch (result.kind) {
    case 'number': {
      if (result.value === null) return { ...absent(result.why ?? words.noValue), number: true };
      const small = [intervalAlone(result, shownAs), showFraction(result)].filter((text) => text !== '');
      const shown = showNumber(result.value, shownAs, result.unit);
      return {
        content: small.length === 0 ? shown : [{ type: 'text', value: shown }, smallLine(small)],
        number: true,
        order: result.value,
      };
    }
    case 'date':
      return { content: showResult(result, shownAs), order: result.day };
    case 'missing':
      return result.withheld === true ? withheldCell(result.why) : absent(result.why);
    case 'problem':
      return { content: [problemBox(result.problems)] };
    default:
      return { content: showResult(result, shownAs) };
  }
}

/** The cell of a group's name; a missing one is named as such. */
export function keyCell(result: Result, shownAs: string): TableCell {
  if (result.kind === 'missing')
    return result.withheld === true ? withheldCell(result.why) : { content: [h('em', [result.why])] };
  if (result.kind === 'number' && result.value !== null) {
    const whole = Number.isInteger(result.value);
    return {
      content: whole && shownAs === '' ? String(result.value) : showNumber(result.value, shownAs, result.unit),
      order: result.value,
    };
  }
  return resultCell(result, shownAs);
}

/** The limits without their confidence where that is 95 %, which the head above them says; else as they are. */
function intervalAlone(result: Result, shownAs: string): string {
  return showInterval(result, shownAs).replace(/^95 % interval /, '');
}

/** Short pieces on a line below the value; the line may break between them only. */
function smallLine(pieces: readonly string[]): ElementContent {
  const spans = pieces.map((piece, at) => h('span', [at < pieces.length - 1 ? `${piece};` : piece]));
  return h(
    'span',
    { className: ['small'] },
    spans.flatMap((span, at) => (at === 0 ? [span] : [' ', span])),
  );
}

function withheldCell(why: string): TableCell {
  return { content: [h('abbr', { className: ['withheld'], title: why }, [words.withheld])], order: null };
}

function absent(why: string): TableCell {
  return { content: [h('em', [words.noValue]), h('span', { className: ['small', 'why'] }, [why])], order: null };
}
