import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import type { Problem } from '../problem/problem.js';
import { contentPolicy } from './content-policy.js';
import type { PageContext } from './page-context.js';
import { pageParts } from './page-parts.js';
import { pageScript } from './page-script.js';
import { pageStyle } from './style.js';
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
  const { parts, problems } = pageParts(notebook, context);
  const main = h(
    'main',
    { id: 'report' },
    parts.flatMap(({ elements }) => elements),
  );
  return { html: wholePage(notebook.title, main), problems };
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
