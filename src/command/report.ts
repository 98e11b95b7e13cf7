import { mkdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from '../problem/problem.js';
import { wholeFile } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import { languagePage } from '../report/language-page.js';
import { languagePageName } from '../report/language-page-name.js';
import { methodsPage } from '../report/methods-page.js';
import { methodsPageName } from '../report/methods-page-name.js';
import { renderPage } from '../report/page.js';
import { exitCodes } from './exit-codes.js';
import { openNotebook } from './open-notebook.js';
import { openSeason } from './open-season.js';
import { pageContextOf } from './page-context-of.js';
import { startProgress } from './progress.js';
import { say, sayProblems } from './terminal.js';

/** The words of `rampbook report`. */
export interface ReportWords {
  readonly notebooks: readonly string[];
  readonly store: string;
  readonly to: string;
  readonly quiet?: boolean;
}

/** Writes each notebook as a page, and the methods and the reference of the language beside them; a notebook with problems is written too, shows them in place, and makes the exit code 1. */
export async function reportCommand({ notebooks, store, to, quiet }: ReportWords): Promise<number> {
  const season = await openSeason(store, notebooks);
  if ('problems' in season) return stop(season.problems);
  const folder = openFolder(to);
  if (folder !== null) return stop([folder]);
  const progress = startProgress(quiet === true);
  const problems: Problem[] = [];
  const written: string[] = [];
  notebooks.forEach((file, at) => {
    progress.show(`rendering ${file}`, at / notebooks.length);
    const page = render(file, season.book);
    problems.push(...page.problems);
    if (page.html === null) return;
    const path = join(to, `${page.name}.html`);
    writeWhole(path, page.html);
    written.push(path);
  });
  for (const [name, html] of [
    [methodsPageName, methodsPage()],
    [languagePageName, languagePage()],
  ] as const) {
    const path = join(to, name);
    writeWhole(path, html);
    written.push(path);
  }
  progress.end();
  for (const path of written) say(`wrote ${path}`);
  sayProblems(problems);
  return problems.length === 0 ? exitCodes.fine : exitCodes.problems;
}

function stop(problems: readonly Problem[]): number {
  sayProblems(problems);
  return exitCodes.problems;
}

function openFolder(folder: string): Problem | null {
  const found = statSync(folder, { throwIfNoEntry: false });
  if (found === undefined) mkdirSync(folder, { recursive: true });
  if (found === undefined || found.isDirectory()) return null;
  const place = wholeFile(folder);
  const remedy = 'Give --to a folder, or a name that is not taken.';
  return { code: 'is-a-file', severity: 'stops', place, seen: 'a file', wanted: 'a folder for the pages', remedy };
}

interface Page {
  readonly name: string;
  readonly html: string | null;
  readonly problems: readonly Problem[];
}

function render(file: string, book: Book): Page {
  const opened = openNotebook(file, book);
  if ('problem' in opened) return { name: '', html: null, problems: [opened.problem] };
  const { notebook } = opened;
  const taken = [methodsPageName, languagePageName].find((name) => name === `${notebook.name}.html`);
  if (taken !== undefined) return { name: '', html: null, problems: [nameOfReference(file, taken)] };
  const page = renderPage(notebook, pageContextOf(opened));
  return { name: notebook.name, html: page.html, problems: [...notebook.problems, ...page.problems] };
}

function nameOfReference(file: string, taken: string): Problem {
  const wanted = `a notebook of another name, because ${taken} stands beside every report`;
  const remedy = 'Give the notebook’s file another name.';
  return { code: 'name-taken', severity: 'stops', place: wholeFile(file), seen: file, wanted, remedy };
}

/** Writes beside, then renames, so that a page is there whole or not at all. */
function writeWhole(path: string, text: string): void {
  const beside = `${path}.writing-${process.pid}`;
  try {
    writeFileSync(beside, text);
    renameSync(beside, path);
  } finally {
    rmSync(beside, { force: true });
  }
}
