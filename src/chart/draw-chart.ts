import { isOfAccount } from '../notebook/account-notes.js';
import type { ChartRequest, EvaluatedSheet } from '../notebook/evaluated.js';
import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import { askChart } from './ask-chart.js';
import { drawingWidths } from './axes.js';
import type { AskedChart, Unfit } from './chart-kind.js';
import { chartKinds } from './chart-kinds.js';
import { dataTable } from './data-table.js';
import type { Drawn } from './drawn.js';

/** At which widths a chart is drawn. */
export type DrawnWidths = keyof typeof drawingWidths | 'both';

/**
 * The chart that a notebook asks for, drawn from its sheet, or everything that is wrong with the request, at its place in
 * `file`. The same request and sheet give the same drawing on any machine. What has no narrow drawing is drawn wide.
 */
export function drawChart(
  request: ChartRequest,
  sheet: EvaluatedSheet,
  file: string,
  widths: DrawnWidths = 'wide',
): { readonly chart: Drawn } | { readonly problems: readonly Problem[] } {
  const problems = (unfit: readonly Unfit[]) => ({ problems: unfitProblems(unfit, request, file) });
  const kind = chartKinds.find(({ name }) => name === request.kind);
  if (kind === undefined) return problems([unknownKind(request.kind)]);
  const checked = askChart(request, kind, sheet);
  if ('unfit' in checked) return problems(checked.unfit);
  if (sheet.rows.length === 0) return problems([emptySheet(sheet)]);
  const wished = kind.wideOnly === true || widths === 'wide' ? null : kind.draw(narrowed(checked.asked));
  const narrow = wished !== null && 'svg' in wished ? wished : null;
  const isNarrow = narrow !== null && widths === 'narrow';
  const drawing = isNarrow ? narrow : kind.draw(checked.asked);
  if ('code' in drawing) return problems([drawing]);
  const more = {
    ...(narrow !== null && widths === 'both' ? { narrow: narrow.svg } : {}),
    ...(isNarrow ? { isNarrow: true as const } : {}),
  };
  return { chart: { caption: request.caption, dataTable: dataTable(checked.asked), ...drawing, ...more } };
}

function narrowed(asked: AskedChart): AskedChart {
  const request = { ...asked.request, name: `${asked.request.name}-narrow` };
  return { ...asked, request, width: drawingWidths.narrow };
}

/** Why a request cannot be met, as problems at its place in `file`. */
export function unfitProblems(unfit: readonly Unfit[], request: ChartRequest, file: string): readonly Problem[] {
  const place = inDocument(file, request.line, request.column);
  return unfit.map((wrong) => ({ severity: 'sets aside' as const, place, ...wrong }));
}

function unknownKind(name: string): Unfit {
  const names = chartKinds.map((kind) => kind.name);
  const nearest = nearestName(name, names);
  return {
    code: 'unknown-chart',
    seen: name,
    wanted: 'a kind of chart',
    remedy: nearest === null ? `Charts are ${names.join(', ')}.` : `Did you mean "${nearest}"?`,
  };
}

/** What a sheet says of itself beside its account: why it is empty, where a finding knows. */
function saidOf({ notes }: EvaluatedSheet): string {
  const said = notes.filter((note) => !isOfAccount(note) && !note.startsWith('Caution: '));
  return said.length === 0 ? '' : ` It says: ${said.join(' ')}`;
}

function emptySheet(sheet: EvaluatedSheet): Unfit {
  return {
    code: 'nothing-to-draw',
    seen: sheet.name,
    wanted: 'a sheet with rows',
    remedy: `Nothing fell into this sheet: look at its rows and conditions.${saidOf(sheet)}`,
  };
}
