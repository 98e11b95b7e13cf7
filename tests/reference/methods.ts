import type { Method } from './inputs.js';
import { clusters } from './methods/clusters.js';
import { comparisons } from './methods/comparisons.js';
import { counts } from './methods/counts.js';
import { operations } from './methods/operations.js';
import { proportions } from './methods/proportions.js';
import { records } from './methods/records.js';
import { stations } from './methods/stations.js';
import { survival } from './methods/survival.js';
import { tables } from './methods/tables.js';
import { trends } from './methods/trends.js';

/** Our methods under the names that reference cases use. */
export const methods: Readonly<Record<string, Method>> = {
  ...proportions,
  ...clusters,
  ...comparisons,
  ...counts,
  ...operations,
  ...records,
  ...stations,
  ...survival,
  ...tables,
  ...trends,
};
