import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../formula/result.js';
import { saysLeftOpen } from '../formula/value/left-open.js';
import { saysTakenAsKnown } from '../formula/value/taken-as-known.js';
import type { EvaluatedFigure } from '../notebook/evaluated.js';
import { showFraction, showInterval, showResult } from '../notebook/shown.js';
import { anchor, inWords } from './anchor.js';
import { type Methods, methodMark } from './methods.js';
import { problemBox } from './problem-box.js';
import { notEstimated } from './result-entries.js';
import { type TableCell, tableElement } from './table.js';
import { words } from './words.js';

/**
 * The figures of one table of the notebook: value, interval or why there is none, what was counted, and the method. Where far more
 * records are left open than a figure counts, since what its conditions ask for is missing, that stands beside it.
 */
export function figureTable(figures: readonly EvaluatedFigure[], methods: Methods): Element {
  const fractions = figures.map(({ result }) => (result.kind === 'number' ? showFraction(result) : ''));
  const hasFractions = fractions.some((fraction) => fraction !== '');
  return tableElement({
    id: anchor('figures', figures[0]?.name ?? 'none'),
    caption: words.figures,
    heads: 1,
    head: [
      { content: words.figure },
      { content: words.value, number: true },
      { content: words.interval },
      ...(hasFractions ? [{ content: words.counted }] : []),
    ],
    rows: figures.map(({ name, shownAs, result }, at) => {
      const head: TableCell = { content: [h('a', { href: `#${anchor('account', name)}` }, [inWords(name)])] };
      if (result.kind === 'problem')
        return [head, { content: [problemBox(result.problems)], span: hasFractions ? 3 : 2 }];
      return [
        head,
        { content: showResult(result, shownAs), number: result.kind === 'number' },
        { content: intervalContent(result, shownAs, methods) },
        ...(hasFractions ? [{ content: [h('span', { className: ['whole'] }, [fractions[at]!])] }] : []),
      ];
    }),
  });
}

function intervalContent(result: Result, shownAs: string, methods: Methods): readonly ElementContent[] {
  if (result.kind === 'missing') return [{ type: 'text', value: words.because(result.why) }];
  if (result.kind !== 'number') return [];
  const mark = methodMark(result, methods);
  const told = result.cautions.filter((caution) => saysTakenAsKnown(caution) || saysLeftOpen(caution));
  const cautions = told.map((said) => h('span', { className: ['small', 'why'] }, [`${words.caution}: ${said}`]));
  if (mark !== null) return [{ type: 'text', value: `${showInterval(result, shownAs)} ` }, mark, ...cautions];
  const why =
    result.why === null
      ? notEstimated(result)
      : result.value === null
        ? words.because(result.why)
        : words.noInterval(result.why);
  return why === null ? cautions : [{ type: 'text', value: why }, ...cautions];
}
