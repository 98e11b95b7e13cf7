import { raisedTo } from '../raised-to.js';
import { erlangWait } from './erlang.js';

/** Means and standard deviations of times between arrivals and of services, in one unit. */
export interface GeneralLine {
  readonly arrivalMean: number;
  readonly arrivalDeviation: number;
  readonly serviceMean: number;
  readonly serviceDeviation: number;
  readonly servers: number;
}

/** Two approximations of the mean wait, in the unit of the times; null where the load is 1 or more. */
export interface GeneralWait {
  readonly utilisation: number;
  readonly allenCunneen: number | null;
  readonly sakasegawa: number | null;
}

/**
 * The mean wait when neither arrivals nor services are exponential; both means above 0. Allen AO (1990) Probability, Statistics and
 * Queueing Theory, 2nd ed., section 5.3.5; Sakasegawa H (1977) Ann Inst Statist Math 29:67-75.
 */
export function generalWait(line: GeneralLine): GeneralWait {
  const { servers, serviceMean } = line;
  const { utilisation, steady } = erlangWait(1 / line.arrivalMean, 1 / serviceMean, servers);
  if (steady === null) return { utilisation, allenCunneen: null, sakasegawa: null };
  const unevenness = ((line.arrivalDeviation / line.arrivalMean) ** 2 + (line.serviceDeviation / serviceMean) ** 2) / 2;
  const crowding = raisedTo(utilisation, Math.sqrt(2 * (servers + 1)) - 1) / (servers * (1 - utilisation));
  return {
    utilisation,
    allenCunneen: steady.meanWait * unevenness,
    sakasegawa: serviceMean * crowding * unevenness,
  };
}
