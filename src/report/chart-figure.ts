import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { colours } from '../chart/colours.js';
import { type DrawnWidths, drawChart, unfitProblems } from '../chart/draw-chart.js';
import type { Drawn } from '../chart/drawn.js';
import type { ChartRequest, EvaluatedNotebook, EvaluatedSheet } from '../notebook/evaluated.js';
import { isWithheld } from '../notebook/shown.js';
import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import { anchor } from './anchor.js';
import { craftChoice } from './craft-choice.js';
import { downloadLink } from './download.js';
import { handout } from './handout/handout.js';
import { problemBox } from './problem-box.js';
import { tableElement } from './table.js';
import { words } from './words.js';

/**
 * A chart as a figure with its caption and the table of its numbers, or its problems in its place. Drawn at both widths, the
 * page's style shows the one that fits.
 */
export function chartFigure(
  request: ChartRequest,
  notebook: EvaluatedNotebook,
  widths: DrawnWidths = 'both',
): { readonly element: Element; readonly problems: readonly Problem[] } {
  const sheet = notebook.sheets.get(request.sheet);
  if (sheet !== undefined && request.kind === 'handout') {
    // A handout lists parts by how often they are fouled, and would put those withheld beside those without findings.
    if (holdsWithheld(sheet)) return undrawnFigure(request, words.chartWithheld);
    if (sheet.failed === true) return undrawnFigure(request, words.chartFailed);
    const made = handout(request, sheet, notebook);
    if (!('unfit' in made)) return { element: made.element, problems: [] };
    const problems = unfitProblems(made.unfit, request, notebook.file);
    return isAnswer(problems, sheet) ? undrawnFigure(request, problems[0]!.remedy) : problemFigure(request, problems);
  }
  const drawn =
    sheet === undefined
      ? { problems: [unknownSheet(request, notebook)] }
      : drawChart(request, sheet, notebook.file, widths);
  if ('problems' in drawn) {
    const isWritten = drawn.problems.some(({ code }) => writtenWrong.test(code));
    if (asksWhatFailed(sheet, drawn.problems)) return undrawnFigure(request, words.chartFailed);
    if (isAnswer(drawn.problems, sheet)) {
      const undrawn = undrawnFigure(request, drawn.problems[0]!.remedy);
      if (request.kind !== 'craft') return undrawn;
      return { element: craftChoice(undrawn.element, request.caption, request, notebook), problems: [] };
    }
    return !isWritten && holdsWithheld(sheet)
      ? undrawnFigure(request, words.chartWithheld)
      : problemFigure(request, drawn.problems);
  }
  const figure = figureElement(request, drawn.chart, notebook);
  return {
    element: request.kind === 'craft' ? craftChoice(figure, drawn.chart.caption, request, notebook) : figure,
    problems: [],
  };
}

/** The codes of mistakes in a chart's address: all others come from what stands in the sheet. */
const writtenWrong = /^(unknown-|lacking-|bad-)/;

function holdsWithheld(sheet: EvaluatedSheet | undefined): boolean {
  if (sheet === undefined) return false;
  return sheet.withheld === true || sheet.rows.some(({ cells }) => cells.some(isWithheld));
}

/** Whether nothing is drawn since nothing like it was recorded, or nothing of it chosen: an answer, and no mistake. */
function isAnswer(problems: readonly Problem[], sheet: EvaluatedSheet | undefined): boolean {
  const isEmpty = sheet?.rows.length === 0;
  return (
    problems.length > 0 &&
    problems.every(({ code }) => code === 'no-such-craft' || (isEmpty && code === 'nothing-to-draw'))
  );
}

/** Whether a chart asks only for what could not be computed, so that nothing is wrong with the chart itself. */
function asksWhatFailed(sheet: EvaluatedSheet | undefined, problems: readonly Problem[]): boolean {
  if (sheet?.failed === true) return true;
  const failed = sheet?.failedColumns ?? [];
  return problems.every(({ code, seen }) => code === 'unknown-column' && failed.includes(seen));
}

/** A chart that is not drawn, for a reason that is no mistake of its own. */
function undrawnFigure(
  request: ChartRequest,
  why: string,
): { readonly element: Element; readonly problems: readonly Problem[] } {
  const children = [h('figcaption', [request.caption]), h('p', { className: ['note'] }, [why])];
  return { element: h('figure', { id: anchor('chart', request.name) }, children), problems: [] };
}

function problemFigure(
  request: ChartRequest,
  problems: readonly Problem[],
): { readonly element: Element; readonly problems: readonly Problem[] } {
  const children = [problemBox(problems), h('figcaption', [request.caption])];
  return { element: h('figure', { id: anchor('chart', request.name) }, children), problems };
}

function figureElement(request: ChartRequest, chart: Drawn, notebook: EvaluatedNotebook): Element {
  return h('figure', { id: anchor('chart', request.name) }, [
    h('figcaption', { id: anchor('caption', request.name) }, [chart.caption]),
    h(
      'div',
      { className: ['scroll', 'chart'], role: 'group', ariaLabelledBy: anchor('caption', request.name), tabIndex: 0 },
      drawingsOf(chart),
    ),
    h('p', { className: ['note'] }, [chart.reading.join(' ')]),
    numbersOf(request, chart, notebook),
  ]);
}

function drawingsOf({ svg, narrow, isNarrow }: Drawn): Element[] {
  if (narrow === undefined && isNarrow === undefined) return [svg];
  const marked = (drawing: Element, width: string): Element => {
    return { ...drawing, properties: { ...drawing.properties, className: ['drawing', width] } };
  };
  return narrow === undefined ? [marked(svg, 'alone')] : [marked(svg, 'wide'), marked(narrow, 'narrow')];
}

/** The numbers of a chart: beside a drawing that is read together with them, else opened on request. */
function numbersOf(request: ChartRequest, chart: Drawn, notebook: EvaluatedNotebook): Element {
  const { head, rows, rowIds, open } = chart.dataTable;
  const table = tableElement({
    id: anchor('numbers', request.name),
    caption: chart.caption,
    heads: 1,
    head: head.map((content) => ({ content })),
    rows: rows.map((row, at) =>
      row.map((content, column) =>
        column > 0 || rowIds === undefined ? { content } : { content: [h('span', { id: rowIds[at]! }, [content])] },
      ),
    ),
  });
  if (open === true) return h('div', { className: ['numbers'] }, [table]);
  return h('details', { className: tableStandsOn(notebook, request.sheet) ? ['numbers', 'repeated'] : ['numbers'] }, [
    h('summary', [words.chartData]),
    table,
    ...specificationLink(request, chart, notebook),
  ]);
}

/** Whether the page shows the sheet as a table too, so that paper need not carry its numbers twice. */
function tableStandsOn(notebook: EvaluatedNotebook, sheet: string): boolean {
  return notebook.blocks.some((block) => block.kind === 'sheet' && block.name === sheet);
}

function specificationLink(request: ChartRequest, chart: Drawn, notebook: EvaluatedNotebook): ElementContent[] {
  if (chart.specification === null) return [];
  const text = inOwnColours(JSON.stringify(chart.specification));
  const file = `${notebook.name}-${request.name}.json`;
  return [h('p', { className: ['downloads'] }, [downloadLink(text, file, 'application/json', words.specification)])];
}

/** A specification that can be drawn away from the page, whose variables hold its colours. */
function inOwnColours(specification: string): string {
  return specification
    .replace(/var\(--([\w-]+)\)/g, (_, name: string) => colours[name]!.light)
    .replace(/url\(#[^)]*\)/g, colours.paper!.light);
}

function unknownSheet(request: ChartRequest, notebook: EvaluatedNotebook): Problem {
  const nearest = nearestName(request.sheet, notebook.sheets.keys());
  return {
    code: 'unknown-sheet',
    severity: 'sets aside',
    place: inDocument(notebook.file, request.line, request.column),
    seen: request.sheet,
    wanted: 'the name of a sheet of this notebook',
    remedy: nearest === null ? 'Declare the sheet, or draw another.' : `Did you mean "${nearest}"?`,
  };
}
