import { craftOptions } from '../../chart/kinds/craft.js';
import type { ChartRequest, EvaluatedNotebook } from '../../notebook/evaluated.js';

/** The name of the chart on a handout's page that draws its craft from the same sheet by the same words; null where none does. */
export function drawnBy(handout: ChartRequest, { blocks }: EvaluatedNotebook): string | null {
  const isSame = ({ kind, sheet, options }: ChartRequest): boolean =>
    kind === 'craft' &&
    sheet === handout.sheet &&
    craftOptions.every(({ word }) => options[word] === handout.options[word]);
  const charts = blocks.flatMap((block) => (block.kind === 'chart' && isSame(block.chart) ? [block.chart.name] : []));
  return charts[0] ?? null;
}
