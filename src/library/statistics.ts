// Numbers to numbers, for scripts: `import { wilson } from 'rampbook/statistic'`. Each says its source where it stands.

export { type FisherTest, fisherExact } from '../statistic/contingency/fisher.js';
export { type IndependenceTest, independence } from '../statistic/contingency/independence.js';
export {
  type MantelHaenszel,
  mantelHaenszel,
  type PooledDifference,
} from '../statistic/contingency/mantel-haenszel.js';
export { type CaptureRecapture, captureRecapture } from '../statistic/detection/capture-recapture.js';
export { type Agreement, agreement } from '../statistic/detection/kappa.js';
export { miettinenNurminenDifference } from '../statistic/difference/miettinen-nurminen.js';
export { newcombeDifference } from '../statistic/difference/newcombe.js';
export type { Estimate, Interval } from '../statistic/estimate.js';
export { type FunnelLimit, funnelLimit } from '../statistic/funnel/limits.js';
export { type OverDispersion, overDispersion } from '../statistic/funnel/over-dispersion.js';
export { benjaminiHochberg, holm } from '../statistic/many-comparisons.js';
export { type PairedDifference, pairedDifference } from '../statistic/paired/difference.js';
export { type McNemarTest, mcNemar } from '../statistic/paired/mcnemar.js';
export { type PairedOddsRatio, pairedOddsRatio } from '../statistic/paired/odds-ratio.js';
export { poissonExact, poissonRate } from '../statistic/poisson.js';
export { clopperPearson } from '../statistic/proportion/clopper-pearson.js';
export {
  type ClusteredProportion,
  type Clusters,
  clusteredProportion,
  kornGraubard,
} from '../statistic/proportion/clustered.js';
export { jeffreys } from '../statistic/proportion/jeffreys.js';
export { midP } from '../statistic/proportion/mid-p.js';
export { wilson } from '../statistic/proportion/wilson.js';
export { type ZeroCases, zeroUpper } from '../statistic/proportion/zero-cases.js';
export { type QuantileType, quantile } from '../statistic/quantile.js';
export { erlangWait, type SteadyLine, type WaitingLine } from '../statistic/queue/erlang.js';
export { type GeneralLine, type GeneralWait, generalWait } from '../statistic/queue/general.js';
export { replayWaits } from '../statistic/queue/replay.js';
export { type Random, randomFrom } from '../statistic/random.js';
export { fiellerRatio, type RatioOfTotals } from '../statistic/ratio/fieller.js';
export { type RateRatio, rateRatio } from '../statistic/ratio/rates.js';
export { koopmanRatio } from '../statistic/ratio/score.js';
export { type ItemCounts, type RankedUnits, type ResampledRank, resampledRanks } from '../statistic/resample/ranks.js';
export { type DirectRate, directRate } from '../statistic/standard/direct.js';
export { type StandardisedRatio, standardisedRatio } from '../statistic/standard/indirect.js';
export { type SurvivalAt, survivalAt } from '../statistic/survival/at.js';
export { type CumulativeIncidence, cumulativeIncidence } from '../statistic/survival/cumulative-incidence.js';
export type { SurvivalCurve } from '../statistic/survival/curve.js';
export { type IncidenceAt, incidenceAt } from '../statistic/survival/incidence-at.js';
export { type KaplanMeierOptions, kaplanMeier } from '../statistic/survival/kaplan-meier.js';
export { type LogRank, logRank } from '../statistic/survival/log-rank.js';
export { type SurvivalQuantile, survivalQuantile } from '../statistic/survival/quantile.js';
export { type RestrictedMean, restrictedMean } from '../statistic/survival/restricted-mean.js';
export { cochranArmitage, type LinearTrend } from '../statistic/trend/cochran-armitage.js';
