import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import type { Declared } from './declared.js';
import type { NotebookDocument } from './document.js';
import type { EvaluatedNotebook } from './evaluated.js';
import { cellProblem } from './formula-cell.js';

type Made = Pick<EvaluatedNotebook, 'figures' | 'inputs' | 'sheets'>;

/** Tells values in prose that no figure or input of the notebook gives. */
export function checkProse(
  document: NotebookDocument,
  made: Made,
  declared: ReadonlyMap<string, Declared>,
  problems: Problem[],
): void {
  for (const { name } of document.proseValues) {
    if (made.figures.has(name.text) || made.inputs.has(name.text)) continue;
    const known = [...made.figures.keys(), ...made.inputs.keys()];
    const nearest = nearestName(name.text, known);
    const other = declared.get(name.text);
    const remedy =
      other !== undefined
        ? `"${name.text}" is a ${other.kind}; only a figure or an input has a single value.`
        : nearest === null
          ? 'Declare it in a table of figures, or take the braces away.'
          : `Did you mean "${nearest}"?`;
    problems.push(cellProblem(document.file, name, 'unknown-name', 'the name of a figure or an input', remedy));
  }
}

/** Tells charts of sheets that the notebook does not declare. */
export function checkCharts(document: NotebookDocument, made: Made, problems: Problem[]): void {
  for (const part of document.parts) {
    if (part.kind !== 'chart' || made.sheets.has(part.chart.sheet)) continue;
    const { sheet: text, line, column } = part.chart;
    const nearest = nearestName(text, made.sheets.keys());
    const remedy =
      nearest === null ? 'Declare the sheet with a sentence, or correct the name.' : `Did you mean "${nearest}"?`;
    problems.push(cellProblem(document.file, { text, line, column }, 'unknown-sheet', 'the name of a sheet', remedy));
  }
}
