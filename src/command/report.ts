import type { Problem } from '../problem/problem.js';
import { listsChanges, summaryOf } from '../report/comparison/changes-summary.js';
import { saysTheSame } from '../report/comparison/compare-pages.js';
import { comparisonPage } from '../report/comparison/comparison-page.js';
import { comparisonWords } from '../report/comparison/comparison-words.js';
import { folderPage, type ListedPage, listsFolder } from '../report/folder/folder-page.js';
import { changesPageName, folderPageName } from '../report/folder/folder-page-names.js';
import { languagePage } from '../report/language-page.js';
import { languagePageName } from '../report/language-page-name.js';
import { methodsPage } from '../report/methods-page.js';
import { methodsPageName } from '../report/methods-page-name.js';
import { readPageResults } from '../report/results/read-page-results.js';
import type { Paper, PaperSize } from '../report/style/paper.js';
import { comparedByName } from './compared-pages.js';
import { exitCodes } from './exit-codes.js';
import { makePages } from './made-pages.js';
import { type NotebookPage, nameTaken } from './notebook-page.js';
import { inputsInFile } from './open-notebook.js';
import { openSeason } from './open-season.js';
import { openPageFolder, writePage } from './page-folder.js';
import { printPages, type ToPrint } from './print-pages.js';
import { startProgress } from './progress.js';
import { readChoice, unknownInputs } from './read-choice.js';
import { foreignFile, listedFolder, pagesAt, pagesIn } from './read-page-folder.js';
import { say, sayProblems } from './terminal.js';

/** The words of `rampbook report`. */
export interface ReportWords {
  readonly notebooks: readonly string[];
  readonly store: string;
  readonly to: string;
  readonly only?: readonly string[];
  readonly with?: readonly string[];
  readonly compareWith?: string;
  readonly quiet?: boolean;
  readonly pdf?: boolean;
  readonly paper?: PaperSize;
  readonly accounts?: boolean;
}

/**
 * Writes each notebook as a page, with the methods, the reference of the language and the folder's list beside them; with `pdf`
 * as a printed page too. A notebook with problems is written too, shows them in place, and makes the exit code 1.
 */
export async function reportCommand({
  notebooks,
  store,
  to,
  quiet,
  compareWith,
  pdf,
  ...words
}: ReportWords): Promise<number> {
  const season = await openSeason(store);
  if ('problems' in season) return stop(season.problems);
  const choice = readChoice(words, season.book);
  if ('problems' in choice) return stop(choice.problems);
  const unknown = choice.inputs.size === 0 ? [] : unknownInputs(choice, '--with', notebooks.flatMap(inputsInFile));
  if (unknown.length > 0) return stop(unknown);
  const earlier = compareWith === undefined ? null : pagesAt(compareWith);
  if (earlier !== null && 'problem' in earlier) return stop([earlier.problem]);
  const folder = await openPageFolder(to);
  if (folder !== null) return stop([folder]);
  const stoodThere = pagesIn(to);
  const progress = startProgress(quiet === true);
  const problems: Problem[] = [];
  const hints: Problem[] = [];
  const written = new Map<string, string>();
  const pages: ListedPage[] = [];
  const notes = new Map<string, string>();
  const paper: Paper = { size: words.paper ?? 'letter', accounts: words.accounts === true };
  const toPrint: ToPrint[] = [];
  const write = (name: string, bytes: string | Uint8Array): void => {
    const page = writePage(to, name, bytes);
    if (page.problem === null) written.set(name, page.path);
    else problems.push(page.problem);
  };
  const made = makePages({ notebooks, season, choice, choiceWords: words, paper: pdf === true ? paper : null });
  try {
    for (const [at, file] of notebooks.entries()) {
      progress.show(`rendering ${file}`, at / notebooks.length);
      const page = await made.pages[at]!;
      const name = `${page.name}.html`;
      problems.push(...page.problems);
      hints.push(...(page.hints ?? []));
      if (page.html === null) continue;
      if (written.has(name)) problems.push(nameTaken(file, `${name} was written from another of the notebooks named`));
      else {
        write(name, page.html);
        pages.push({ file: name, results: readPageResults(page.html)! });
        if (page.printed !== null) toPrint.push({ name: `${page.name}.pdf`, html: page.printed });
      }
      if (page.withheld !== null) notes.set(name, withheldNote(page.withheld));
    }
  } finally {
    await made.close();
  }
  write(methodsPageName, methodsPage());
  write(languagePageName, languagePage());
  const writeOwn = (name: string, html: () => string, isOurs: (html: string) => boolean): void => {
    const foreign = foreignFile(to, name, isOurs);
    if (foreign === null) write(name, html());
    else problems.push(foreign);
  };
  if (earlier !== null) {
    const { comparisons, unpaired } = comparedByName(earlier.pages, pages, 'later');
    writeOwn(changesPageName, () => comparisonPage(comparisons, unpaired), listsChanges);
  }
  writeOwn(folderPageName, () => folderPage(listedFolder(to)), listsFolder);
  const show = (name: string, share: number): void => progress.show(`printing ${name}`, share);
  problems.push(...(await printPages(toPrint, { asOf: season.book.sum.asOf, write, show })));
  progress.end();
  const { comparisons } = comparedByName(stoodThere, pages);
  for (const [name, path] of written) {
    say(`wrote ${path}${notes.get(name) ?? ''}`);
    const comparison = comparisons.find(({ after }) => `${after.name}.html` === name);
    if (comparison !== undefined && !saysTheSame(comparison))
      say(`  ${comparisonWords.against(summaryOf(comparison))}`);
  }
  sayProblems([...hints, ...problems]);
  return problems.length === 0 ? exitCodes.fine : exitCodes.problems;
}

function stop(problems: readonly Problem[]): number {
  sayProblems(problems);
  return exitCodes.problems;
}

function withheldNote({ cells, withheld, sheets }: NonNullable<NotebookPage['withheld']>): string {
  const whole = sheets.length === 0 ? '' : `, and with them all of ${sheets.join(', ')}`;
  return `, for the public: ${withheld} of ${cells} numbers withheld${whole}`;
}
