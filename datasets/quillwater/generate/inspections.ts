import * as truth from '../truth.js';
import { calendarDay, cutOffMoment, type Moment } from './calendar.js';
import type { Craft } from './craft.js';
import type { CraftPool } from './craft-pool.js';
import type { Inspection } from './inspection.js';
import { foundMussels, type Load, type Look, type Sites, settle, walk } from './looks.js';
import { type Random, randomStream } from './random.js';
import { openingHours, type StationDay } from './station-days.js';
import { isRoad } from './stations.js';
import { positiveLake, waters } from './waters.js';
import { writtenForm } from './written-form.js';

const noSites: Sites | null = null;
const visitorWaters = ['great-sallow', 'dunmark-canal', 'northreach-sound', 'westdown-lake', 'other-water'];
const basinWaters = waters.filter((water) => water.inBasin).map(({ water }) => water);

/** All inspections of a station's day, in no order yet. */
export function inspectionsOf(random: Random, pool: CraftPool, day: StationDay): Inspection[] {
  const { station } = day;
  const { year: season, month } = calendarDay(day.day);
  const frailty = random.gammaOfMeanOne(truth.clustering);
  const rate = (truth.interceptionPerThousand[station.setting][month - 3]! / 1000) * truth.seasonRichness[season]!;
  const made: Inspection[] = [];
  for (let count = 0; count < day.arriving; count++) {
    made.push(arriving(random, pool, day, season, Math.min(0.5, rate * frailty)));
  }
  for (let count = 0; count < day.leaving; count++) made.push(leaving(random, pool, day, season, month));
  return made.filter(({ finished }) => finished < cutOffMoment(station.zone));
}

function startOf(random: Random, day: StationDay, direction: keyof typeof truth.hourWeight): Moment {
  const [opens, closes] = openingHours(day.station.setting, calendarDay(day.day).month);
  let clock = -1;
  while (clock < opens || clock >= closes) {
    clock = (5 + random.weighted(truth.hourWeight[direction])) * 60 + random.below(60);
  }
  const minute = day.day * 1440 + clock;
  // One crew wrote its forms at the end of each half hour in the first season.
  const batched = day.station.station === 'hollin-beach' && calendarDay(day.day).year === 2023 && random.chance(0.35);
  return batched ? Math.round(minute / 30) * 30 : minute;
}

function minutesOf(random: Random, kind: keyof typeof truth.inspectionMinutes): number {
  const { least, more } = truth.inspectionMinutes[kind];
  return least + random.exponential(more);
}

/** Looks are drawn again until something is found: the craft is one that was intercepted. */
function interceptedWalk(
  random: Random,
  craft: Craft,
): { readonly looks: Look[]; readonly sites: Sites; readonly load: Load } {
  for (;;) {
    const load: Load = random.chance(0.4) ? 'heavy' : 'light';
    const sites = settle(random, craft, load);
    const looks = walk(random, craft, sites, load, true);
    if (looks.some(foundMussels)) return { looks, sites, load };
  }
}

function arriving(random: Random, pool: CraftPool, day: StationDay, season: number, rate: number): Inspection {
  const { station } = day;
  const road = isRoad(station);
  const paper = random.chance(truth.tickShare.paperCheck);
  const intercepted = !paper && random.chance(rate);
  const visitor = intercepted || random.chance(road ? 0.75 : 0.22);
  const craft = visitor ? pool.visitor(random, road ? 0.25 : 0.1) : pool.local(random);
  const started = startOf(random, day, station.setting);
  const fromPositive = intercepted && random.chance(0.85);
  const lastWater = fromPositive
    ? random.pick(['great-sallow', 'great-sallow', 'dunmark-canal', positiveLake])
    : visitor
      ? random.pick(visitorWaters)
      : random.chance(0.75)
        ? (station.water ?? random.pick(basinWaters))
        : random.pick(basinWaters);
  const exposed = lastWater === 'great-sallow' || lastWater === 'dunmark-canal' || lastWater === positiveLake;
  const daysOut = Math.floor(random.exponential(intercepted ? 9 : visitor ? 25 : 11));
  const risk =
    exposed && daysOut <= 30 ? (random.chance(0.7) ? 'high' : 'medium') : random.chance(0.04) ? 'medium' : 'low';
  const longList = road || risk === 'high' || intercepted;
  const found = intercepted ? interceptedWalk(random, craft) : null;
  const looks = paper ? [] : (found?.looks ?? walk(random, craft, noSites, 'light', longList));
  return writtenForm(random, day, {
    season,
    started,
    minutes:
      minutesOf(random, paper ? 'paper' : risk === 'high' ? 'highRisk' : 'standard') +
      (intercepted ? minutesOf(random, 'afterFind') : 0),
    direction: station.setting === 'roadside' ? 'roadside' : 'arriving',
    extent: paper ? 'paper check' : 'full',
    craft,
    lastWater: random.chance(0.03) ? null : lastWater,
    lastOnWater: random.chance(0.08) ? null : day.day - daysOut,
    moored: paper || random.chance(0.3) ? null : intercepted ? random.chance(0.6) : visitor && random.chance(0.06),
    nextWater: random.chance(0.06) ? null : (station.water ?? random.pick(basinWaters)),
    risk,
    looks,
    second:
      !paper && !road && random.chance(truth.recheckShare.other)
        ? walk(random, craft, found?.sites ?? null, found?.load ?? 'light', longList)
        : null,
  });
}

function leaving(random: Random, pool: CraftPool, day: StationDay, season: number, month: number): Inspection {
  const moored = random.chance(truth.mooredShare[month - 3]!);
  const craft = moored ? pool.moored(random) : random.chance(0.7) ? pool.local(random) : pool.visitor(random, 0.1);
  const use = moored ? truth.settled.moored : truth.settled.day;
  const infested = random.chance(use.share);
  const load: Load = random.chance(use.heavy) ? 'heavy' : 'light';
  const sites = infested ? settle(random, craft, load) : null;
  const looks = walk(random, craft, sites, load, true);
  const found = looks.some(foundMussels);
  return writtenForm(random, day, {
    season,
    started: startOf(random, day, 'leaving'),
    minutes: minutesOf(random, moored ? 'highRisk' : 'standard') + (found ? minutesOf(random, 'afterFind') : 0),
    direction: 'leaving',
    extent: 'full',
    craft,
    lastWater: positiveLake,
    lastOnWater: day.day,
    moored,
    nextWater: random.chance(0.15) ? null : random.pick(random.chance(0.6) ? basinWaters : visitorWaters),
    risk: moored ? 'high' : random.chance(0.5) ? 'medium' : 'low',
    looks,
    second: random.chance(truth.recheckShare.leaving) ? walk(random, craft, sites, load, true) : null,
  });
}

/** A station's inspections of a whole season, in the order of their start. */
export function seasonInspections(seed: number, days: readonly StationDay[], pool: CraftPool): Inspection[] {
  const first = days[0]!;
  const random = randomStream(seed, `inspections ${calendarDay(first.day).year} ${first.station.station}`);
  const made = days.flatMap((day) => inspectionsOf(random, pool, day));
  return withoutTwins(made.sort((a, b) => a.started - b.started));
}

/** Nobody is in two lanes at once: what would look like a double entry, and is none, is left out. */
function withoutTwins(inspections: readonly Inspection[]): Inspection[] {
  const seen = new Set<string>();
  return inspections.filter(({ craft, started }) => {
    const entry = `${craft.hullNumber} ${started}`;
    return !seen.has(entry) && seen.add(entry);
  });
}
