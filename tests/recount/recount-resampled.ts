import { describe, expect, test } from 'vitest';
import { carriedPage, type Figure } from './carried.js';
import madeWithR from './made-with-r.json' with { type: 'json' };
import type { Ask } from './records.js';
import { z95 } from './textbook.js';

/**
 * Limits that the pages resample are held to those of another method: 2,000 resamples leave some 4 % of an interval's width to
 * chance, and skew moves both ends a little more, so that each must agree to an eighth of the width.
 */
function expectNear({ interval }: Figure, low: number, high: number): void {
  const { low: seenLow, high: seenHigh } = interval!;
  const near = (seenHigh - seenLow) / 8;
  expect(Math.abs(seenLow - low), `low ${seenLow}, otherwise ${low}`).toBeLessThan(near);
  expect(Math.abs(seenHigh - high), `high ${seenHigh}, otherwise ${high}`).toBeLessThan(near);
}

/** Limits by resampling, near those of linearised ratios and of R. */
export function recountResampled(ask: Ask): void {
  const ratios = (view: string) =>
    ask<{ grouped: string | number; ratio: number; error: number }>(`from ratio_of('${view}')`);

  describe('limits by resampling', () => {
    test('inspections a staff hour, and parts fouled on each fouled craft', async () => {
      for (const [page, figure, view] of [
        ['budget-request', 'an_hour', 'looks_an_hour'],
        ['training-focus', 'parts_each', 'parts_on_craft'],
      ] as const) {
        const [{ ratio, error } = { ratio: 0, error: 0 }] = await ratios(view);
        expect(carriedPage(page).figure(figure).value).toBeCloseTo(ratio, 10);
        expectNear(carriedPage(page).figure(figure), ratio - z95 * error, ratio + z95 * error);
      }
    });

    test('this season’s interceptions by those of the last, on the log scale', async () => {
      const seasons = await ratios('cases_by_season');
      const [now, before] = [2025, 2024].map((season) => seasons.find(({ grouped }) => grouped === season)!);
      const times = now!.ratio / before!.ratio;
      const half = z95 * Math.hypot(now!.error / now!.ratio, before!.error / before!.ratio);
      expectNear(carriedPage('season').figure('times_last_season'), times * Math.exp(-half), times * Math.exp(half));
    });

    test('the share of washes within the target, beside R’s cumulative incidence', () => {
      const [, low, high] = madeWithR.stages.turnaround.inside;
      for (const page of ['season', 'budget-request'])
        expectNear(carriedPage(page).figure('inside_target'), low!, high!);
    });
  });
}
