import type { Element, ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import type { Block, EvaluatedNotebook } from '../notebook/evaluated.js';
import type { Trace } from '../notebook/trace.js';
import type { Problem } from '../problem/problem.js';
import { figureAccounts } from './account.js';
import { chartFigure } from './chart-figure.js';
import { closingSections } from './closing-sections.js';
import { contentPolicy } from './content-policy.js';
import { contentsList } from './contents.js';
import { figureTable } from './figure-table.js';
import { headingsOf, isTitle } from './heading-ids.js';
import { inputTable, selectionTable } from './input-table.js';
import { type Methods, methodsOf } from './methods.js';
import type { PageContext } from './page-context.js';
import { pageScript } from './page-script.js';
import { problemBox } from './problem-box.js';
import { proseElements } from './prose.js';
import { sheetPart } from './sheet-table.js';
import { pageStyle } from './style.js';
import { valueInProse } from './value-in-prose.js';
import { words } from './words.js';

/** A page, and what was found wrong while it was made beyond what the notebook itself reports. */
export interface RenderedPage {
  readonly html: string;
  readonly problems: readonly Problem[];
}

/**
 * A notebook as one HTML text that opens from a folder: no address in it is fetched, and it is complete without its script.
 * What is wrong shows in its place and the rest stands. The same notebook and context give the same bytes.
 */
export function renderPage(notebook: EvaluatedNotebook, context: PageContext): RenderedPage {
  const methods = methodsOf(notebook);
  const body = notebook.blocks.map((block) => blockPart(block, notebook, methods, context.traces ?? new Map()));
  const found = body.flatMap((part) => part.problems).filter((problem) => !known(problem, notebook.problems));
  const problems = [...notebook.problems, ...found];
  const closing = closingSections(notebook, context, methods);
  const headings = [...headingsOf(notebook).values()];
  const entries = [...headings, ...closing.map(({ id, text }) => ({ id, text, depth: 2 as const }))];
  const main = h('main', { id: 'report' }, [
    pageHeader(notebook, context),
    contentsList(entries),
    ...(problems.length === 0 ? [] : [problemSection(problems)]),
    ...body.flatMap((part) => part.elements),
    ...closing.map((section) => section.element),
  ]);
  return { html: wholePage(notebook.title, main), problems: found };
}

interface BlockPart {
  readonly elements: readonly ElementContent[];
  readonly problems: readonly Problem[];
}

function blockPart(
  block: Block,
  notebook: EvaluatedNotebook,
  methods: Methods,
  traces: ReadonlyMap<string, Trace>,
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
      return { elements: [inputTable(named(block.names, notebook.inputs))], problems: [] };
    case 'selections':
      return { elements: [selectionTable(named(block.names, notebook.selections))], problems: [] };
    case 'figures': {
      const figures = named(block.names, notebook.figures);
      return { elements: [figureTable(figures, methods), figureAccounts(figures, traces)], problems: [] };
    }
    case 'sheet': {
      const sheet = notebook.sheets.get(block.name);
      return { elements: sheet === undefined ? [] : [sheetPart(sheet, notebook, methods)], problems: [] };
    }
    case 'chart': {
      const { element, problems } = chartFigure(block.chart, notebook);
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
    `${words.asOf} ${context.date}`,
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

/** The words that the script says, as attributes of the element in which it says them. */
function scriptWords(): Record<string, string> {
  return Object.fromEntries(Object.entries(words.said).map(([word, said]) => [`data-${word}`, said]));
}

function wholePage(title: string, main: Element): string {
  const style = pageStyle(title);
  const head = h('head', [
    h('meta', { charSet: 'utf-8' }),
    h('meta', { httpEquiv: 'Content-Security-Policy', content: contentPolicy(style, pageScript) }),
    h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    h('meta', { name: 'color-scheme', content: 'light dark' }),
    h('title', [title]),
    h('style', [style]),
  ]);
  const body = h('body', [
    h('a', { href: '#report', className: ['skip'] }, [words.skip]),
    main,
    h('p', { id: 'said', role: 'status', ...scriptWords() }),
    h('script', [pageScript]),
  ]);
  const page = h('html', { lang: words.language }, [head, body]);
  return toHtml({ type: 'root', children: [{ type: 'doctype' }, page] }, { allowDangerousCharacters: false });
}
