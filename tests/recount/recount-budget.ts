import { describe, expect, test } from 'vitest';
import { expectAlike, expectSheet } from './alike.js';
import { type Cell, carriedPage } from './carried.js';
import type { Ask } from './records.js';
import { z95 } from './textbook.js';

/** Money, what it bought, and what each cost. */
export function recountBudget(ask: Ask): void {
  const page = carriedPage('budget-request');
  const total = async (where: string) =>
    (await ask<{ dollars: number }>(`select sum(amount) as dollars from spent where ${where}`))[0]!.dollars;
  const crews = `category = 'personnel' and station <> 'nobody'`;
  const bought = () => ask<{ outcome: string; counted: number; variance: number }>('from counts_bought');
  const firstOf = (cell: Cell | undefined) => [cell].flat()[0] as number;

  describe('what the money bought', () => {
    test('the figures', async () => {
      const counts = new Map((await bought()).map(({ outcome, counted }) => [outcome, counted]));
      const [spent, wages] = [await total('true'), await total(crews)];
      const recounted = {
        spent,
        wages_paid: wages,
        hours_worked: counts.get('staff hour recorded')!,
        full_inspections: counts.get('full inspection')!,
        high_risk: counts.get('high-risk full inspection')!,
        washed: counts.get('wash ordered')!,
        intercepted: counts.get('interception')!,
        an_hour: counts.get('full inspection')! / counts.get('staff hour recorded')!,
        pay_each: wages / counts.get('interception')!,
      };
      const carried = Object.keys(recounted).map((name) => [name, page.figure(name).value]);
      expectAlike(Object.fromEntries(carried), recounted, 1e-10);
    });

    test('the cost of each thing: counts and costs to the digit, limits near those of another method', async () => {
      for (const [sheet, dollars] of [
        ['costs', await total('true')],
        ['wage_costs', await total(crews)],
      ] as const) {
        const rows = page.sheet(sheet);
        const counts = await bought();
        expectSheet(
          rows.map((row) => ({ ...row, cost_each: firstOf(row['cost_each']) })),
          'outcome',
          Object.fromEntries(
            counts.map(({ outcome, counted }) => [
              outcome,
              { count: counted, spent: dollars, cost_each: dollars / counted },
            ]),
          ),
        );
        // The page resamples station-days within station and year; here the count moves by ± z of its standard error under the same
        // strata (Cochran 1977, eq. 5.7 and 11.13). Both limits must agree to an eighth of the interval: 2,000 resamples leave
        // some 4 % of its width to chance, and the rest is the skew of a reciprocal.
        for (const { outcome, counted, variance } of counts) {
          const [, low, high] = rows.find((row) => row['outcome'] === outcome)!['cost_each'] as readonly number[];
          const half = z95 * Math.sqrt(variance);
          const near = (high! - low!) / 8;
          expect(Math.abs(dollars / (counted + half) - low!), `${sheet}, ${outcome}, low`).toBeLessThan(near);
          expect(Math.abs(dollars / (counted - half) - high!), `${sheet}, ${outcome}, high`).toBeLessThan(near);
        }
      }
    });

    test('the quiet hours', async () => {
      const [quiet] = await ask<Record<string, number>>('from quiet');
      expectAlike(
        Object.fromEntries(Object.keys(quiet!).map((name) => [name, page.figure(name).value])),
        { ...quiet },
        1e-10,
      );
    });

    test('what wash units cost: a price over its life at 3 percent, and each wash', async () => {
      // Grant EL, Ireson WG, Leavenworth RS (1990) Principles of Engineering Economy, 8th ed., chapter 4.
      const yearly = (price: number, life: number) => (price * 0.03) / (1 - 1.03 ** -life);
      const units = await ask<Record<'unit', string> & Record<'price' | 'life' | 'running' | 'washed', number>>(
        'from units',
      );
      const rows = units.map(({ unit, price, life, running, washed }) => {
        const a_year = yearly(price, life);
        return [
          unit,
          { price, life, a_year, washed_here: washed, each_wash: washed === 0 ? null : a_year / washed + running },
        ];
      });
      expectSheet(page.sheet('units').map(firstCells), 'unit', Object.fromEntries(rows));
      const [portable, fixed] = [yearly(9500, 8), yearly(150_000, 15)];
      const wanted = {
        portable_a_year: portable,
        fixed_a_year: fixed,
        portable_each_wash: portable / 240 + 12.5,
        fixed_each_wash: fixed / 240 + 12.5,
        asked: 500 * 26.67,
      };
      expectAlike(
        Object.fromEntries(Object.keys(wanted).map((name) => [name, page.figure(name).value])),
        wanted,
        1e-10,
      );
    });

    test('by what it was for and by fund', async () => {
      const grouped = async (columns: string) =>
        Object.fromEntries(
          (
            await ask<{ name: string; dollars: number }>(
              `select concat_ws('/', ${columns}) as name, sum(amount) as dollars from spent group by ${columns}`,
            )
          ).map(({ name, dollars }) => [name, { spent_here: dollars }]),
        );
      expectSheet(page.sheet('by_object'), 'category', await grouped('category'));
      expectSheet(page.sheet('by_fund'), 'fund', await grouped('fund'));
      expectSheet(page.sheet('fund_by_object'), 'fund category', await grouped('fund, category'));
    });

    test('by station: money, hours, looks and finds, and the cost of each', async () => {
      const rows = await ask<{ station: string; name: string; outcome: string; counted: number; dollars: number }>(`
        select *, (select sum(amount) from spent where spent.station = counts_at_stations.station) as dollars
        from counts_at_stations join stations using (station)`);
      const at = (station: string, outcome: string) =>
        rows.find((row) => row.name === station && row.outcome === outcome)!;
      const names = [...new Set(rows.map(({ name }) => name))];
      const sheet = page.sheet('by_station').map((row) => ({ ...row, each_look: firstOf(row['each_look']) }));
      expectSheet(
        sheet,
        'station',
        Object.fromEntries(
          names.map((name) => {
            const looked = at(name, 'full inspection');
            const row = {
              spent_here: looked.dollars,
              hours_here: at(name, 'staff hour recorded').counted,
              looked_at: looked.counted,
            };
            return [
              name,
              { ...row, found: at(name, 'interception').counted, each_look: looked.dollars / looked.counted },
            ];
          }),
        ),
      );
      const costs = page.sheet('costs_by_station').map((row) => ({ ...row, cost_each: firstOf(row['cost_each']) }));
      const wanted = rows.map(({ name, outcome, counted, dollars }) => [
        `${name}/${outcome}`,
        { count: counted, spent: dollars, cost_each: counted === 0 ? null : dollars / counted },
      ]);
      expectSheet(costs, 'station outcome', Object.fromEntries(wanted));
    });
  });
}

/** A row's values without their limits. */
function firstCells(row: Readonly<Record<string, Cell>>): Readonly<Record<string, Cell>> {
  return Object.fromEntries(Object.entries(row).map(([name, cell]) => [name, [cell].flat()[0] ?? null]));
}
