import type { Element } from 'hast';
import { h } from 'hastscript';
import { anchor, inWords } from '../anchor.js';
import { contentsList } from '../contents.js';
import { carriedElement } from '../results/carried-element.js';
import { resultOf } from '../results/carried-value.js';
import type { CarriedInput, PageResults } from '../results/page-results.js';
import { tableElement } from '../table.js';
import { inputText } from '../value-in-prose.js';
import { wholePage } from '../whole-page.js';
import { causesList } from './causes-list.js';
import { changesSummary, summaryOf } from './changes-summary.js';
import { saysTheSame } from './compare-pages.js';
import type { Comparison } from './comparison.js';
import { comparisonWords as words } from './comparison-words.js';
import { changedFigures } from './figures-table.js';
import { changedSheets } from './sheets-list.js';

/** What two folders do not have in common, and so nothing is compared of: sentences. */
export type Unpaired = readonly string[];

/** Comparisons as one page, a section for each page compared; the same bytes for the same renderings. */
export function comparisonPage(comparisons: readonly Comparison[], unpaired: Unpaired = []): string {
  const sections = comparisons.map((comparison) => ({ comparison, id: anchor('page', comparison.after.name) }));
  const main = h('main', { id: 'report' }, [
    h('header', { className: ['title'] }, [h('h1', [words.title])]),
    ...[words.about, words.severally, words.rounded].map((said) => h('p', [said])),
    ...unpaired.map((said) => h('p', { className: ['note'] }, [said])),
    ...(sections.length < 2
      ? []
      : [contentsList(sections.map(({ comparison, id }) => ({ id, text: comparison.after.title, depth: 2 })))]),
    ...sections.map(({ comparison, id }) =>
      h('section', { ariaLabelledBy: id }, [
        h('h2', { id }, [comparison.after.title]),
        ...comparedElements(comparison),
      ]),
    ),
  ]);
  return wholePage(words.title, main, { carries: [carriedElement('carried-changes', changesSummary(comparisons))] });
}

function comparedElements(comparison: Comparison): Element[] {
  const { after, figures, sheets, inputs, definitions } = comparison;
  const { name } = after;
  return [
    h('p', [saysTheSame(comparison) ? words.nothing : words.lead(summaryOf(comparison))]),
    h('h3', [words.causes]),
    causesList(comparison),
    ...(inputs.length === 0 ? [] : [inputsTable(name, comparison)]),
    ...(definitions.length === 0 ? [] : [definitionsTable(name, comparison)]),
    ...(figures.length === 0 ? [] : [changedFigures(name, figures)]),
    ...(sheets.length === 0 ? [] : changedSheets(name, sheets)),
  ];
}

function inputsTable(page: PageResults['name'], { inputs }: Comparison): Element {
  const said = (input: CarriedInput | null): string =>
    input === null ? words.absent : inputText(resultOf(input), input.unit ?? '');
  return tableElement({
    id: anchor('inputs', page),
    caption: words.inputs,
    heads: 1,
    head: [words.input, words.before, words.after].map((content) => ({ content })),
    rows: inputs.map(({ name, before, after }) => [
      { content: inWords(name) },
      { content: said(before) },
      { content: said(after) },
    ]),
  });
}

function definitionsTable(page: PageResults['name'], { definitions }: Comparison): Element {
  const code = (definition: string | null): Element[] =>
    definition === null
      ? [h('em', [words.absent])]
      : definition.split('\n').map((line) => h('div', [h('code', [line])]));
  return tableElement({
    id: anchor('definitions', page),
    caption: words.definitions,
    heads: 1,
    head: [words.name, words.before, words.after].map((content) => ({ content })),
    rows: definitions.map(({ name, before, after }) => [
      { content: inWords(name) },
      { content: code(before) },
      { content: code(after) },
    ]),
  });
}
