import { h } from 'hastscript';
import { craftStyle } from '../chart/craft/craft-style.js';
import { lineStyle } from '../chart/craft/hatch-lines.js';
import { hatchSheet, patternStyle } from '../chart/craft/hatching.js';
import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import type { Problem } from '../problem/problem.js';
import { writtenIn } from '../record/written-numbers.js';
import { briefElements } from './brief.js';
import { chartFigure } from './chart-figure.js';
import { drawsCraft } from './drawn-craft.js';
import { markedPart } from './marked-part.js';
import { onPaper } from './on-paper.js';
import type { PageContext } from './page-context.js';
import { type DrawFigure, type PagePart, pageParts } from './page-parts.js';
import { carriedElement } from './results/carried-element.js';
import { resultsOfPage } from './results/results-of-page.js';
import { briefStyle } from './style/brief.js';
import { paperStyle } from './style/paper.js';
import { wholePage } from './whole-page.js';

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
  const { parts, problems } = pageParts(notebook, context, context.paper === undefined ? chartFigure : wideFigure);
  return { html: writtenIn(notebook.locale, () => htmlOf(notebook, context, parts)), problems };
}

/** On paper no chart stands in its narrow form. */
const wideFigure: DrawFigure = (request, notebook) => chartFigure(request, notebook, 'wide');

function htmlOf(notebook: EvaluatedNotebook, context: PageContext, parts: readonly PagePart[]): string {
  const brief = context.layout === 'brief';
  // Records that a page carries could be counted by anybody.
  const live = context.fewest === undefined ? context.live : undefined;
  const marked = parts.map(({ key, elements }) => ({
    key,
    elements: live === undefined ? elements : markedPart(key, elements),
  }));
  const { paper } = context;
  const elements = brief ? briefElements(marked, notebook, context) : marked.flatMap((part) => part.elements);
  const main = h('main', { id: 'report' }, paper === undefined ? elements : onPaper(elements, paper));
  const drawn = drawsCraft(notebook);
  const style = [
    ...(brief ? [briefStyle] : []),
    ...(drawn ? [craftStyle, paper === undefined ? patternStyle : lineStyle] : []),
    ...(paper === undefined ? [] : [paperStyle(paper)]),
  ].join('');
  const results = carriedElement('carried-results', resultsOfPage(notebook, context));
  const carries = drawn && paper === undefined ? [hatchSheet(), results] : [results];
  return wholePage(notebook.title, main, { live, style, carries });
}
