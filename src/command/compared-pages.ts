import { comparePages } from '../report/comparison/compare-pages.js';
import type { Comparison } from '../report/comparison/comparison.js';
import type { Unpaired } from '../report/comparison/comparison-page.js';
import { comparisonWords } from '../report/comparison/comparison-words.js';
import type { ListedPage } from '../report/folder/folder-page.js';

/** Comparisons of pages of the same name, in the order of the later ones, and which pages have none; `later` looks for the latter among the later ones alone. */
export function comparedByName(
  before: readonly ListedPage[],
  after: readonly ListedPage[],
  sides: 'both' | 'later' = 'both',
): { readonly comparisons: readonly Comparison[]; readonly unpaired: Unpaired } {
  const was = new Map(before.map((page) => [page.file, page]));
  const is = new Set(after.map(({ file }) => file));
  return {
    comparisons: after.flatMap(({ file, results }) => {
      const former = was.get(file);
      return former === undefined ? [] : [comparePages(former.results, results)];
    }),
    unpaired: [
      ...after.filter(({ file }) => !was.has(file)).map(({ file }) => comparisonWords.onlyAfter(file)),
      ...(sides === 'later' ? [] : before)
        .filter(({ file }) => !is.has(file))
        .map(({ file }) => comparisonWords.onlyBefore(file)),
    ],
  };
}
