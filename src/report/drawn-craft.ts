import type { EvaluatedNotebook } from '../notebook/evaluated.js';

/** Whether a notebook's page draws craft, for which it then has a style and a sheet of hatchings. */
export function drawsCraft({ blocks }: EvaluatedNotebook): boolean {
  return blocks.some((block) => block.kind === 'chart' && /^(craft|handout)$/.test(block.chart.kind));
}
