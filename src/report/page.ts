import { h } from 'hastscript';
import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import type { Problem } from '../problem/problem.js';
import { briefElements } from './brief.js';
import { markedPart } from './marked-part.js';
import type { PageContext } from './page-context.js';
import { pageParts } from './page-parts.js';
import { onPaper, paperStyle } from './paper.js';
import { briefStyle } from './style/brief.js';
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
  const { parts, problems } = pageParts(notebook, context);
  const brief = context.layout === 'brief';
  const marked = parts.map(({ key, elements }) => ({
    key,
    elements: context.live === undefined ? elements : markedPart(key, elements),
  }));
  const { live, paper } = context;
  const elements = brief ? briefElements(marked, notebook, context) : marked.flatMap((part) => part.elements);
  const main = h('main', { id: 'report' }, paper === undefined ? elements : onPaper(elements, paper));
  const style = `${brief ? briefStyle : ''}${paper === undefined ? '' : paperStyle(paper)}`;
  return { html: wholePage(notebook.title, main, { live, style }), problems };
}
