import type { Result } from '../formula/result.js';
import type { EvaluatedSheet, SheetColumn } from '../notebook/evaluated.js';
import { showFraction, showInterval, showNumber, showResult } from '../notebook/shown.js';
import { absentSeasons } from './absent-season.js';
import { exitCodes } from './exit-codes.js';
import { openChosen } from './open-chosen.js';
import { problemJson } from './problem-json.js';
import { notebookJson } from './result-json.js';
import { say, sayJson, sayProblems, sayTable } from './terminal.js';

/** The words of `rampbook evaluate`. */
export interface EvaluateWords {
  readonly notebook: string;
  readonly store: string;
  readonly only?: readonly string[];
  readonly with?: readonly string[];
  readonly json?: boolean;
}

/** Prints every figure and sheet of a notebook; problems go to the error stream and make the exit code 1. */
export async function evaluateCommand({ notebook: file, store, json, ...words }: EvaluateWords): Promise<number> {
  const opened = await openChosen(file, store, words);
  if ('problems' in opened) {
    if (json === true) sayJson({ stopped: opened.problems.map(problemJson) });
    sayProblems(opened.problems);
    return exitCodes.problems;
  }
  const { notebook } = opened.workings;
  if (json === true) sayJson(notebookJson(notebook));
  else {
    say(notebook.title);
    say();
    sayTable([...notebook.figures.values()].map(({ name, result, shownAs }) => [name, ...inWords(result, shownAs)]));
    for (const sheet of notebook.sheets.values()) saySheet(sheet);
  }
  sayProblems([...absentSeasons(notebook, opened.records), ...notebook.problems]);
  return notebook.problems.length === 0 ? exitCodes.fine : exitCodes.problems;
}

function inWords(result: Result, shownAs: string): readonly string[] {
  const why = 'why' in result && result.why !== null ? result.why : '';
  const fraction = result.kind === 'number' ? showFraction(result) : '';
  return [showResult(result, shownAs), showInterval(result, shownAs) || why, fraction];
}

/** A key as it stands in the records, a year without marks between its digits; any other cell with its limits. */
function cellOf(cell: Result, { role, shownAs }: SheetColumn): string {
  return role === 'key' && cell.kind === 'number' && cell.value !== null
    ? String(cell.value)
    : cellInWords(cell, shownAs);
}

/** A cell with its limits: no cases are never a bare zero. */
function cellInWords(cell: Result, shownAs: string): string {
  if (cell.kind !== 'number' || cell.interval === null) return showResult(cell, shownAs);
  const { low, high, sides } = cell.interval;
  const limit = (value: number | null) => (value === null ? '?' : showNumber(value, shownAs, cell.unit));
  const limits = {
    two: `${limit(low)} to ${limit(high)}`,
    upper: `at most ${limit(high)}`,
    lower: `at least ${limit(low)}`,
  };
  return `${showResult(cell, shownAs)} (${limits[sides]})`;
}

function saySheet({ name, sentence, columns, rows }: EvaluatedSheet): void {
  say();
  say(`${name}: ${sentence}`);
  sayTable([
    columns.map(({ label }) => label),
    ...rows.map(({ cells }) => cells.map((cell, at) => cellOf(cell, columns[at]!))),
  ]);
}
