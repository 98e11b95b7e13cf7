import type { Method } from './inputs.js';
import { clusters } from './methods/clusters.js';
import { counts } from './methods/counts.js';
import { proportions } from './methods/proportions.js';
import { survival } from './methods/survival.js';

/** Our methods under the names that reference cases use. */
export const methods: Readonly<Record<string, Method>> = { ...proportions, ...clusters, ...counts, ...survival };
