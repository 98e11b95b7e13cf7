import { restrictedBook } from '../finding/book/restricted-book.js';
import { type AskedColumns, watchedBook } from '../finding/book/watched-book.js';
import { Memory } from '../notebook/memory.js';
import { shownNotebook } from '../notebook/withhold/shown-notebook.js';
import type { WithheldNotebook } from '../notebook/withhold/withheld-notebook.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import { changesPageName, folderPageName } from '../report/folder/folder-page-names.js';
import { languagePageName } from '../report/language-page-name.js';
import { methodsPageName } from '../report/methods-page-name.js';
import { renderPage } from '../report/page.js';
import type { PageContext } from '../report/page-context.js';
import type { Paper } from '../report/style/paper.js';
import { absentSeasons } from './absent-season.js';
import { livePageOf } from './live-page-of.js';
import { type OpenedNotebook, openNotebook } from './open-notebook.js';
import { pageContextOf } from './page-context-of.js';
import type { CommandChoice } from './read-choice.js';

/** A notebook as `rampbook report` writes it, or what keeps it from being written. */
export interface NotebookPage {
  /** The notebook's name, and the page's file name without its ending; empty where there is no page. */
  readonly name: string;
  readonly html: string | null;
  /** How much a page for the public withholds; null on any other. */
  readonly withheld: Pick<WithheldNotebook, 'cells' | 'withheld' | 'sheets'> | null;
  /** The page as it is made to be printed; null where nobody asked. */
  readonly printed: string | null;
  readonly problems: readonly Problem[];
  /** What is told beside them, and makes no exit code. */
  readonly hints?: readonly Problem[];
}

const noPage = { name: '', html: null, printed: null, withheld: null };

/** Computes a notebook for what was chosen and makes its page, and on paper that page again as it is to be printed. */
export function notebookPage(file: string, book: Book, choice: CommandChoice, paper: Paper | null): NotebookPage {
  const failed = (problem: Problem): NotebookPage => ({ ...noPage, problems: [problem] });
  const memory = new Memory();
  const records = restrictedBook(book, choice.only);
  const watched = watchedBook(records, () => memory.making ?? '');
  const opened = openNotebook(file, watched.book, { memory, inputs: choice.inputs });
  if ('problem' in opened) return failed(opened.problem);
  const { notebook } = opened;
  const taken = [methodsPageName, languagePageName, folderPageName, changesPageName].find(
    (name) => name === `${notebook.name}.html`,
  );
  if (taken !== undefined) return failed(nameTaken(file, `${taken} stands beside every report`));
  const { settings } = opened;
  if (settings.public && choice.only.size > 0) return failed(choiceOfPublic(file));
  const { notebook: shown, withheld } = shownNotebook(opened);
  const context = pageContextOf(opened);
  const { live, chosen } = choiceOnPage(opened, watched.asked, choice);
  const page = renderPage(shown, { ...context, ...(live === undefined ? {} : { live }), ...shownFor(chosen) });
  const printed = paper === null ? null : renderPage(shown, forPaper(context, paper, chosen ?? live?.said)).html;
  return {
    name: notebook.name,
    html: page.html,
    printed,
    withheld: withheld && { cells: withheld.cells, withheld: withheld.withheld, sheets: withheld.sheets },
    problems: [...notebook.problems, ...page.problems],
    hints: absentSeasons(notebook, records),
  };
}

function shownFor(chosen: readonly string[] | undefined): Pick<PageContext, 'chosen'> {
  return chosen === undefined ? {} : { chosen };
}

/** What a printed page says of itself: which choice it shows, and no account that only a script could open. */
function forPaper({ cell, ...context }: PageContext, paper: Paper, said: readonly string[] | undefined): PageContext {
  return { ...context, ...shownFor(said), paper };
}

/** A page made for a choice shows that one and says so; one of all records lets its reader choose. */
function choiceOnPage(
  opened: OpenedNotebook,
  asked: AskedColumns,
  choice: CommandChoice,
): Pick<PageContext, 'live' | 'chosen'> {
  const tables = [...asked.keys()].map((name) => opened.book.tables.get(name)!);
  const chosen = choice.said(opened.written, tables);
  if (chosen !== null) return { chosen };
  const live = livePageOf(opened, asked);
  return live === null ? {} : { live };
}

/** Two public pages of different choices would tell what each withholds by their difference. */
function choiceOfPublic(file: string): Problem {
  const wanted = 'all records on a page for the public';
  const remedy = 'Render it without --only, or take "public: yes" out of the notebook’s head.';
  return { code: 'public-choice', severity: 'stops', place: wholeFile(file), seen: '--only', wanted, remedy };
}

/** Two pages cannot have one name. */
export function nameTaken(file: string, because: string): Problem {
  const wanted = `a notebook of another name, because ${because}`;
  const remedy = 'Give the notebook’s file another name.';
  return { code: 'name-taken', severity: 'stops', place: wholeFile(file), seen: file, wanted, remedy };
}
