import type { EvaluatedInput } from '../notebook/evaluated.js';
import { rowNames } from '../notebook/sheet-row.js';
import { showFraction, showInterval, showResult } from '../notebook/shown.js';
import { modelsOf, type Trace, type TracedCount, traceCell, traceFigure } from '../notebook/trace.js';
import type { NotebookWorkings } from '../notebook/workings.js';
import { describeProblem } from '../problem/describe.js';
import { nearestName } from '../problem/nearest.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import { exitCodes } from './exit-codes.js';
import { openChosen } from './open-chosen.js';
import { problemJson } from './problem-json.js';
import { resultJson } from './result-json.js';
import { grouped, say, sayJson, sayProblems } from './terminal.js';

/** The words of `rampbook trace`. */
export interface TraceWords {
  readonly notebook: string;
  readonly figure: string;
  readonly store: string;
  readonly only?: readonly string[];
  readonly with?: readonly string[];
  readonly json?: boolean;
}

/**
 * Shows what a figure stands on: formula, inputs, and records counted and left out, by file and line; of a choice, as a page
 * of that choice shows the figure.
 */
export async function traceCommand({ notebook: file, figure, store, json, ...words }: TraceWords): Promise<number> {
  const chosen = await openChosen(file, store, words);
  if ('problems' in chosen) return stop(chosen.problems, json);
  const { workings: opened, said } = chosen;
  const cell = cellForm.exec(figure);
  const trace = cell === null ? traceFigure(opened, figure) : traceCell(opened, cell[1]!, cell[2]!, cell[3]!);
  if (trace === null)
    return stop(
      [cell === null ? unknownFigure(file, figure, opened.notebook.figures.keys()) : unknownCell(file, figure, opened)],
      json,
    );
  if (json === true) sayJson(said === null ? traceJson(trace) : { choice: said, ...traceJson(trace) });
  else {
    for (const sentence of said ?? []) say(sentence);
    sayTrace(trace);
  }
  if (trace.result.kind !== 'problem') return exitCodes.fine;
  sayProblems(trace.result.problems);
  return exitCodes.problems;
}

/** A cell as SHEET.COLUMN[ROW]. */
const cellForm = /^([a-z0-9_]+)\.([a-z0-9_]+)\[(.*)\]$/;

function stop(problems: readonly Problem[], json: boolean | undefined): number {
  if (json === true) sayJson({ stopped: problems.map(problemJson) });
  sayProblems(problems);
  return exitCodes.problems;
}

function unknownFigure(file: string, figure: string, names: Iterable<string>): Problem {
  const known = [...names];
  const nearest = nearestName(figure, known);
  const remedy = nearest === null ? `Figures are ${known.join(', ')}.` : `Did you mean "${nearest}"?`;
  return {
    code: 'unknown-figure',
    severity: 'stops',
    place: wholeFile(file),
    seen: figure,
    wanted: 'a figure of this notebook',
    remedy,
  };
}

/** What is known nearest to a cell that there is not: the sheets, or a sheet's columns, or its rows. */
function unknownCell(file: string, cell: string, { notebook, sheets }: NotebookWorkings): Problem {
  const [, sheetName = '', column = '', row = ''] = cellForm.exec(cell) ?? [];
  const wanted = 'a cell of a sheet as SHEET.COLUMN[ROW], ROW being what stands at its head, with commas between';
  const sheet = notebook.sheets.get(sheetName);
  const columns = sheet?.columns.filter(({ role }) => role === 'value').map(({ name }) => name) ?? [];
  const rows = sheets.get(sheetName);
  const [what, seen, known] =
    sheet === undefined || rows === undefined
      ? (['Sheets', sheetName, [...notebook.sheets.keys()]] as const)
      : columns.includes(column)
        ? (['Rows', row, rowNames(rows)] as const)
        : (['Columns', column, columns] as const);
  const nearest = nearestName(seen, known);
  const some = known.slice(0, 12).join('; ') + (known.length > 12 ? '; …' : '');
  const remedy = nearest === null ? `${what} are ${some}.` : `Did you mean "${nearest}"?`;
  return { code: 'unknown-cell', severity: 'stops', place: wholeFile(file), seen: cell, wanted, remedy };
}

function traceJson({ name, formula, shownAs, result, inputs, standsOn, counts }: Trace): object {
  return {
    figure: name,
    formula,
    ...resultJson(result, shownAs),
    inputs: inputs.map((input) => ({
      name: input.name,
      ...resultJson(input.value, ''),
      unit: input.unit,
      source: input.source,
    })),
    stands_on: standsOn.map((other) => ({
      name: other.name,
      formula: other.formula,
      ...resultJson(other.result, other.shownAs),
    })),
    counts: counts.map(({ leftOut, setAside, files, ...count }) => ({
      ...count,
      files: files.map(({ file, rows, lines }) => ({ file, rows, lines })),
      left_out: { not_matching: leftOut.otherwise, not_known: leftOut.unknown, without_value: leftOut.missing },
      set_aside: setAside,
    })),
  };
}

function sayTrace({ name, formula, shownAs, result, inputs, standsOn, counts }: Trace): void {
  const fraction = result.kind === 'number' ? showFraction(result) : '';
  say(`${name} = ${formula}`);
  say(
    `  ${[showResult(result, shownAs), showInterval(result, shownAs), fraction].filter((text) => text !== '').join('; ')}`,
  );
  if (result.kind === 'number' && result.interval !== null) say(`  interval by ${result.interval.method}`);
  if ('why' in result && result.why !== null) say(`  ${result.why}`);
  if (result.kind === 'number') for (const caution of result.cautions) say(`  caution: ${caution}`);
  if (result.kind === 'problem') for (const problem of result.problems) say(`  ${describeProblem(problem)}`);
  if (inputs.length > 0) say('\nInputs');
  for (const input of inputs) say(`  ${input.name} = ${showInput(input)}, from ${input.source || 'no source given'}`);
  if (standsOn.length > 0) say('\nStands on');
  for (const other of standsOn) say(`  ${other.name} = ${other.formula}: ${showResult(other.result, other.shownAs)}`);
  for (const model of modelsOf(counts)) say(`\nNot a count of records, but made by: ${model}`);
  for (const count of counts) sayCount(count);
  saySetAside(counts.filter(({ considered }) => considered > 0));
}

/** An input with its unit; a year has no thousands, and a percentage is said as one. */
function showInput({ value, unit }: EvaluatedInput): string {
  if (unit === 'percent') return showResult(value, 'percent');
  return unit === 'year' ? showResult(value, 'year') : `${showResult(value, '')} ${unit}`.trim();
}

const mostRanges = 12;

function sayCount({ table, description, counted, considered, model, leftOut, files }: TracedCount): void {
  if (model !== null && considered === 0) return;
  say(`\n${model === null ? 'Counted' : 'Made of'}: ${description}`);
  say(`  ${grouped(counted)} of ${grouped(considered)} rows of ${table}`);
  if (leftOut.otherwise > 0) say(`  left out: ${grouped(leftOut.otherwise)} that do not meet the conditions`);
  if (leftOut.unknown > 0) say(`  left out: ${grouped(leftOut.unknown)} for which a condition met a missing value`);
  if (leftOut.missing > 0) say(`  left out: ${grouped(leftOut.missing)} without the value asked for`);
  for (const { file, rows, stretches, first } of files) {
    const more =
      stretches > mostRanges ? `, and ${grouped(stretches - mostRanges)} more stretches (--json lists all)` : '';
    say(`  ${file}: ${grouped(rows)} rows, lines ${first(mostRanges).join(', ')}${more}`);
  }
}

/** What was set aside on import among the tables that were counted, each file once. */
function saySetAside(counts: readonly TracedCount[]): void {
  const files = new Map(counts.flatMap(({ setAside }) => setAside.map((aside) => [aside.file, aside] as const)));
  if (files.size === 0) return;
  say('\nSet aside on import, so never considered');
  for (const { file, rows, problems } of files.values()) {
    const reasons = Object.entries(problems).map(([code, times]) => `${code} ${grouped(times)}`);
    say(`  ${file}: ${grouped(rows)} rows (${reasons.join(', ')})`);
  }
}
