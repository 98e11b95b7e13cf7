import { basename, dirname } from 'node:path';
import type { Problem } from '../problem/problem.js';
import { listsChanges, summaryOf } from '../report/comparison/changes-summary.js';
import { comparePages, saysTheSame } from '../report/comparison/compare-pages.js';
import type { Comparison } from '../report/comparison/comparison.js';
import { comparisonPage } from '../report/comparison/comparison-page.js';
import { comparisonWords as words } from '../report/comparison/comparison-words.js';
import { movedSaid, relativeSaid, valueSaid } from '../report/comparison/figures-table.js';
import { sheetSaid } from '../report/comparison/sheets-list.js';
import { whyText } from '../report/comparison/why-text.js';
import { comparedByName } from './compared-pages.js';
import { comparisonJson } from './comparison-json.js';
import { exitCodes } from './exit-codes.js';
import { openPageFolder, writePage } from './page-folder.js';
import { problemJson } from './problem-json.js';
import { foreignFile, pagesAt } from './read-page-folder.js';
import { say, sayJson, sayProblems } from './terminal.js';

/** The words of `rampbook compare`. */
export interface CompareWords {
  readonly old: string;
  readonly later: string;
  readonly to?: string;
  readonly json?: boolean;
}

/** Says what changed between two renderings, by how much and what may have moved it; a difference is an answer, not a failure. */
export async function compareCommand({ old, later, to, json }: CompareWords): Promise<number> {
  const [before, after] = [pagesAt(old), pagesAt(later)];
  const missing = [before, after].flatMap((found) => ('problem' in found ? [found.problem] : []));
  if ('problem' in before || 'problem' in after) return stop(missing, json);
  const onePage = !before.folder && !after.folder;
  const compared = onePage
    ? { comparisons: [comparePages(before.pages[0]!.results, after.pages[0]!.results)], unpaired: [] }
    : comparedByName(before.pages, after.pages);
  const { comparisons, unpaired } = compared;
  if (to !== undefined) {
    const problem = await writeComparison(to, comparisonPage(comparisons, unpaired));
    if (problem !== null) return stop([problem], json);
  }
  if (json === true) sayJson({ comparisons: comparisons.map(comparisonJson), unpaired });
  else {
    for (const comparison of comparisons) sayComparison(comparison);
    for (const said of unpaired) say(said);
    if (to !== undefined) say(`wrote ${to}`);
  }
  return exitCodes.fine;
}

async function writeComparison(path: string, html: string): Promise<Problem | null> {
  const [folder, name] = [dirname(path), basename(path)];
  return (
    (await openPageFolder(folder)) ?? foreignFile(folder, name, listsChanges) ?? writePage(folder, name, html).problem
  );
}

function stop(problems: readonly Problem[], json: boolean | undefined): number {
  if (json === true) sayJson({ stopped: problems.map(problemJson) });
  sayProblems(problems);
  return exitCodes.problems;
}

function sayComparison(comparison: Comparison): void {
  const { after, figures, sheets } = comparison;
  say(`${after.title}: ${saysTheSame(comparison) ? words.nothing : summaryOf(comparison)}`);
  for (const figure of figures) {
    say(`  ${figure.name}`);
    say(`    ${words.before}: ${valueSaid(figure.before, figure.shownAs)}`);
    say(`    ${words.after}: ${valueSaid(figure.after, figure.shownAs)}`);
    if (figure.by !== null) {
      const moved = [movedSaid(figure), relativeSaid(figure)].filter((text) => text !== '').join(', ');
      say(`    ${words.moved}: ${moved}; ${words.beyond}: ${words.beyondOf(figure.beyond)}`);
    }
    say(`    ${words.why}: ${whyText(figure)}`);
  }
  for (const sheet of sheets) say(`  ${sheet.name}: ${sheetSaid(sheet)}; ${words.why}: ${whyText(sheet)}`);
}
