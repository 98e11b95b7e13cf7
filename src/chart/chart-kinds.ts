import type { ChartKind } from './chart-kind.js';
import { bars } from './kinds/bars.js';
import { bridge } from './kinds/bridge.js';
import { columns } from './kinds/columns.js';
import { craft } from './kinds/craft.js';
import { dots } from './kinds/dots.js';
import { funnel } from './kinds/funnel.js';
import { heat } from './kinds/heat.js';
import { lines } from './kinds/lines.js';
import { pairs } from './kinds/pairs.js';
import { steps } from './kinds/steps.js';
import { swings } from './kinds/swings.js';

/** Every kind of chart that a notebook may ask for. */
export const chartKinds: readonly ChartKind[] = [
  dots,
  bars,
  columns,
  lines,
  steps,
  funnel,
  heat,
  pairs,
  craft,
  swings,
  bridge,
];
