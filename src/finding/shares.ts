import type { BookTable } from '../record/book.js';
import type { Estimate } from '../statistic/estimate.js';
import { proportionEstimate } from '../statistic/proportion/estimate.js';

/** The station-days that some rows come from, numbered from 0 as they appear, and the number of each row's. */
export interface ClusterPlaces {
  readonly count: number;
  /** One a row, in the rows' order. */
  readonly placeOf: Uint32Array;
}

/** Numbers the station-days of some rows. Throws for a table whose rows belong to none. */
export function clusterPlaces(table: BookTable, rows: Uint32Array): ClusterPlaces {
  const { clusterOf } = table;
  if (clusterOf === null) throw new Error(`rows of ${table.name} belong to no station-day`);
  const places = new Map<number, number>();
  const placeOf = new Uint32Array(rows.length);
  let lastCluster = -1;
  let lastPlace = -1;
  for (let at = 0; at < rows.length; at++) {
    const cluster = clusterOf[rows[at]!]!;
    if (cluster !== lastCluster) {
      const known = places.get(cluster);
      lastCluster = cluster;
      lastPlace = known ?? places.size;
      if (known === undefined) places.set(cluster, lastPlace);
    }
    placeOf[at] = lastPlace;
  }
  return { count: places.size, placeOf };
}

/** Cases of trials, added up by station-day. */
export class ShareCount {
  #cases = 0;
  #trials = 0;
  readonly #casesAt: Float64Array;
  readonly #trialsAt: Float64Array;

  constructor(places: number) {
    this.#casesAt = new Float64Array(places);
    this.#trialsAt = new Float64Array(places);
  }

  add(place: number, isCase: boolean): void {
    this.#trials++;
    this.#trialsAt[place]!++;
    if (!isCase) return;
    this.#cases++;
    this.#casesAt[place]!++;
  }

  get cases(): number {
    return this.#cases;
  }

  get trials(): number {
    return this.#trials;
  }

  /** The share with station-days as clusters. */
  clustered(): Estimate {
    const clusters = { cases: this.#casesAt, trials: this.#trialsAt };
    return proportionEstimate({ cases: this.#cases, trials: this.#trials, clusters });
  }

  /** The share as if trials were independent: shown beside the clustered one, never instead of it. */
  unclustered(): Estimate {
    return proportionEstimate({ cases: this.#cases, trials: this.#trials });
  }
}

/** The share of cases among those rows that are trials. */
export function shareOfRows(
  rows: Uint32Array,
  { count, placeOf }: ClusterPlaces,
  isTrial: (row: number) => boolean,
  isCase: (row: number) => boolean,
): ShareCount {
  const share = new ShareCount(count);
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at]!;
    if (isTrial(row)) share.add(placeOf[at]!, isCase(row));
  }
  return share;
}
