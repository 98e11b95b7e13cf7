import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { choicesOf } from '../finding/choices.js';
import { exampleBook } from '../finding/example/example-book.js';
import type { Finding, FindingColumn, FindingTable } from '../finding/finding.js';
import { findings } from '../finding/findings.js';
import { findingResults } from '../notebook/finding-results.js';
import { unitInHead } from '../notebook/shown.js';
import type { Book } from '../record/book.js';
import { everyRowOf } from '../record/every-row.js';
import type { StatisticAccount } from '../statistic/account/statistic-account.js';
import { statisticAccounts } from '../statistic/account/statistic-accounts.js';
import { anchorOfText, headed } from './anchor.js';
import { contentsList } from './contents.js';
import { definitionList, type Entry } from './definition-list.js';
import { methodsWords as words } from './methods-words.js';
import { pageScript } from './page-script.js';
import { keyCell, resultCell } from './result-cell.js';
import { washCautions } from './standing-notes.js';
import { pageStyle } from './style.js';
import { tableElement } from './table.js';
import { allTerms } from './terms/terms-list.js';
import { termsWords } from './terms/terms-words.js';
import { wholePage } from './whole-page.js';

/** Fewer resamples than a report draws: an example shows the way, not the last digit. */
const exampleResamples = { count: 200, seed: 1 };

/** At most this many rows of a worked example are shown. */
const mostRows = 8;

function exampleTable(finding: Finding, book: Book): Element[] {
  const table = book.tables.get(finding.table)!;
  const { by, options } = finding.account.example;
  const rows = everyRowOf(table.rowCount);
  const answer: FindingTable = finding.find(book, table, rows, by, choicesOf(finding, options, exampleResamples));
  const results = findingResults(answer, table);
  const keys = answer.columns.map(({ kind, name }) => kind === 'text' || by.includes(name));
  const heads = Math.max(1, keys.indexOf(false) === -1 ? keys.length : keys.indexOf(false));
  const numbers = answer.columns.map(({ kind }) => kind !== 'text');
  const more = results.length - mostRows;
  const said = [...(answer.said ?? []), ...answer.leftOut, ...(more > 0 ? [words.moreRows(more)] : [])];
  return [
    tableElement({
      id: anchorOfText('example', nameOf(finding)),
      caption: headed(words.exampleOf(finding.name, by, words.toldInExample(Object.entries(options)))),
      heads,
      head: answer.columns.map((column, at) => ({ content: columnHead(column), number: numbers[at]! && !keys[at] })),
      rows: results.slice(0, mostRows).map((cells) =>
        cells.map((cell, at) => {
          const { shownAs } = answer.columns[at]!;
          return keys[at] ? keyCell(cell, shownAs) : resultCell(cell, shownAs);
        }),
      ),
    }),
    ...said.map((note) => h('p', { className: ['note'] }, [note])),
  ];
}

function columnHead({ label, shownAs, unit, kind }: FindingColumn): ElementContent[] {
  const under = kind === 'text' ? '' : unitInHead(shownAs, unit ?? '');
  const text: ElementContent = { type: 'text', value: headed(label) };
  return under === '' ? [text] : [text, h('span', { className: ['small'] }, [under])];
}

/** A finding's name, told apart from its namesakes by the table it is asked of. */
function nameOf({ name, table }: Finding): string {
  const alone = findings.filter((finding) => finding.name === name).length === 1;
  return alone ? name : `${name} of ${table}`;
}

function findingElements(finding: Finding, book: Book): Element[] {
  const { account, options = [] } = finding;
  const told: Entry[] = options.map(({ name, meaning, choices, usual }) => [
    words.told,
    words.option(name, meaning, choices, usual),
  ]);
  return [
    h('h3', { id: anchorOfText('finding', nameOf(finding)) }, [headed(nameOf(finding))]),
    definitionList([
      [words.asked, words.rowsOf(finding.table)],
      [words.definition, account.definition],
      [words.formula, account.formula],
      [words.numerator, account.numerator],
      [words.denominator, account.denominator],
      [words.leftOut, account.leftOut],
      [words.method, account.method],
      [words.source, account.source],
      ...told,
    ]),
    ...exampleTable(finding, book),
  ];
}

/** A number of a worked example to six digits, as a person would check it. */
function exampleNumber(value: number | null): string {
  if (value === null) return words.notReached;
  return Number.isInteger(value) ? String(value) : String(Number(value.toPrecision(6)));
}

function statisticElements({ name, gives, formula, source, example }: StatisticAccount): Element[] {
  const { given, found } = example();
  return [
    h('h3', { id: anchorOfText('statistic', name) }, [name]),
    definitionList([
      [words.gives, gives],
      [words.formula, formula],
      [words.source, source],
      [words.example, given],
      [words.found, found.map(([label, value]) => `${label} ${exampleNumber(value)}`).join('; ')],
    ]),
  ];
}

/** One finding of each name: those that are there once for every table are told once. */
function toldFindings(): readonly Finding[] {
  return findings.filter(({ name }, at) => findings.findIndex((finding) => finding.name === name) === at);
}

/** The same page with the style and the script that a server's policy must let in. */
export function methodsReference(): { readonly html: string; readonly style: string; readonly script: string } {
  return { html: methodsPage(), style: pageStyle(words.title), script: pageScript };
}

/** Every finding's and every statistic's account as a page, made from the objects that compute them; the same bytes always. */
export function methodsPage(): string {
  const book = exampleBook();
  const sections = [
    { title: termsWords.title, elements: allTerms() },
    { title: words.findings, elements: toldFindings().flatMap((finding) => findingElements(finding, book)) },
    ...statisticAccounts.map(({ title, accounts }) => ({ title, elements: accounts.flatMap(statisticElements) })),
    {
      title: words.cautions,
      elements: [
        h(
          'ul',
          washCautions.map((caution) => h('li', [caution])),
        ),
      ],
    },
  ].map(({ title, elements }) => ({ id: anchorOfText('section', title), title, elements }));
  const main = h('main', { id: 'report' }, [
    h('header', { className: ['title'] }, [h('h1', [words.title])]),
    h('p', [words.about]),
    contentsList(sections.map(({ id, title }) => ({ id, text: title, depth: 2 as const }))),
    ...sections.map(({ id, title, elements }) =>
      h('section', { ariaLabelledBy: id }, [h('h2', { id }, [title]), ...elements]),
    ),
  ]);
  return wholePage(words.title, main);
}
