import { holidayFactor, hourlyWage, monthShare, seasonVolume, weekdayFactor } from '../truth.js';
import { calendarDay, dayNumber, isHoliday } from './calendar.js';
import { type Random, randomStream } from './random.js';
import type { Setting } from './setting.js';
import type { Station } from './stations.js';

/** A station on a date, with the craft that came. */
export interface StationDay {
  readonly station: Station;
  readonly day: number;
  readonly state: 'open' | 'closed' | 'not recorded';
  /** Minutes of the day; null where closed or not recorded. */
  readonly opens: number | null;
  readonly closes: number | null;
  readonly staffHours: number | null;
  readonly staffCost: number | null;
  readonly bypasses: number | null;
  readonly arriving: number;
  readonly leaving: number;
  kept: boolean;
}

/** The hours of a setting: minutes of the day, longer in summer. */
export function openingHours(setting: Setting, month: number): readonly [number, number] {
  const summer = month >= 6 && month <= 8;
  if (setting === 'border') return [5 * 60, 22 * 60];
  if (setting === 'roadside') return summer ? [6 * 60, 21 * 60] : [7 * 60, 20 * 60];
  return summer ? [6 * 60, 20 * 60] : [7 * 60, 19 * 60];
}

/** The share of a season's craft that a day brings; the days of a month add up to the month's share. */
function dayShares(days: readonly number[], shares: readonly number[], factors: readonly number[]): number[] {
  const weights = days.map((day) => factors[calendarDay(day).weekday]! * (isHoliday(day) ? holidayFactor : 1));
  const monthTotals = new Map<number, number>();
  days.forEach((day, index) => {
    const { month } = calendarDay(day);
    monthTotals.set(month, (monthTotals.get(month) ?? 0) + weights[index]!);
  });
  return days.map((day, index) => {
    const { month } = calendarDay(day);
    return (shares[month - 3]! * weights[index]!) / monthTotals.get(month)!;
  });
}

/** Storms and short staff close a station for a day or a few; seldom nobody wrote down whether it was open. */
function dayStates(random: Random, days: readonly number[]): StationDay['state'][] {
  let closedFor = 0;
  return days.map((day) => {
    if (closedFor > 0) {
      closedFor--;
      return 'closed';
    }
    const { month, weekday } = calendarDay(day);
    const storm = random.chance(month <= 4 || month >= 10 ? 0.02 : 0.007);
    if (storm) closedFor = random.below(3);
    const shortStaffed = weekday < 4 && random.chance(0.012);
    if (storm || shortStaffed) return 'closed';
    return random.chance(0.008) ? 'not recorded' : 'open';
  });
}

/** Every day of a station's season, in order. */
export function stationDays(seed: number, scale: number, season: number, station: Station): StationDay[] {
  const random = randomStream(seed, `days ${season} ${station.station}`);
  const first = dayNumber(season, ...station.opens);
  const last = dayNumber(season, ...station.closes);
  const days = Array.from({ length: last - first + 1 }, (_, index) => first + index);
  const volume = scale * seasonVolume[season]!;
  const arriving = dayShares(days, monthShare[station.setting], weekdayFactor.arriving);
  const leaving = dayShares(days, monthShare.leaving, weekdayFactor.leaving);
  const states = dayStates(random, days);
  return days.map((day, index): StationDay => {
    const state = states[index]!;
    const { month, weekday } = calendarDay(day);
    const [opens, closes] = openingHours(station.setting, month);
    const crew = Math.max(1, station.lanes - 1) + (weekday >= 4 || isHoliday(day) ? 1 : 0);
    const hours = Math.round((crew * (closes - opens) * (0.95 + 0.15 * random.uniform())) / 15) / 4;
    const weather = random.gammaOfMeanOne(8);
    const traffic = state === 'closed' || (state === 'not recorded' && random.chance(0.5)) ? 0 : weather;
    const came = random.poisson(station.arriving * volume * arriving[index]! * traffic);
    const went = random.poisson(station.leaving * volume * leaving[index]! * traffic);
    const open = state === 'open';
    const written = open && !random.chance(0.006);
    const passed = random.poisson(came * 0.16);
    return {
      station,
      day,
      state,
      opens: open ? opens : null,
      closes: open ? closes : null,
      staffHours: written ? hours : null,
      staffCost: written ? Math.round(hours * hourlyWage[season]! * 100) / 100 : null,
      bypasses: open && station.setting !== 'launch' && day % 3 !== 0 ? passed : null,
      arriving: came,
      leaving: went,
      kept: true,
    };
  });
}
