import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../formula/result.js';
import { saysTakenAsKnown } from '../formula/value/taken-as-known.js';
import type { EvaluatedFigure } from '../notebook/evaluated.js';
import { showFraction, showInterval, showResult } from '../notebook/shown.js';
import type { Trace } from '../notebook/trace.js';
import { anchor, inWords } from './anchor.js';
import { type Methods, methodMark } from './methods.js';
import { problemBox } from './problem-box.js';
import { type TableCell, tableElement } from './table.js';
import { words } from './words.js';

/**
 * The figures of one table of the notebook: value, interval or why there is none, what was counted, and the method. Where far more
 * records are left open than a figure counts, since what its conditions ask for is missing, that stands beside it.
 */
export function figureTable(
  figures: readonly EvaluatedFigure[],
  methods: Methods,
  traces: ReadonlyMap<string, Trace>,
): Element {
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
        { content: intervalContent(result, shownAs, methods, leftOpen(traces.get(name))) },
        ...(hasFractions ? [{ content: [h('span', { className: ['whole'] }, [fractions[at]!])] }] : []),
      ];
    }),
  });
}

/** A number that what is unknown could make many times larger is none to lean on, and a 0 beside it is no zero. */
function leftOpen(trace: Trace | undefined): readonly ElementContent[] {
  const count = trace?.counts[0];
  if (count === undefined || count.leftOut.unknown <= count.counted * farMore) return [];
  return [h('span', { className: ['small', 'why'] }, [words.leftOpen(count.leftOut.unknown)])];
}

const farMore = 10;

function intervalContent(
  result: Result,
  shownAs: string,
  methods: Methods,
  open: readonly ElementContent[],
): readonly ElementContent[] {
  if (result.kind === 'missing') return [{ type: 'text', value: words.because(result.why) }];
  if (result.kind !== 'number') return [];
  const mark = methodMark(result, methods);
  const known = result.cautions.filter(saysTakenAsKnown);
  const caution = known.map((said) => h('span', { className: ['small', 'why'] }, [`${words.caution}: ${said}`]));
  const notes = [...caution, ...open];
  if (mark !== null) return [{ type: 'text', value: `${showInterval(result, shownAs)} ` }, mark, ...notes];
  // What is largely unknown was not counted in full.
  if (result.why === null && open.length > 0) return notes;
  const why =
    result.why === null
      ? result.given === true
        ? words.given
        : words.census
      : result.value === null
        ? words.because(result.why)
        : words.noInterval(result.why);
  return [{ type: 'text', value: why }, ...notes];
}
