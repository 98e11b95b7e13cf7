import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../formula/result.js';
import type { EvaluatedFigure, EvaluatedSheet } from '../notebook/evaluated.js';
import { showFraction, showInterval, showNumber, showResult } from '../notebook/shown.js';
import { anchor, inWords } from './anchor.js';
import { problemBox } from './problem-box.js';
import { words } from './words.js';

type Entry = readonly [term: string, said: string | Element];

/**
 * How a figure was made. The address stands on what is inside, so that a browser that follows it opens the account
 * without a script.
 */
export function figureAccount(figure: EvaluatedFigure): Element {
  const entries: Entry[] = [
    [words.formula, h('code', [figure.formula])],
    ...resultEntries(figure.result, figure.shownAs),
  ];
  return h('details', { className: ['account'] }, [
    h('summary', [words.accountOf(inWords(figure.name))]),
    h('div', { id: anchor('account', figure.name) }, [definitionList(entries)]),
  ]);
}

function resultEntries(result: Result, shownAs: string): Entry[] {
  if (result.kind === 'problem') return [[words.value, problemBox(result.problems)]];
  const entries: Entry[] = [[words.value, showResult(result, shownAs)]];
  if (result.kind === 'missing') entries.push([words.whyNot, result.why]);
  if (result.kind !== 'number') return entries;
  if (result.unit !== '') entries.push([words.unit, result.unit]);
  if (result.numerator !== null) entries.push([words.numerator, showNumber(result.numerator, 'whole', '')]);
  if (result.denominator !== null) entries.push([words.denominator, showNumber(result.denominator, 'whole', '')]);
  if (showFraction(result) === '' && result.interval === null && result.why === null) {
    entries.push([words.interval, words.census]);
  }
  if (result.interval !== null) {
    entries.push([words.interval, showInterval(result, shownAs)], [words.method, result.interval.method]);
  }
  if (result.why !== null) entries.push([words.whyNot, result.why]);
  for (const caution of result.cautions) entries.push([words.caution, caution]);
  return entries;
}

/** How the columns of a sheet were made: formula and meaning of each, and what was left out. */
export function sheetAccount(sheet: EvaluatedSheet): Element {
  return h('details', { className: ['account'] }, [
    h('summary', [words.columnsOf(inWords(sheet.name))]),
    h('div', { id: anchor('account', sheet.name) }, [
      h('p', [h('code', [sheet.sentence])]),
      h(
        'dl',
        sheet.columns.flatMap((column) => [
          h('dt', [column.label]),
          ...(column.formula === '' ? [] : [h('dd', [h('code', [column.formula])])]),
          ...(column.meaning === '' ? [] : [h('dd', [column.meaning])]),
          ...(column.formula === '' && column.meaning === '' ? [h('dd', [inWords(column.name)])] : []),
        ]),
      ),
    ]),
  ]);
}

/** Terms with what is said of each. */
export function definitionList(entries: readonly Entry[]): Element {
  return h(
    'dl',
    entries.flatMap(([term, said]): ElementContent[] => [h('dt', [term]), h('dd', [said])]),
  );
}
