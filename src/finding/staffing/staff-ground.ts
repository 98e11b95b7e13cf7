import type { Book, BookTable } from '../../record/book.js';
import { clusterWeights } from '../../statistic/resample/cluster-weights.js';
import type { FindingChoices } from '../finding.js';
import { sentence } from '../sentence.js';
import { dayTraffic, type Traffic } from './day-traffic.js';
import { type ShiftDays, shiftDays } from './shift-days.js';
import { type BlockYield, blockYields, type StaffSeason, staffSeason } from './staff-blocks.js';

/** What plans of staff hours stand on: a season's blocks, what they bring, and the same in each resample of its days. */
export interface StaffGround {
  readonly shifts: ShiftDays;
  readonly traffic: Traffic;
  readonly season: StaffSeason;
  readonly yields: readonly BlockYield[];
  readonly resampled: readonly (readonly BlockYield[])[];
  readonly leftOut: readonly string[];
}

/** Resamples beyond this change no limit that a reader can see, and each may be planned anew. */
const mostResamples = 400;

/** Plans of the same days are made many times over, for other sums and shares; the rows are never changed. */
const known = new WeakMap<Uint32Array, Map<string, StaffGround>>();

/** The ground of some station days. Days are drawn within station and weekday, so that shifts keep their number of days. */
export function staffGround(
  book: Book,
  table: BookTable,
  rows: Uint32Array,
  shift: number,
  resamples: FindingChoices['resamples'],
): StaffGround {
  const grounds = known.get(rows) ?? new Map<string, StaffGround>();
  known.set(rows, grounds);
  const key = JSON.stringify([shift, resamples]);
  const found = grounds.get(key);
  if (found !== undefined) return found;
  const ground = makeGround(book, table, rows, shift, resamples);
  grounds.set(key, ground);
  return ground;
}

function makeGround(
  book: Book,
  table: BookTable,
  rows: Uint32Array,
  shift: number,
  resamples: FindingChoices['resamples'],
): StaffGround {
  const shifts = shiftDays(table, rows, shift);
  const traffic = dayTraffic(book, shifts);
  const season = staffSeason(shifts, traffic);
  const count = Math.min(mostResamples, resamples.count);
  const stratumOf = new Uint32Array(shifts.days.length);
  season.strata.forEach((own, stratum) => {
    for (const day of own) stratumOf[day] = stratum;
  });
  const size = stratumOf.length;
  const weights = clusterWeights(stratumOf, count, resamples.seed);
  return {
    shifts,
    traffic,
    season,
    yields: blockYields(season, traffic, null),
    resampled: Array.from({ length: count }, (_, draw) =>
      blockYields(season, traffic, weights.subarray(draw * size, (draw + 1) * size)),
    ),
    leftOut: [
      ...sentence(
        shifts.unusable,
        'open day has',
        'open days have',
        'no staff hours or no times of opening and closing: in no shift.',
      ),
      ...sentence(
        traffic.outside,
        'full inspection was',
        'full inspections were',
        'begun outside every watch that a station was open for at least half of: in no block.',
      ),
    ],
  };
}
