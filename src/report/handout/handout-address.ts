import type { ChartRequest, EvaluatedNotebook } from '../../notebook/evaluated.js';
import { anchor } from '../anchor.js';

/**
 * The address of a handout on its page: `handout-open-motorboat`, and with the next number behind it where handouts of the
 * same craft stand above, such as `handout-open-motorboat-2`.
 */
export function handoutAddress({ name, options }: ChartRequest, { blocks }: Pick<EvaluatedNotebook, 'blocks'>): string {
  const craft = options.craft ?? '';
  const alike = blocks.flatMap((block) =>
    block.kind === 'chart' && block.chart.kind === 'handout' && block.chart.options.craft === craft
      ? [block.chart.name]
      : [],
  );
  const above = alike.indexOf(name);
  return anchor('handout', above > 0 ? `${craft}-${above + 1}` : craft);
}
