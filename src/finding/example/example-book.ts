import type { Book } from '../../record/book.js';
import { type Random, randomFrom } from '../../statistic/random.js';
import { openBook } from '../book.js';
import { recordsOfRows, type WrittenRow } from './records-of-rows.js';

const [craftCount, day, minute] = [480, 86_400_000, 60_000];
const stations = ['north', 'south', 'hill'] as const;
const exampleParts = [
  { component: 'hull below waterline', fouled: 0.5, sides: ['port', 'starboard'] },
  { component: 'transom', fouled: 0.35, sides: ['none'] },
  { component: 'propeller', fouled: 0.3, sides: ['none'] },
  { component: 'anchor line', fouled: 0.15, sides: ['none'] },
] as const;

/** The example's own chance: always the same. */
interface Draw {
  readonly random: Random;
  readonly chance: (share: number) => boolean;
  readonly pick: <Value>(values: readonly Value[]) => Value;
}

function drawFrom(seed: number): Draw {
  const random = randomFrom(seed);
  return {
    random,
    chance: (share) => random.uniform() < share,
    pick: (values) => values[random.below(values.length)]!,
  };
}

const at = (moment: number): string => new Date(moment).toISOString();

function looksAt(
  { chance, pick }: Draw,
  inspection: string,
  infested: boolean,
): { first: WrittenRow[]; again: WrittenRow[] } {
  const first: WrittenRow[] = [];
  const again: WrittenRow[] = [];
  const rechecked = infested || chance(0.1);
  for (const { component, fouled, sides } of exampleParts) {
    for (const side of sides) {
      const settled = infested && chance(fouled);
      const look = (found: boolean): WrittenRow => ({
        ...{ inspection, component, side, state: found ? 'fouled' : 'clean' },
        ...(found ? { finding: 'mussels', stage: 'attached', abundance: pick(['trace', 'some', 'many']) } : {}),
        ...(found ? { found_by: pick(['sight', 'sight', 'feel', 'light']) } : {}),
      });
      const skipped = chance(0.05);
      first.push(skipped ? { inspection, component, side, state: 'not checked' } : look(settled && chance(0.85)));
      if (rechecked) again.push(look(settled && chance(0.85)));
    }
  }
  return { first, again };
}

function washOf({ random, chance }: Draw, inspection: string, ordered: number): WrittenRow {
  const long = (middle: number): number => Math.round(-Math.log(1 - random.uniform()) * middle) + 1;
  const base = {
    wash: `w${inspection}`,
    inspection,
    ordered_at: at(ordered),
    reason: 'mussels',
    method: 'hot spray',
    unit: 'one',
  };
  if (chance(0.08)) return { ...base, released_at: at(ordered + long(60) * minute), ending: 'left unwashed' };
  const started = ordered + long(20) * minute;
  const finished = started + long(25) * minute;
  return {
    ...base,
    started_at: at(started),
    finished_at: at(finished),
    ...(chance(0.03) ? {} : { released_at: at(finished + long(10) * minute), ending: 'released' }),
    ...(chance(0.7) ? { contact_temp_f: 130 + random.below(16) } : {}),
    ...(chance(0.8) ? { nozzle_temp_f: 150 + random.below(20), stand_off_ft: 0.5 } : {}),
    contact_seconds: 6 + random.below(12),
  };
}

const exampleSpending: readonly WrittenRow[] = [2023, 2024, 2025].map((fiscal_year, at) => {
  return { entry: `e${at}`, fiscal_year, category: 'personnel', fund: 'levy', amount: 24_000 + 900 * at };
});

/** Some 480 inspections at three stations in three seasons, made up so that every finding has something to say. */
export function exampleBook(): Book {
  const draw = drawFrom(4);
  const { random, chance, pick } = draw;
  const inspections: WrittenRow[] = [];
  const checks: WrittenRow[] = [];
  const rechecks: WrittenRow[] = [];
  const washes: WrittenRow[] = [];
  const days = new Map<string, WrittenRow>();
  for (let number = 0; number < craftCount; number++) {
    const season = 2023 + (number % 3);
    const station = pick(stations);
    const date = Date.UTC(season, 4, 1) + random.below(60) * day;
    const started = date + (15 + random.below(8)) * 60 * minute + random.below(60) * minute;
    const [positive, water] = [chance(0.4), chance(0.1)];
    const infested = chance(positive ? 0.28 : 0.04);
    const inspection = `${number}`;
    const looks = looksAt(draw, inspection, infested);
    const found = looks.first.some(({ state }) => state === 'fouled');
    inspections.push({
      ...{ inspection, station, started_at: at(started), direction: station === 'hill' ? 'roadside' : 'arriving' },
      ...{ extent: chance(0.05) && !found ? 'paper check' : 'full', craft: `craft ${random.below(400)}` },
      watercraft_type: pick(['open motorboat', 'open motorboat', 'pontoon boat', 'paddlecraft']),
      hauled_by: chance(0.15) ? 'commercial' : 'owner',
      last_waterbody: positive ? 'long lake' : 'round lake',
      last_on_water: at(date - random.below(45) * day).slice(0, 10),
      ...{ standing_water: water ? 'yes' : 'no', vegetation: chance(0.1) ? 'yes' : 'no' },
      outcome: found ? 'intercepted' : 'cleared',
    });
    checks.push(...looks.first);
    rechecks.push(...looks.again);
    if (found) washes.push(washOf(draw, inspection, started + 20 * minute));
    const name = `${station} ${date}`;
    const hours = { opened_at: at(date + 15 * 60 * minute), closed_at: at(date + 23 * 60 * minute) };
    const state = { station, date: at(date).slice(0, 10), state: 'open', ...hours };
    if (!days.has(name)) days.set(name, { ...state, ...(chance(0.9) ? { staff_hours: 8 + random.below(9) } : {}) });
  }
  const waters = [
    { waterbody: 'long lake', name: 'Long Lake', status: 'positive', status_from: '2020-01-01' },
    { waterbody: 'round lake', name: 'Round Lake', status: 'negative', status_from: '2020-01-01' },
  ];
  const places = [
    { station: 'north', name: 'North Ramp', setting: 'launch', time_zone: 'UTC' },
    { station: 'south', name: 'South Ramp', setting: 'launch', time_zone: 'UTC' },
    { station: 'hill', name: 'Hill Road', setting: 'roadside', time_zone: 'UTC' },
  ];
  const records = recordsOfRows({
    ...{ stations: places, waterbodies: waters, station_days: [...days.values()] },
    ...{ inspections, checks, rechecks, decontaminations: washes, spending: exampleSpending },
  });
  const asOf = Date.UTC(2025, 11, 1);
  return openBook(records, { files: [], definitionChanges: [], asOf, fingerprint: '0'.repeat(64) });
}
