import { fiveMinuteFlush } from './five-minute-flush.js';
import type { WashStandard } from './wash-standard.js';
import { westernHull } from './western-hull.js';
import { westernInside } from './western-inside.js';
import { zebraSpray } from './zebra-spray.js';

/** The tables that washes can be compared with. None is applied unless a sheet names it. */
export const washStandards: readonly WashStandard[] = [westernHull, westernInside, zebraSpray, fiveMinuteFlush];

/** The table of that name, or null. */
export function washStandardOf(name: string): WashStandard | null {
  return washStandards.find((standard) => standard.name === name) ?? null;
}
