import { describe, expect, test } from 'vitest';
import { expectAlike, expectSheet, ofFigure } from './alike.js';
import { carriedPage } from './carried.js';
import type { Ask } from './records.js';
import { type ClusteredCounts, clusteredShare, type Triple } from './textbook.js';

interface Grouped extends ClusteredCounts {
  readonly grouped: string | number | null;
}

/** Craft inspected and intercepted, with limits that take whole station-days. */
export function recountInspected(ask: Ask): void {
  const page = carriedPage('season');
  const shares = (view: string) => ask<Grouped>(`from share_by('${view}')`);
  const shareIn = async (view: string, group: string | number): Promise<Grouped> =>
    (await shares(view)).find(({ grouped }) => grouped === group)!;

  /** Holds a sheet of inspections and interceptions to the recount, group by group. */
  const holdSheet = async (
    sheet: string,
    key: string,
    view: string,
    nameOf: (group: string) => string = (group) => group,
  ) => {
    const counted = (await shares(view)).map((group) => {
      const { grouped, cases, trials } = group;
      const name = grouped === null ? '' : nameOf(String(grouped));
      return [name, { inspected: trials, intercepted: cases, interception: clusteredShare(group) }] as const;
    });
    expectSheet(page.sheet(sheet), key, Object.fromEntries(counted));
  };

  describe('what was inspected and intercepted', () => {
    test('the figures of the season, with their limits', async () => {
      const now = await shareIn('share_of_all', 2025);
      const before = await shareIn('share_of_all', 2024);
      const [[days], [paper]] = [
        await ask<Record<'open' | 'closed' | 'unrecorded' | 'hours', number>>('from counted_days where season = 2025'),
        await ask<{ checks: number }>('from paper_checks where season = 2025'),
      ];
      const [washes] = await ask<{ washed: number }>('select count(*) as washed from washes where season = 2025');
      const recounted = {
        inspected: now.trials,
        intercepted: now.cases,
        interception: clusteredShare(now),
        interception_before: clusteredShare(before),
        established: clusteredShare(await shareIn('share_of_established', 2025)),
        arriving_rate: clusteredShare(await shareIn('share_by_way', 'arriving')),
        leaving_rate: clusteredShare(await shareIn('share_by_way', 'leaving')),
        paper_checks: paper!.checks,
        days_open: days!.open,
        days_closed: days!.closed,
        days_unrecorded: days!.unrecorded,
        hours_recorded: days!.hours,
        washed: washes!.washed,
      };
      const carried = Object.keys(recounted).map((name) => [name, ofFigure(page.figure(name))]);
      expectAlike(Object.fromEntries(carried), recounted, 1e-9);
      expect(page.figure('times_last_season').value).toBeCloseTo(
        now.cases / now.trials / (before.cases / before.trials),
        12,
      );
    });

    test('the sentence at the head of the page', async () => {
      const said = (share: Triple) => {
        const [rate, low, high] = share.map((part) => (1000 * part).toFixed(2));
        return `${rate} per 1,000 (95 % interval ${low} to ${high})`;
      };
      const now = await shareIn('share_of_all', 2025);
      const before = await shareIn('share_of_all', 2024);
      expect(page.headline).toBe(
        `Inspectors looked over ${now.trials.toLocaleString('en-US')} craft and found mussels on ${now.cases} of them, ` +
          `${said(clusteredShare(now))}; the season before it was ${said(clusteredShare(before))}.`,
      );
    });

    test('by season, with standing water and plants', async () => {
      const [water, plants] = [await shares('share_with_water'), await shares('share_with_plants')];
      const counted = (await shares('share_of_all')).map((season) => {
        const of = (list: readonly Grouped[]) =>
          clusteredShare(list.find(({ grouped }) => grouped === season.grouped)!);
        const { cases, trials } = season;
        const row = { inspected: trials, intercepted: cases, interception: clusteredShare(season) };
        return [season.grouped, { ...row, standing_water: of(water), vegetation: of(plants) }] as const;
      });
      expectSheet(page.sheet('by_season'), 'season', Object.fromEntries(counted));
    });

    test('by station, with staff hours', async () => {
      const names = await ask<{ station: string; name: string; hours: number }>(
        'from station_hours join stations using (station)',
      );
      const named = (station: string) => names.find((entry) => entry.station === station)!.name;
      await holdSheet('by_station', 'station', 'share_at_station', named);
      const hours = Object.fromEntries(names.map((entry) => [entry.name, { staff_hours: entry.hours }]));
      expectSheet(page.sheet('by_station'), 'station', hours);
    });

    test('by month, type, haul, home and status of the last water', async () => {
      await holdSheet('by_month', 'month', 'share_in_month');
      await holdSheet('by_type', 'watercraft_type', 'share_of_type');
      await holdSheet('by_haul', 'hauled_by', 'share_of_haul');
      await holdSheet('by_home', 'home_region', 'share_of_home');
      const statuses: Record<string, string> = { POS: 'positive', SUS: 'suspect', NEG: 'negative', UNT: 'not tested' };
      await holdSheet('by_last_status', 'last_status', 'share_of_status', (status) => statuses[status]!);
    });
  });
}
