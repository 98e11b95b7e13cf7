import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import { readChanges } from '../report/comparison/changes-summary.js';
import type { ListedFolder, ListedPage } from '../report/folder/folder-page.js';
import { changesPageName } from '../report/folder/folder-page-names.js';
import { languagePageName } from '../report/language-page-name.js';
import { methodsPageName } from '../report/methods-page-name.js';
import { readPageResults } from '../report/results/read-page-results.js';

/** The pages of notebooks that this program wrote into a folder, by file name; other files are passed over. */
export function pagesIn(folder: string): readonly ListedPage[] {
  return namesIn(folder).flatMap((file) => {
    const results = readPageResults(readFileSync(join(folder, file), 'utf8'));
    return results === null ? [] : [{ file, results }];
  });
}

/** The problem where a file of that name stands in a folder and is none that may be written over; null where it may be. */
export function foreignFile(folder: string, name: string, isOurs: (html: string) => boolean): Problem | null {
  const path = join(folder, name);
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined || (found.isFile() && isOurs(readFileSync(path, 'utf8')))) return null;
  const remedy = 'Move that file, or name another place.';
  const seen = 'something that rampbook did not write there';
  return { code: 'name-taken', severity: 'stops', place: wholeFile(path), seen, wanted: 'a free name', remedy };
}

/** What the page of a folder lists. */
export function listedFolder(folder: string): ListedFolder {
  const names = new Set(namesIn(folder));
  const changes = names.has(changesPageName) ? readChanges(readFileSync(join(folder, changesPageName), 'utf8')) : null;
  return {
    pages: pagesIn(folder),
    changes,
    beside: [
      ...(changes === null ? [] : [changesPageName]),
      ...[methodsPageName, languagePageName].filter((name) => names.has(name)),
    ],
  };
}

/** The pages at a path, and whether it is a folder's. */
export interface FoundPages {
  readonly pages: readonly ListedPage[];
  readonly folder: boolean;
}

/** The pages at a path, which is one page's or a folder's; the problem where there is none. */
export function pagesAt(path: string): FoundPages | { readonly problem: Problem } {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return noPages(path, 'no such file', 'a page or a folder of pages');
  if (found.isDirectory()) {
    const pages = pagesIn(path);
    if (pages.length > 0) return { pages, folder: true };
    return noPages(path, 'no page in it', 'a folder with pages that rampbook wrote');
  }
  const results = readPageResults(readFileSync(path, 'utf8'));
  if (results === null) return noPages(path, 'a file that carries no results', 'a page that rampbook wrote');
  return { pages: [{ file: basename(path), results }], folder: false };
}

function namesIn(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.html'))
    .map(({ name }) => name)
    .sort();
}

function noPages(path: string, seen: string, wanted: string): { readonly problem: Problem } {
  const remedy =
    'Name a page of a notebook, or a folder of them. A page written before pages carried their results must be rendered again.';
  return { problem: { code: 'no-page', severity: 'stops', place: wholeFile(path), seen, wanted, remedy } };
}
