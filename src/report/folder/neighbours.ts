/**
 * Which of several pages differ from their neighbours by some mark: all but those of the largest group that shares one. Where
 * two groups are equally large neither is the rule, and every page differs.
 */
export function unlikeNeighbours<Page>(pages: readonly Page[], markOf: (page: Page) => string): ReadonlySet<Page> {
  const groups = new Map<string, Page[]>();
  for (const page of pages) groups.set(markOf(page), [...(groups.get(markOf(page)) ?? []), page]);
  if (groups.size < 2) return new Set();
  const largest = Math.max(...[...groups.values()].map((group) => group.length));
  const rules = [...groups.values()].filter((group) => group.length === largest);
  return new Set(pages.filter((page) => rules.length > 1 || !rules[0]!.includes(page)));
}
