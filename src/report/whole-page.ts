import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { contentPolicy } from './content-policy.js';
import type { LivePage } from './page-context.js';
import { pageScript } from './page-script.js';
import { pageStyle } from './style.js';
import { words } from './words.js';

/** The words that the script says, as attributes of the element in which it says them. */
function scriptWords(): Record<string, string> {
  return Object.fromEntries(Object.entries(words.said).map(([word, said]) => [`data-${word}`, said]));
}

/** What the page carries for its script to count again: nothing runs it but that script. */
function carried(live: Pick<LivePage, 'engine' | 'season'>): Element[] {
  const type = 'application/octet-stream';
  return [
    h('script', { id: 'carried-engine', type }, [live.engine.packed]),
    h('script', { id: 'carried-season', type }, [live.season]),
  ];
}

/** What some pages have beyond others: what their script counts again with, and style of their own. */
export interface PageExtras {
  readonly live?: Pick<LivePage, 'engine' | 'season'> | undefined;
  readonly style?: string;
  /** What the page carries of itself, which nothing runs. */
  readonly carries?: readonly Element[];
}

/** A page of that title around its main part, as one HTML text: style, script and policy are in it, and nothing is fetched. */
export function wholePage(
  title: string,
  main: Element,
  { live, style: further = '', carries = [] }: PageExtras = {},
): string {
  const style = pageStyle(title) + further;
  const scripts = live === undefined ? [pageScript] : [pageScript, live.engine.text];
  const head = h('head', [
    h('meta', { charSet: 'utf-8' }),
    h('meta', { httpEquiv: 'Content-Security-Policy', content: contentPolicy(style, scripts) }),
    h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    h('meta', { name: 'color-scheme', content: 'light dark' }),
    h('title', [title]),
    h('style', [style]),
  ]);
  const body = h('body', [
    h('a', { href: '#report', className: ['skip'] }, [words.skip]),
    main,
    h('p', { id: 'said', role: 'status', ...scriptWords() }),
    ...carries,
    ...(live === undefined ? [] : carried(live)),
    h('script', [pageScript]),
  ]);
  const page = h('html', { lang: words.language }, [head, body]);
  return toHtml(
    { type: 'root', children: [{ type: 'doctype' }, page] },
    { allowDangerousCharacters: false, closeEmptyElements: true, tightSelfClosing: true },
  );
}
