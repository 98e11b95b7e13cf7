import { dayAsText } from '../finding/book/calendar.js';
import type { Result } from '../formula/result.js';
import type { EvaluatedNotebook, EvaluatedSheet, SheetColumn } from '../notebook/evaluated.js';
import { showInterval, showResult } from '../notebook/shown.js';
import { problemJson } from './problem-json.js';

/** A result as JSON: an estimate as value, low, high, numerator, denominator, method and unit; missing as null with why. */
export function resultJson(result: Result, shownAs: string): object {
  const shown = [showResult(result, shownAs), showInterval(result, shownAs)].filter((text) => text !== '').join(', ');
  switch (result.kind) {
    case 'number': {
      const { value, unit, numerator, denominator, interval, why, cautions } = result;
      return {
        value,
        low: interval?.low ?? null,
        high: interval?.high ?? null,
        numerator,
        denominator,
        method: interval?.method ?? null,
        unit,
        ...(interval === null ? {} : { confidence: interval.confidence, sides: interval.sides }),
        ...(why === null ? {} : { why }),
        ...(cautions.length === 0 ? {} : { cautions }),
        shown,
      };
    }
    case 'text':
      return { value: result.code ?? result.text, shown };
    case 'date':
      return { value: dayAsText(result.day), shown };
    case 'truth':
      return { value: result.truth, shown };
    case 'missing':
      return { value: null, why: result.why, shown };
    case 'problem':
      return { value: null, problems: result.problems.map(problemJson) };
  }
}

/** A cell as JSON; a year that is a key is shown as it stands in the records, without marks between its digits. */
function cellJson(cell: Result, { role, shownAs }: SheetColumn): object {
  const json = resultJson(cell, shownAs);
  const isPlain = role === 'key' && shownAs === '' && cell.kind === 'number' && cell.value !== null;
  return isPlain ? { ...json, shown: String(cell.value) } : json;
}

function sheetJson({ sentence, columns, rows, notes, problems }: EvaluatedSheet): object {
  return {
    sentence,
    columns: columns.map(({ name, role, formula, shownAs }) => ({ name, role, formula, shown_as: shownAs })),
    rows: rows.map(({ cells }) =>
      Object.fromEntries(cells.map((cell, at) => [columns[at]!.name, cellJson(cell, columns[at]!)])),
    ),
    notes,
    problems: problems.map(problemJson),
  };
}

function entries<Value>(map: ReadonlyMap<string, Value>, json: (value: Value) => object): object {
  return Object.fromEntries([...map].map(([name, value]) => [name, json(value)]));
}

/** A computed notebook as JSON: every input, figure and sheet by name, and every problem. */
export function notebookJson(notebook: EvaluatedNotebook): object {
  return {
    notebook: notebook.file,
    title: notebook.title,
    fingerprint: notebook.fingerprint,
    inputs: entries(notebook.inputs, ({ value, unit, source }) => ({ ...resultJson(value, ''), unit, source })),
    selections: entries(notebook.selections, ({ formula, table, rows }) => ({ formula, table, rows })),
    figures: entries(notebook.figures, ({ formula, shownAs, result }) => ({
      ...resultJson(result, shownAs),
      formula,
      shown_as: shownAs,
    })),
    sheets: entries(notebook.sheets, sheetJson),
    problems: notebook.problems.map(problemJson),
  };
}
