import * as truth from '../truth.js';
import type { Moment } from './calendar.js';
import type { Craft } from './craft.js';
import type { Inspection } from './inspection.js';
import { foundMussels, type Look, withOtherFind } from './looks.js';
import type { Random } from './random.js';
import type { StationDay } from './station-days.js';
import { isRoad, type Station } from './stations.js';

const staff = [
  'Abel Trialman',
  'Bea Fictiva',
  'Cal Mockett',
  'Dot Sampler',
  'Eli Pretend',
  'Fay Standin',
  'Gus Dummet',
];

/** Each station has seven inspectors of its own, under plainly invented names. */
function inspectorOf(random: Random, station: Station): string {
  return `${random.pick(staff)} (${station.name})`;
}

const memos = [
  '',
  '',
  '',
  '',
  '',
  '',
  'trailer light broken',
  'owner in a hurry, polite',
  'dog aboard',
  'asked for "the short one"',
];

/** What one look over a craft saw, before it is written down. */
export interface Seen {
  readonly season: number;
  readonly started: Moment;
  readonly minutes: number;
  readonly direction: Inspection['direction'];
  readonly extent: Inspection['extent'];
  readonly craft: Craft;
  readonly lastWater: string | null;
  readonly lastOnWater: number | null;
  readonly moored: boolean | null;
  readonly nextWater: string | null;
  readonly risk: Inspection['risk'];
  readonly looks: Look[];
  readonly second: Look[] | null;
}

/** The form of what was seen, with the ticks, the outcome and the rest of the form. */
export function writtenForm(random: Random, day: StationDay, seen: Seen): Inspection {
  const { station } = day;
  const water = random.weighted([
    truth.tickShare.standingWater,
    truth.tickShare.damp,
    1 - truth.tickShare.standingWater - truth.tickShare.damp,
  ]);
  const vegetation = random.chance(truth.tickShare.vegetation);
  const mud = random.chance(truth.tickShare.mud);
  let looks = seen.looks;
  if (vegetation)
    looks = withOtherFind(looks, ['propeller', 'anchor line', 'bunks', 'hull below waterline'], 'vegetation');
  if (water === 0) looks = withOtherFind(looks, ['live well', 'bilge', 'ballast tank'], 'standing water');
  if (mud) looks = withOtherFind(looks, ['rollers', 'anchor line', 'bunks'], 'mud');
  const finished = seen.started + Math.max(1, Math.round(seen.minutes));
  const full = seen.extent === 'full';
  const intercepted = looks.some(foundMussels);
  return {
    number: '',
    season: seen.season,
    station,
    started: seen.started,
    finished,
    direction: seen.direction,
    extent: seen.extent,
    craft: seen.craft,
    craftKnown: !random.chance(0.04),
    lastWater: seen.lastWater,
    lastOnWater: seen.lastOnWater,
    moored: seen.moored,
    nextWater: seen.nextWater,
    hauledBy: random.chance(isRoad(station) ? 0.06 : 0.01) ? 'commercial' : 'owner',
    water: !full ? 'no' : water === 0 ? 'yes' : water === 1 ? 'damp' : 'no',
    vegetation: full && vegetation,
    risk: seen.risk,
    inspector: inspectorOf(random, station),
    memo: random.pick(memos),
    outcome: intercepted ? 'intercepted' : full ? outcomeOf(random, water === 0, vegetation || mud, seen) : 'cleared',
    looks,
    recheck:
      seen.second === null
        ? null
        : { looks: seen.second, at: finished + 2 + random.below(20), inspector: inspectorOf(random, station) },
    wash: null,
    repeats: null,
    protected: false,
    kept: true,
  };
}

function outcomeOf(random: Random, water: boolean, dirt: boolean, seen: Seen): string {
  const exposed = seen.direction === 'leaving' || seen.risk === 'high';
  if (exposed && random.chance(water ? 0.6 : seen.moored ? 0.3 : 0.09)) return 'washed as a precaution';
  if (water || dirt) return 'cleaned on site';
  const rare = random.uniform();
  if (rare < 0.0008) return 'held to dry';
  if (rare < 0.0018) return 'refused';
  return rare < 0.0036 ? 'turned away' : 'cleared';
}
