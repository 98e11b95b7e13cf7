import type { DrawnWidths } from '../../chart/draw-chart.js';
import type { Problem } from '../../problem/problem.js';
import { currentLocale } from '../../record/written-numbers.js';
import { chartFigure } from '../chart-figure.js';
import { drawnBy } from '../handout/drawn-by.js';
import { handoutAddress } from '../handout/handout-address.js';
import type { DrawFigure } from '../page-parts.js';

type Figure = ReturnType<DrawFigure>;

const mostKept = 200;

/** Draws charts, and gives back the drawing it made before where neither the request nor the sheet has changed. */
export function rememberedCharts(widths?: DrawnWidths): DrawFigure {
  const drawn = new Map<string, Figure>();
  return (request, notebook) => {
    const { line: _line, column: _column, ...wish } = request;
    const sheet = notebook.sheets.get(request.sheet);
    const isShown = notebook.blocks.some((block) => block.kind === 'sheet' && block.name === request.sheet);
    const isHandout = request.kind === 'handout';
    const others = isHandout ? [drawnBy(request, notebook), handoutAddress(request, notebook)] : null;
    const key = JSON.stringify([currentLocale(), wish, isShown, others, notebook.name, sheet?.columns, sheet?.rows]);
    const kept = drawn.get(key);
    // Drawn anew, the drawing stands last: what nobody asked for in a long time is let go first.
    const figure = kept ?? chartFigure(request, notebook, widths);
    drawn.delete(key);
    if (!hasPlaces(figure.problems)) drawn.set(key, figure);
    if (drawn.size > mostKept) drawn.delete(drawn.keys().next().value!);
    return figure;
  };
}

/** Problems say where they are, so that a figure with any holds only for the lines it was drawn for. */
function hasPlaces(problems: readonly Problem[]): boolean {
  return problems.length > 0;
}
