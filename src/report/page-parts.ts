import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Block, ChartRequest, EvaluatedNotebook } from '../notebook/evaluated.js';
import type { Problem } from '../problem/problem.js';
import { writtenDays, writtenIn } from '../record/written-numbers.js';
import { figureAccounts } from './account.js';
import { chartFigure } from './chart-figure.js';
import { choiceForm, shownChoice } from './choice/choice-form.js';
import { choiceWords } from './choice/choice-words.js';
import { closingSections } from './closing-sections.js';
import { contentsList } from './contents.js';
import { figureTable } from './figure-table.js';
import { headingsOf, isTitle } from './heading-ids.js';
import { inputTable, selectionTable } from './input-table.js';
import { type Methods, methodsOf } from './methods.js';
import type { PageContext } from './page-context.js';
import { problemBox } from './problem-box.js';
import { proseElements } from './prose.js';
import { sheetPart } from './sheet-table.js';
import { termsSection } from './terms/terms-section.js';
import { termsUsed } from './terms/terms-used.js';
import { valueInProse } from './value-in-prose.js';
import { words } from './words.js';

/** One part of a page: a block of the notebook, or what stands before or after all of them. */
export interface PagePart {
  /** Unique on the page; a part that stays keeps it. */
  readonly key: string;
  readonly elements: readonly ElementContent[];
}

/** How a chart is drawn: as `chartFigure` does it, or by something that remembers what it drew. */
export type DrawFigure = (request: ChartRequest, notebook: EvaluatedNotebook) => ReturnType<typeof chartFigure>;

/** How a sheet is made: as `sheetPart` does it, or by something that remembers what it made. */
export type MakeSheet = typeof sheetPart;

/** The parts of a notebook's page in their order, and what was found wrong beyond what the notebook itself reports. */
export function pageParts(
  notebook: EvaluatedNotebook,
  context: PageContext,
  draw: DrawFigure = chartFigure,
  makeSheet: MakeSheet = sheetPart,
): { readonly parts: readonly PagePart[]; readonly problems: readonly Problem[] } {
  return writtenIn(notebook.locale, () => partsInLocale(notebook, context, draw, makeSheet));
}

function partsInLocale(
  notebook: EvaluatedNotebook,
  given: PageContext,
  draw: DrawFigure,
  makeSheet: MakeSheet,
): ReturnType<typeof pageParts> {
  const context = given.fewest === undefined ? given : withoutRecords(given);
  const methods = methodsOf(notebook);
  const body = notebook.blocks.map((block) => blockPart(block, notebook, methods, context, draw, makeSheet));
  const found = body.flatMap((part) => part.problems).filter((problem) => !known(problem, notebook.problems));
  const problems = [...notebook.problems, ...found];
  const used = termsUsed(body.flatMap(({ elements }) => elements));
  const closing = closingSections(notebook, context, methods).flatMap((section) =>
    section.id === 'methods' && used.length > 0 ? [termsSection(used), section] : [section],
  );
  const headings = [...headingsOf(notebook).values()];
  const entries = [...headings, ...closing.map(({ id, text }) => ({ id, text, depth: 2 as const }))];
  const parts = [
    { key: 'title', elements: [pageHeader(notebook, context)] },
    { key: 'public', elements: publicNote(context) },
    { key: 'choice', elements: context.live === undefined ? [] : choiceForm(context.live) },
    { key: 'shown', elements: shownElements(context) },
    { key: 'contents', elements: [contentsList(entries)] },
    { key: 'mend', elements: problems.length === 0 ? [] : [problemSection(problems)] },
    ...body.map(({ elements }, at) => ({ key: `block-${at}`, elements })),
    ...closing.map(({ id, element }) => ({ key: id, elements: [element] })),
  ];
  return { parts, problems: found };
}

/** Accounts tell which records were counted and left out, and by which lines: a page for the public has none. */
function withoutRecords({ traces: _, cell: __, live: ___, ...context }: PageContext): PageContext {
  return context;
}

function publicNote({ fewest }: PageContext): Element[] {
  return fewest === undefined ? [] : [h('p', { className: ['public'] }, [words.publicNote(fewest)])];
}

/** Which choice the page shows; nothing where there is none. */
function shownElements({ live, chosen }: PageContext): Element[] {
  if (live !== undefined) return [shownChoice(live.said, true)];
  return chosen === undefined ? [] : [shownChoice(chosen, chosen.join(' ') === choiceWords.shownAll)];
}

/** A block of the notebook as elements, with what was found wrong while they were made. */
export interface BlockPart {
  readonly elements: readonly ElementContent[];
  readonly problems: readonly Problem[];
}

/** A block of the notebook as its part of the page. */
export function blockPart(
  block: Block,
  notebook: EvaluatedNotebook,
  methods: Methods,
  context: Pick<PageContext, 'traces' | 'cell' | 'live'>,
  draw: DrawFigure = chartFigure,
  makeSheet: MakeSheet = sheetPart,
): BlockPart {
  return writtenIn(notebook.locale, () => blockInLocale(block, notebook, methods, context, draw, makeSheet));
}

function blockInLocale(
  block: Block,
  notebook: EvaluatedNotebook,
  methods: Methods,
  { traces = new Map(), cell, live }: Pick<PageContext, 'traces' | 'cell' | 'live'>,
  draw: DrawFigure,
  makeSheet: MakeSheet,
): BlockPart {
  const named = <Value>(names: readonly string[], values: ReadonlyMap<string, Value>): Value[] =>
    names.flatMap((name) => values.get(name) ?? []);
  switch (block.kind) {
    case 'prose': {
      if (isTitle(block.node, notebook)) return { elements: [], problems: [] };
      const prose = proseElements(notebook.file, block.node, valueInProse(notebook));
      const heading = headingsOf(notebook).get(block.node);
      const [first] = prose.elements;
      if (heading === undefined || first?.type !== 'element') return prose;
      const titled: Element = { ...first, properties: { ...first.properties, id: heading.id } };
      return { elements: [titled], problems: prose.problems };
    }
    case 'inputs':
      return { elements: [inputTable(named(block.names, notebook.inputs), live)], problems: [] };
    case 'selections':
      return { elements: [selectionTable(named(block.names, notebook.selections))], problems: [] };
    case 'figures': {
      const figures = named(block.names, notebook.figures);
      return { elements: [figureTable(figures, methods), figureAccounts(figures, traces)], problems: [] };
    }
    case 'sheet': {
      const sheet = notebook.sheets.get(block.name);
      return { elements: sheet === undefined ? [] : [makeSheet(sheet, notebook, methods, cell)], problems: [] };
    }
    case 'chart': {
      const { element, problems } = draw(block.chart, notebook);
      return { elements: [element], problems };
    }
  }
}

function known(problem: Problem, reported: readonly Problem[]): boolean {
  return reported.some(({ place, seen }) => place.line === problem.place.line && seen === problem.seen);
}

function pageHeader(notebook: EvaluatedNotebook, context: PageContext): Element {
  const about = [
    ...(context.audience === undefined ? [] : [`${words.for}: ${context.audience}`]),
    `${words.asOf} ${writtenDays(context.date)}`,
  ];
  return h('header', { className: ['title'] }, [
    h('h1', [notebook.title]),
    h(
      'ul',
      about.map((said) => h('li', [said])),
    ),
  ]);
}

function problemSection(problems: readonly Problem[]): Element {
  return h('section', { className: ['mend'], ariaLabelledBy: 'mend' }, [
    h('h2', { id: 'mend' }, [words.problemsHead]),
    h('p', [words.problemsTop(problems.length)]),
    problemBox(problems),
  ]);
}
