import type { ChartKind } from './chart-kind.js';
import { bars } from './kinds/bars.js';
import { dots } from './kinds/dots.js';

/** Every kind of chart that a notebook may ask for. */
export const chartKinds: readonly ChartKind[] = [dots, bars];
