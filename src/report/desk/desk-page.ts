import type { Element, ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { craftStyle } from '../../chart/craft/craft-style.js';
import { hatchSheet, patternStyle } from '../../chart/craft/hatching.js';
import { languagePageName } from '../language-page-name.js';
import { pageStyle } from '../style.js';
import { words } from '../words.js';
import type { DeskPart } from './desk-parts.js';
import { deskScript } from './desk-script.js';
import { listScript } from './list-script.js';
import { partFrame, shipPart } from './shipped-part.js';
import { deskStyle } from './style/desk.js';
import { watchScript } from './watch-script.js';
import { deskWords } from './words.js';

/** A page for the loopback address, with the style and the script that its policy must let in. */
export interface LocalPage {
  readonly html: string;
  readonly style: string;
  readonly script: string;
}

/** The page on which a notebook is worked at, complete as it stands; its script opens what can be changed. */
export function deskPage(title: string, file: string, parts: readonly DeskPart[]): LocalPage {
  const body = h('main', { id: 'notebook', className: ['desk'], 'data-file': file }, [
    h('div', { className: ['place'] }, [
      h('span', { className: ['state'] }, [deskWords.saved(file)]),
      word('undo', deskWords.undo),
      word('redo', deskWords.redo),
      h('a', { href: `${encodeURIComponent(file)}/report` }, [deskWords.seeReport]),
      h('a', { href: languagePageName, target: '_blank', rel: 'noreferrer' }, [deskWords.language]),
      h('a', { href: './' }, [deskWords.allNotebooks]),
    ]),
    h('details', [h('summary', [deskWords.keys]), keyList()]),
    h('div', { id: 'elsewhere' }),
    h('div', { id: 'parts' }, framed(parts)),
    h('p', { className: ['atend'] }, [
      h('span', [deskWords.atEnd]),
      ...Object.entries(deskWords.parts).map(([part, said]) =>
        h('button', { type: 'button', className: ['word'], 'data-add': part }, [said]),
      ),
    ]),
  ]);
  return localPage(title, [body], deskScript);
}

/** The page that shows a notebook's report and follows the document. */
export function watchPage(
  title: string,
  file: string,
  parts: readonly Omit<DeskPart, 'first' | 'last' | 'kind'>[],
): LocalPage {
  const all = parts.map((part) => ({ ...part, kind: 'rest' as const, first: 0, last: 0 }));
  const body = h('main', { id: 'report', 'data-file': file }, [
    h('div', { id: 'elsewhere' }),
    h('div', { id: 'parts' }, framed(all)),
  ]);
  return localPage(title, [body], watchScript);
}

/** The page that lists a folder's notebooks. */
export function listPage(
  folder: string,
  notebooks: readonly { readonly file: string; readonly title: string }[],
): LocalPage {
  const items = notebooks.map(({ file, title }) =>
    h('li', [h('a', { href: encodeURIComponent(file) }, [title]), h('div', { className: ['note'] }, [file])]),
  );
  const body = h('main', { id: 'notebook', className: ['desk'] }, [
    h('h1', [deskWords.notebooks]),
    h('p', { className: ['note'] }, [deskWords.notebooksIn(folder)]),
    notebooks.length === 0 ? h('p', [deskWords.noNotebooks]) : h('ul', { className: ['list'] }, items),
    newNotebookForm(),
  ]);
  return localPage(deskWords.notebooks, [body], listScript);
}

/** Where a new notebook is named; hidden until the script that makes it is there. */
function newNotebookForm(): Element {
  return h('form', { id: 'make', hidden: true }, [
    h('label', { htmlFor: 'make-name' }, [deskWords.makeName]),
    h('input', {
      id: 'make-name',
      type: 'text',
      autoComplete: 'off',
      autoCapitalize: 'off',
      spellCheck: 'false',
      'aria-describedby': 'make-how make-wrong',
    }),
    h('button', { type: 'submit', className: ['word'] }, [deskWords.make]),
    h('p', { id: 'make-how', className: ['note'] }, [deskWords.makeHow]),
    h('p', { id: 'make-wrong', className: ['wrong'], role: 'alert' }),
  ]);
}

function framed(parts: readonly DeskPart[]): ElementContent[] {
  return parts.map(({ key, kind, first, last, elements }) =>
    partFrame(shipPart(key, first, last, elements), kind, elements),
  );
}

function word(name: string, said: string): Element {
  return h('button', { type: 'button', className: ['word'], id: name }, [said]);
}

function keyList(): Element {
  return h(
    'dl',
    deskWords.keyList.flatMap(([key, does]) => [h('dt', [key]), h('dd', [does])]),
  );
}

function localPage(title: string, body: readonly Element[], script: string): LocalPage {
  const style = `${pageStyle(title)}\n${craftStyle}${patternStyle}${deskStyle}`;
  const said = Object.fromEntries(
    Object.entries({ ...words.said, ...deskWords.said }).map(([name, text]) => [`data-${name}`, text]),
  );
  const main = body[0]!.properties.id === 'report' ? 'report' : 'notebook';
  const page = h('html', { lang: deskWords.lang }, [
    h('head', [
      h('meta', { charSet: 'utf-8' }),
      h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      h('meta', { name: 'color-scheme', content: 'light dark' }),
      h('meta', { name: 'referrer', content: 'no-referrer' }),
      h('title', [title]),
      h('style', [style]),
    ]),
    h('body', [
      h('a', { href: `#${main}`, className: ['skip'] }, [main === 'report' ? words.skip : deskWords.skip]),
      ...body,
      hatchSheet(),
      h('p', { id: 'said', role: 'status', ...said }),
      ...(script === '' ? [] : [h('script', [script])]),
    ]),
  ]);
  const html = toHtml({ type: 'root', children: [{ type: 'doctype' }, page] }, { allowDangerousCharacters: false });
  return { html, style, script };
}
