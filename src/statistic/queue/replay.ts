import { checkSameLength } from '../same-length.js';
/**
 * The wait of each arrival before one of `servers` takes it, first come first served, in the unit of the times. Arrivals
 * ascend; a service belongs to its arrival whatever the number of servers, so that runs with one server more or fewer
 * differ by that alone. Kiefer J, Wolfowitz J (1955) Trans Am Math Soc 78:1-18.
 */
export function replayWaits(arrivals: ArrayLike<number>, services: ArrayLike<number>, servers: number): Float64Array {
  checkSameLength({ arrivals, services });
  if (!(Number.isInteger(servers) && servers > 0)) throw new RangeError(`${servers} servers`);
  const waits = new Float64Array(arrivals.length);
  /** When each server is free again, the soonest first. */
  const free = new Float64Array(servers).fill(Number.NEGATIVE_INFINITY);
  for (let i = 0; i < waits.length; i += 1) {
    const arrival = arrivals[i]!;
    const start = Math.max(arrival, free[0]!);
    waits[i] = start - arrival;
    const end = start + services[i]!;
    let place = 0;
    while (place + 1 < servers && free[place + 1]! < end) {
      free[place] = free[place + 1]!;
      place += 1;
    }
    free[place] = end;
  }
  return waits;
}
