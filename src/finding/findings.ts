import { adjustedOdds } from './adjusted-odds.js';
import { codeShares } from './code-shares.js';
import { detection } from './detection.js';
import { effort } from './effort.js';
import { endingCurve } from './ending-curve.js';
import type { Finding } from './finding.js';
import { foulingChanges } from './fouling-changes.js';
import { foulingCoverage } from './fouling-coverage.js';
import { foulingPairs } from './fouling-pairs.js';
import { foulingRanks } from './fouling-ranks.js';
import { foulingSites } from './fouling-sites.js';
import { foundBy } from './found-by.js';
import { interceptions } from './interceptions.js';
import { missingValues } from './missing-values.js';
import { riskRatios } from './risk-ratios.js';
import { seasonsCompared } from './seasons-compared.js';
import { sides } from './sides.js';
import { outcomeCosts } from './spending/outcome-costs.js';
import { staffCurve } from './staffing/staff-curve.js';
import { staffPlan } from './staffing/staff-plan.js';
import { staffedHours } from './staffing/staffed-hours.js';
import { washReplay } from './staffing/wash-replay.js';
import { stationFunnel } from './station-funnel.js';
import { stationsCompared } from './stations-compared.js';
import { timeHeaping } from './time-heaping.js';
import { turnaround } from './turnaround.js';
import { stageCurves } from './turnaround-curve.js';
import { washConformity } from './wash-conformity.js';

/** Every finding that a sheet can name. `missing values` is there once for each table; all other names are unique. */
export const findings: readonly Finding[] = [
  interceptions,
  riskRatios,
  adjustedOdds,
  stationFunnel,
  stationsCompared,
  seasonsCompared,
  effort,
  foulingSites,
  foulingRanks,
  foulingCoverage,
  foulingPairs,
  foulingChanges,
  foundBy,
  sides,
  detection,
  turnaround,
  ...stageCurves,
  endingCurve,
  washConformity,
  outcomeCosts,
  washReplay,
  staffedHours,
  staffPlan,
  staffCurve,
  ...missingValues,
  codeShares,
  timeHeaping,
];

/** The finding of that name for a table; where the table has none, one for another table; null for an unknown name. */
export function findingOf(name: string, table: string): Finding | null {
  const named = findings.filter((finding) => finding.name === name);
  return named.find((finding) => finding.table === table) ?? named[0] ?? null;
}
