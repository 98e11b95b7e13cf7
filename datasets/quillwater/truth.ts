/**
 * The true parameters of the invented Quillwater Basin. Every number here is made up; the magnitudes follow what
 * programs publish (interceptions per 1,000, minutes per wash), the shapes are common practice, no source. Tests may ask
 * whether an interval computed from the exports covers the parameter that made them.
 */

import type { Setting } from './generate/setting.js';

/** What types and drives of craft there are, with shares. */
export { builds, typeShare } from './generate/craft.js';
/** The parts: which craft carry them, whether they are hidden, and how often a light load fouls them. */
export { parts } from './generate/parts.js';
/** The stations: craft a season, and the median minutes that a craft waits for its wash. */
export { stations } from './generate/stations.js';

/** The seasons that the exports hold. */
export const seasons = [2023, 2024, 2025] as const;

/** The cut-off of the exports, by the clock of each time zone: one and the same instant. */
export const cutOff = {
  'America/Denver': { year: 2025, month: 11, day: 30, minute: 18 * 60 },
  'America/Los_Angeles': { year: 2025, month: 11, day: 30, minute: 17 * 60 },
} as const;

/** How busy a season is against the stations' craft a season, and how rich in interceptions of arriving craft. */
export const seasonVolume: Readonly<Record<number, number>> = { 2023: 0.96, 2024: 1, 2025: 1.05 };
export const seasonRichness: Readonly<Record<number, number>> = { 2023: 1, 2024: 0.9, 2025: 1.05 };

/** Shares of a season's craft by month, March to November. */
export const monthShare: Readonly<Record<Setting | 'leaving', readonly number[]>> = {
  launch: [0.02, 0.05, 0.15, 0.22, 0.26, 0.19, 0.08, 0.02, 0.01],
  roadside: [0.03, 0.07, 0.15, 0.21, 0.24, 0.18, 0.08, 0.03, 0.01],
  border: [0.06, 0.09, 0.14, 0.18, 0.2, 0.16, 0.09, 0.05, 0.03],
  leaving: [0.01, 0.03, 0.11, 0.19, 0.23, 0.19, 0.12, 0.08, 0.04],
};

/**
 * The probability, per 1,000, that a full inspection of an arriving or roadside craft intercepts it, by setting and month
 * from March to November, in a season of richness 1. A station-day multiplies it by a gamma draw of mean 1 and shape
 * `clustering`, so that station-days are clusters. Arriving craft carry nothing that is missed: this is the rate of what
 * is found, and only craft leaving the positive lake have settlement that inspectors may overlook.
 */
export const interceptionPerThousand: Readonly<Record<Setting, readonly number[]>> = {
  launch: [4.5, 3, 0.3, 0.15, 0.15, 0.15, 0.2, 0.5, 0.8],
  roadside: [8, 6, 1.2, 0.6, 0.45, 0.5, 0.6, 1.2, 1.8],
  border: [8.5, 7, 1.8, 1, 0.7, 0.7, 1, 1.6, 2],
};
export const clustering = 2;

/** Craft volume by weekday, Monday to Sunday, and the factor of a holiday weekend. */
export const weekdayFactor = {
  arriving: [0.7, 0.6, 0.65, 0.75, 1.1, 1.75, 1.45],
  leaving: [0.95, 0.6, 0.6, 0.65, 0.8, 1.3, 2.1],
} as const;
export const holidayFactor = 1.8;

/** Craft volume by hour of the station's clock, 05:00 to 21:00. */
export const hourWeight = {
  launch: [0, 5, 9, 12, 13, 12, 10, 8, 7, 6, 5, 4, 3, 2, 1, 0, 0],
  leaving: [0, 0, 1, 2, 4, 6, 8, 9, 10, 12, 14, 13, 10, 6, 3, 0, 0],
  roadside: [0, 2, 3, 5, 7, 9, 10, 10, 10, 9, 9, 8, 6, 5, 3, 0, 0],
  border: [1, 2, 4, 6, 8, 9, 10, 10, 10, 9, 8, 7, 6, 5, 3, 2, 0],
} as const;

/** Wages in dollars an hour, all staff, by season. */
export const hourlyWage: Readonly<Record<number, number>> = { 2023: 19.8, 2024: 21.1, 2025: 22.6 };

/** Minutes of an inspection: least, and the mean of the exponential time on top. */
export const inspectionMinutes = {
  paper: { least: 1, more: 0.7 },
  standard: { least: 3, more: 1.3 },
  highRisk: { least: 10, more: 6 },
  afterFind: { least: 8, more: 9 },
} as const;

/** Shares of what inspectors tick, the same in every season except that damp counts as standing water from 2025. */
export const tickShare = { standingWater: 0.016, damp: 0.055, vegetation: 0.021, mud: 0.01, paperCheck: 0.07 } as const;

/** The share of leaving craft that lay moored for weeks, March to November. */
export const mooredShare = [0.5, 0.45, 0.35, 0.32, 0.3, 0.32, 0.42, 0.7, 0.9] as const;

/** The probability that a craft leaving the positive lake carries settlement, and that its load is then heavy. */
export const settled = {
  moored: { share: 0.088, heavy: 0.4 },
  day: { share: 0.033, heavy: 0.15 },
} as const;

/** A heavy load fouls a part with probability 1 − (1 − p)^heavyPower, where a light one does with p. */
export const heavyPower = 2.2;

/** How much less or more than `parts` says a light load fouls the parts of a watercraft type. */
export const typeFouling: Readonly<Record<string, number>> = {
  houseboat: 1.3,
  'cabin motorboat': 1.15,
  'personal watercraft': 0.75,
  paddlecraft: 0.6,
};

/** Which sides of a fouled two-sided part are fouled. */
export const sideShare = { both: 0.5, port: 0.21, starboard: 0.29 } as const;

/**
 * How inspectors look: the probability that a carried part is skipped before anything was found and after a find, that
 * one side alone of a two-sided part is left out, and that a look at a fouled side finds it.
 */
export const looking = {
  skip: { plain: 0.05, hidden: 0.2 },
  skipAfterFind: { plain: 0.35, hidden: 0.6 },
  oneSideOnly: 0.03,
  find: { plain: 0.88, hidden: 0.68 },
} as const;

/** The share of full inspections looked at again, blind: craft leaving the positive lake, and all others. */
export const recheckShare = { leaving: 0.14, other: 0.004 } as const;

/** Minutes of a wash and of what follows it: log-normal by median and spread of the logarithm. */
export const washMinutes = { median: 27, spread: 0.7 } as const;
export const holdMinutes = { median: 9, spread: 0.6 } as const;
/** Spread of the logarithm of the wait; its median is the station's own. A craft's patience is exponential. */
export const waitSpread = 0.8;
export const patienceMinutes = 1500;
/** The share of washed intercepted craft then held to dry, and for how many days: summer, and the rest of the year. */
export const dryingHold = { share: 0.7, summerDays: 7, otherDays: 18 } as const;
