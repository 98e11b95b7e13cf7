import { codeShares } from './code-shares.js';
import type { Finding } from './finding.js';
import { foulingCoverage } from './fouling-coverage.js';
import { foulingSites } from './fouling-sites.js';
import { interceptions } from './interceptions.js';
import { missingValues } from './missing-values.js';
import { sides } from './sides.js';
import { stationFunnel } from './station-funnel.js';
import { timeHeaping } from './time-heaping.js';
import { turnaround } from './turnaround.js';
import { stageCurves } from './turnaround-curve.js';

/** Every finding that a sheet can name. `missing values` is there once for each table; all other names are unique. */
export const findings: readonly Finding[] = [
  interceptions,
  stationFunnel,
  foulingSites,
  foulingCoverage,
  sides,
  turnaround,
  ...stageCurves,
  ...missingValues,
  codeShares,
  timeHeaping,
];

/** The finding of that name for a table; where the table has none, one for another table; null for an unknown name. */
export function findingOf(name: string, table: string): Finding | null {
  const named = findings.filter((finding) => finding.name === name);
  return named.find((finding) => finding.table === table) ?? named[0] ?? null;
}
