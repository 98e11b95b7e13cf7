import type { Element } from 'hast';
import { h } from 'hastscript';
import { writtenDays } from '../../record/written-numbers.js';
import { anchor, anchorOfWords } from '../anchor.js';
import { type ChangesSummary, renderingOf } from '../comparison/changes-summary.js';
import { comparisonWords } from '../comparison/comparison-words.js';
import { definitionList, type Entry } from '../definition-list.js';
import { languagePageName } from '../language-page-name.js';
import { languageWords } from '../language-words.js';
import { methodsPageName } from '../methods-page-name.js';
import { methodsWords } from '../methods-words.js';
import { carriedElement, carriedIn } from '../results/carried-element.js';
import type { PageResults } from '../results/page-results.js';
import { wholePage } from '../whole-page.js';
import { changesPageName } from './folder-page-names.js';
import { folderWords as words } from './folder-words.js';
import { unlikeNeighbours } from './neighbours.js';

/** A page of a notebook that stands in a folder. */
export interface ListedPage {
  /** Its file name. */
  readonly file: string;
  readonly results: PageResults;
}

/** What of a folder its page lists; a page that this program did not write is no part of it. */
export interface ListedFolder {
  /** In the order in which they are listed. */
  readonly pages: readonly ListedPage[];
  /** What the page of changes in that folder tells; null without one. */
  readonly changes: ChangesSummary | null;
  /** Which of the pages that belong to no notebook stand there too, by their file names. */
  readonly beside: readonly string[];
}

/** The digits of a fingerprint that a reader compares by eye. */
const digits = 12;

/** The page that lists a folder's pages: made from what stands in the folder and nothing else, so that the same folder gives the same bytes. */
export function folderPage({ pages, changes, beside }: ListedFolder): string {
  const marks = {
    records: unlikeNeighbours(pages, ({ results }) => results.records),
    program: unlikeNeighbours(pages, ({ results }) => results.program.fingerprint),
  };
  const kinds = (of: (results: PageResults) => string): number => new Set(pages.map(({ results }) => of(results))).size;
  const [records, programs] = [kinds((page) => page.records), kinds((page) => page.program.fingerprint)];
  const main = h('main', { id: 'report' }, [
    h('header', { className: ['title'] }, [h('h1', [words.title])]),
    h('p', [pages.length === 0 ? words.none : words.about]),
    ...(records > 1 || programs > 1 ? [h('p', { className: ['problems'] }, [words.mixed(records, programs)])] : []),
    ...pages.map((page) =>
      listedPage(page, titleOf(page, pages), changes, [
        ...(marks.records.has(page) ? [words.otherRecords] : []),
        ...(marks.program.has(page) ? [words.otherProgram] : []),
      ]),
    ),
    ...(beside.length === 0 ? [] : [besideSection(beside)]),
  ]);
  return wholePage(words.title, main, { carries: [carriedElement('carried-folder', { form: 'rampbook folder 1' })] });
}

/** Whether a page is one that lists a folder, written by this program. */
export function listsFolder(html: string): boolean {
  return carriedIn(html, 'carried-folder') !== null;
}

/** A page's title, with its file where another page of the folder has the same. */
function titleOf({ file, results: { title } }: ListedPage, pages: readonly ListedPage[]): string {
  const alone = pages.filter(({ results }) => results.title === title).length === 1;
  return alone ? title : words.titleIn(title, file);
}

function listedPage(
  { file, results }: ListedPage,
  title: string,
  changes: ChangesSummary | null,
  marks: readonly string[],
): Element {
  const { audience, asOf, headline, chosen, program, notebook, records } = results;
  const id = anchorOfWords('page', file);
  const code = (fingerprint: string): Element => h('code', [fingerprint.slice(0, digits)]);
  const entries: Entry[] = [
    ...(audience === '' ? [] : [[words.for, audience] as const]),
    [words.asOf, writtenDays(asOf)],
    ...(chosen.length === 0 ? [] : [[words.chosen, chosen.join(' ')] as const]),
    ...changeEntries(results, changes),
    [words.notebook, code(notebook)],
    [words.records, code(records)],
    [words.program, h('span', [words.rampbook(program.version), code(program.fingerprint)])],
    ...marks.map((mark) => [words.marks, h('strong', [mark])] as const),
  ];
  return h('section', { ariaLabelledBy: id }, [
    h('h2', { id }, [h('a', { href: encodeURIComponent(file) }, [title])]),
    ...(headline === '' ? [] : [h('p', [headline])]),
    definitionList(entries),
  ]);
}

function changeEntries(results: PageResults, changes: ChangesSummary | null): Entry[] {
  const change = changes?.pages.find(({ name }) => name === results.name);
  if (change === undefined) return [];
  if (change.rendering !== renderingOf(results)) return [[words.changes, words.changesPast(changesPageName)]];
  const link = h('a', { href: `${changesPageName}#${anchor('page', results.name)}` }, [words.changesLink]);
  return [[words.changes, h('span', [`${words.changesSince(change.since, change.summary)} `, link])]];
}

const besideTitles: Readonly<Record<string, string>> = {
  [changesPageName]: comparisonWords.title,
  [methodsPageName]: methodsWords.title,
  [languagePageName]: languageWords.title,
};

function besideSection(beside: readonly string[]): Element {
  const items = beside.map((file) => h('li', [h('a', { href: file }, [besideTitles[file] ?? file])]));
  return h('section', { ariaLabelledBy: 'beside' }, [h('h2', { id: 'beside' }, [words.beside]), h('ul', items)]);
}
