import { describe, expect, test } from 'vitest';
import { expectAlike, expectSheet, ofFigure, rowsOf } from './alike.js';
import { type Cell, carriedPage } from './carried.js';
import { bestCaught, greedySteps, type Step } from './cover.js';
import type { Ask } from './records.js';
import { clusteredShare } from './textbook.js';

type Site = Readonly<Record<'grouped' | 'part', string>> &
  Readonly<
    Record<
      | 'carrying'
      | 'looked'
      | 'fouled'
      | 'craft'
      | 'skipped'
      | 'sole'
      | 'craft_clusters'
      | 'craft_residuals'
      | 'look_clusters'
      | 'look_residuals'
      | 'carry_clusters'
      | 'carry_residuals'
      | 'sole_clusters'
      | 'sole_residuals',
      number
    >
  >;

/** A site with its four shares, each by its own denominator; a part that was fouled nowhere has no share of only sites. */
function siteRow(site: Site): Readonly<Record<string, Cell>> {
  const { carrying, looked, fouled, craft, skipped, sole } = site;
  const share = (cases: number, trials: number, clusters: number, residuals: number) =>
    trials === 0 ? null : clusteredShare({ cases, trials, clusters, residuals });
  return {
    carrying,
    looked,
    fouled,
    fouled_craft: craft,
    skipped,
    sole,
    share_of_fouled: share(fouled, craft, site.craft_clusters, site.craft_residuals),
    fouled_rate: share(fouled, looked, site.look_clusters, site.look_residuals),
    skipped_share: share(skipped, carrying, site.carry_clusters, site.carry_residuals),
    sole_share: share(sole, fouled, site.sole_clusters, site.sole_residuals),
  };
}

/** Where mussels were found, among what; which parts were skipped; and which parts catch most craft. */
export function recountFouled(ask: Ask): void {
  const page = carriedPage('training-focus');
  const sites = (view: string) => ask<Site>(`from sites_of('${view}')`);
  const siteRows = (list: readonly Site[], nameOf: (site: Site) => string) => rowsOf(list, nameOf, siteRow);
  const craftOf = async (where: string): Promise<readonly (readonly string[])[]> =>
    (
      await ask<{ joined: string }>(
        `select array_to_string(parts_fouled, '/') as joined from fouled_craft where ${where}`,
      )
    ).map(({ joined }) => joined.split('/'));
  const catalogue = async () =>
    (await ask<{ part: string }>('select part from catalogue order by place')).map(({ part }) => part);

  describe('where mussels were found', () => {
    test('the figures of fouled craft', async () => {
      const [sums] = await ask<Record<'fouled' | 'sites' | 'rechecked', number>>(`
        select count(*) as fouled, sum(sites) as sites, (select count(*) from looks
          join full_inspections on full_inspections.id = inspection where turn = 'second' and state in ('clean', 'fouled')) as rechecked
        from fouled_craft where season = 2025`);
      const { fouled, sites: found, rechecked } = sums!;
      const share = async (name: string, condition: string) => {
        const [counts] = await ask<{ cases: number; trials: number; clusters: number; residuals: number }>(`
          select sum(cases) as cases, sum(trials) as trials, count(*) as clusters, squared_residuals(cases, trials) as residuals from (
            select count(*) as trials, count(*) filter (${condition}) as cases from fouled_craft where season = 2025 group by station, day)`);
        expectAlike({ [name]: ofFigure(page.figure(name)) }, { [name]: clusteredShare(counts!) }, 1e-9);
      };
      await share('leaving_share', `direction = 'leaving'`);
      await share('several', 'sites >= 2');
      await share('one_only', 'sites = 1');
      const names = ['fouled', 'sites_found', 'rechecked', 'parts_each'];
      expectAlike(Object.fromEntries(names.map((name) => [name, page.figure(name).value])), {
        fouled,
        sites_found: found,
        rechecked,
        parts_each: found / fouled,
      });
    });

    test('every part: carried, looked at, fouled, skipped, only site', async () => {
      const counted = siteRows(await sites('this_season'), ({ part }) => part);
      expectSheet(page.sheet('sites'), 'component', counted);
      // The season report shows the twenty parts fouled most often.
      const shown = carriedPage('season').sheet('sites');
      expect(shown.length).toBe(20);
      expectSheet(
        shown,
        'component',
        Object.fromEntries(shown.map(({ component }) => [component, counted[String(component)]!])),
      );
    });

    test('by type and drive, by type, and on trailers, over three seasons', async () => {
      const builds = await sites('drawn_builds');
      expectSheet(
        page.sheet('by_build'),
        'watercraft_type drive component',
        siteRows(builds, ({ grouped, part }) => `${grouped}/${part}`),
      );
      const types = await sites('drawn_types');
      expectSheet(
        page.sheet('by_type'),
        'watercraft_type component',
        siteRows(types, ({ grouped, part }) => `${grouped}/${part}`),
      );
      expectSheet(
        page.sheet('on_trailers'),
        'component',
        siteRows(await sites('on_trailers'), ({ part }) => part),
      );
    });

    test('the parts that catch most craft, one by one, and those that catch 80 %', async () => {
      const order = await catalogue();
      const craft = await craftOf('season = 2025');
      const steps = greedySteps(craft, order);
      const rows = page.sheet('coverage');
      const told = (row: Readonly<Record<string, Cell>>): Step => ({
        part: String(row['component']),
        newly: Number(row['newly_caught']),
        caught: Number(row['caught']),
      });
      expect(rows.map(told)).toEqual(steps);
      const needed = steps.findIndex(({ caught }) => caught >= 0.8 * craft.length) + 1;
      expect(rows.find(({ reached }) => reached === '80 %')?.['step']).toBe(needed);
      // No other set of as many parts catches more: every set was tried.
      for (let size = 1; size <= needed; size++) {
        expect(rows[size - 1]?.['best_caught'], `best ${size}`).toBe(bestCaught(craft, order, size));
      }
    });

    test('the same for each type of craft over three seasons', async () => {
      const order = await catalogue();
      const rows = page.sheet('coverage_by_type');
      for (const type of [
        'open motorboat',
        'cabin motorboat',
        'pontoon boat',
        'personal watercraft',
        'auxiliary sail',
      ]) {
        const steps = greedySteps(await craftOf(`watercraft_type = '${type}'`), order);
        const own = rows.filter((row) => row['watercraft_type'] === type);
        expect(
          own.map((row) => [row['component'], row['newly_caught'], row['caught']]),
          type,
        ).toEqual(steps.map(({ part, newly, caught }) => [part, newly, caught]));
      }
    });
  });
}
