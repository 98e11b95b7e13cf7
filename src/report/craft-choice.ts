import type { Element } from 'hast';
import { h } from 'hastscript';
import type { ChartRequest, EvaluatedNotebook } from '../notebook/evaluated.js';

/**
 * The figure of a drawn craft, folded under its caption: of all drawn craft of a page one is open at a time, the first until
 * a reader chooses, with no script at work. On paper all stand open.
 */
export function craftChoice(
  figure: Element,
  caption: string,
  request: ChartRequest,
  notebook: EvaluatedNotebook,
): Element {
  const first = notebook.blocks.find((block) => block.kind === 'chart' && block.chart.kind === request.kind);
  const isFirst = first?.kind === 'chart' && first.chart.name === request.name;
  return h('details', { className: ['craft-choice'], name: 'craft', open: isFirst }, [h('summary', [caption]), figure]);
}
