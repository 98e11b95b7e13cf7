import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { contentPolicy } from './content-policy.js';
import { pageScript } from './page-script.js';
import { pageStyle } from './style.js';
import { words } from './words.js';

/** The words that the script says, as attributes of the element in which it says them. */
function scriptWords(): Record<string, string> {
  return Object.fromEntries(Object.entries(words.said).map(([word, said]) => [`data-${word}`, said]));
}

/** A page of that title around its main part, as one HTML text: style, script and policy are in it, and nothing is fetched; `further` is style of this page alone. */
export function wholePage(title: string, main: Element, further = ''): string {
  const style = pageStyle(title) + further;
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
