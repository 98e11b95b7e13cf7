import { poissonCumulative, poissonMass } from '../distribution/poisson.js';

/** A waiting line with Poisson arrivals and exponential service that has settled down. */
export interface WaitingLine {
  /** Share of time that a server is busy. */
  readonly utilisation: number;
  /** The rest is null where the load is 1 or more: the line then grows without end. */
  readonly steady: SteadyLine | null;
}

/** Long-run figures, in the unit of time of the rates. */
export interface SteadyLine {
  readonly chanceEmpty: number;
  readonly chanceOfWait: number;
  readonly meanWaiting: number;
  readonly meanWait: number;
  readonly meanPresent: number;
  readonly meanStay: number;
  /** The chance that a wait exceeds a time. */
  readonly waitExceeds: (time: number) => number;
}

/**
 * Erlang's formula for c servers, arrivals and services by rate. Erlang AK (1917); sums through the Poisson
 * distribution so that many servers do not overflow. Gross D, Harris CM (1998) Fundamentals of Queueing Theory, 3rd
 * ed., section 2.3.
 */
export function erlangWait(arrivals: number, services: number, servers: number): WaitingLine {
  if (!(arrivals > 0 && services > 0 && Number.isInteger(servers) && servers > 0)) {
    throw new RangeError(`arrivals ${arrivals}, services ${services}, servers ${servers}`);
  }
  const load = arrivals / services;
  const utilisation = load / servers;
  if (utilisation >= 1) return { utilisation, steady: null };
  const full = poissonMass(servers, load) / (1 - utilisation);
  const all = poissonCumulative(servers - 1, load) + full;
  const chanceOfWait = full / all;
  const spare = servers * services - arrivals;
  const meanWait = chanceOfWait / spare;
  return {
    utilisation,
    steady: {
      chanceEmpty: Math.exp(-load) / all,
      chanceOfWait,
      meanWaiting: arrivals * meanWait,
      meanWait,
      meanPresent: arrivals * meanWait + load,
      meanStay: meanWait + 1 / services,
      waitExceeds: (time) => chanceOfWait * Math.exp(-spare * time),
    },
  };
}
