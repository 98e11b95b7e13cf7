import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { FunctionDeclaration } from '../formula/functions/declaration.js';
import { formulaFunctions } from '../formula/functions/functions.js';
import { grammar } from '../formula/grammar.js';
import { languageSections, type SectionId } from '../formula/language-sections.js';
import { missingRules } from '../formula/missing.js';
import { formulaBounds } from '../formula/reader.js';
import { unitWords } from '../formula/unit/word.js';
import { intervalRules } from '../formula/value/interval.js';
import { formatNames } from '../notebook/shown.js';
import { anchor } from './anchor.js';
import { contentsList } from './contents.js';
import { definitionList } from './definition-list.js';
import { tablesOfTheLanguage } from './language-fields.js';
import { languageRules, languageWords } from './language-words.js';
import { pageScript } from './page-script.js';
import { pageStyle } from './style.js';
import { wholePage } from './whole-page.js';

/** Text in which what stands between backquotes is code. */
function said(text: string): ElementContent[] {
  return text
    .split('`')
    .map((part, at): ElementContent => (at % 2 === 1 ? h('code', [part]) : { type: 'text', value: part }));
}

function list(rules: readonly string[]): Element {
  return h(
    'ul',
    rules.map((rule) => h('li', said(rule))),
  );
}

function grammarTable(): Element {
  return definitionList(
    grammar.map(({ rule, form, meaning }) => [rule, h('span', [h('code', [form]), h('br'), ...said(meaning)])]),
  );
}

function functionElements(declaration: FunctionDeclaration): Element[] {
  const { name, arguments: takes, gives, meaning, example } = declaration;
  const several = declaration.works !== 'on the whole' ? declaration.more : takes.at(-1)?.takes === 'sheet key';
  const more = several ? ', …' : '';
  const head = `${name}(${takes.map((argument) => argument.name).join(', ')}${more})`;
  return [
    h('h3', { id: anchor('function', name) }, [head]),
    h('p', said(meaning)),
    definitionList([
      [
        languageWords.takes,
        h(
          'span',
          said(takes.map((argument) => `${argument.name}: ${languageWords.taking[argument.takes]}`).join('; ')),
        ),
      ],
      [languageWords.gives, gives],
      [languageWords.example, h('code', [example])],
    ]),
  ];
}

function unitElements(): Element[] {
  const kinds = new Map<string, string[]>();
  for (const { name, dimension } of unitWords) {
    const kind = dimension.startsWith('counted ') ? languageWords.counted : dimension;
    kinds.set(kind, [...(kinds.get(kind) ?? []), name]);
  }
  return [
    list(languageRules.units),
    definitionList([...kinds].map(([kind, names]) => [kind, names.join(', ')])),
    h('p', [languageWords.shownAs, formatNames().join('; '), '.']),
  ];
}

function body(id: SectionId): Element[] {
  switch (id) {
    case 'writing':
      return [list(languageRules.writing(formulaBounds)), grammarTable()];
    case 'units':
      return unitElements();
    case 'tables':
      return [list(languageRules.tables), ...tablesOfTheLanguage()];
    case 'missing':
      return [list(missingRules)];
    case 'intervals':
      return [list(intervalRules)];
    case 'functions':
      return formulaFunctions.flatMap(functionElements);
    default:
      return [list(languageRules[id])];
  }
}

/** The same page with the style and the script that a server's policy must let in. */
export function languageReference(): { readonly html: string; readonly style: string; readonly script: string } {
  return { html: languagePage(), style: pageStyle(languageWords.title), script: pageScript };
}

/** The reference of the formula language as a page, made from the declarations that check and evaluate formulas. */
export function languagePage(): string {
  const sections = languageSections.map(({ id, title }) =>
    h('section', { ariaLabelledBy: id }, [h('h2', { id }, [title]), ...body(id)]),
  );
  const main = h('main', { id: 'report' }, [
    h('header', { className: ['title'] }, [h('h1', [languageWords.title])]),
    h('p', said(languageWords.about)),
    contentsList(languageSections.map(({ id, title }) => ({ id, text: title, depth: 2 as const }))),
    ...sections,
  ]);
  return wholePage(languageWords.title, main);
}
