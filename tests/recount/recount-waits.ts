import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { expectAlike, expectSheet, ofFigure, type Wanted } from './alike.js';
import { type Cell, carriedPage } from './carried.js';
import madeWithR from './made-with-r.json' with { type: 'json' };
import type { Ask } from './records.js';
import { type CurveTime, meanToHorizon, minutesUntil, shareBy } from './survival.js';
import { waitsFile } from './waits-file.js';

const stages = ['wait', 'washing', 'hold', 'turnaround'];
const target = 90;

/** How long washes took, with craft still held followed until the records end. */
export function recountWaits(ask: Ask): void {
  const [season, budget] = [carriedPage('season'), carriedPage('budget-request')];
  /** The curve of each group and stage, by the group's name and the stage's. */
  const curves = async (view: string): Promise<ReadonlyMap<string, readonly CurveTime[]>> => {
    const times = await ask<CurveTime & { grouped: string }>(`from curve_of('${view}') order by grouped, minutes`);
    const groups = new Map<string, CurveTime[]>();
    for (const time of times) groups.set(time.grouped, [...(groups.get(time.grouped) ?? []), time]);
    return groups;
  };

  describe('how long washes took', () => {
    test('every stage: ended, open, left, unknown; median, 80th and 90th, with limits; mean to the last time followed', async () => {
      const counts = await ask<{ stage: string; course: string; washes: number }>(`
        select stage, course, count(*) as washes from stages where season = 2025 group by stage, course`);
      const byStage = await curves('waits_by_stage');
      const rows = stages.map((stage) => {
        const count = (course: string) =>
          counts.find((entry) => entry.stage === stage && entry.course === course)?.washes ?? 0;
        const curve = byStage.get(stage)!;
        const row: Record<string, Wanted> = {
          washes: count('done') + count('open') + count('left'),
          done: count('done'),
          open: count('open'),
          left_unwashed: count('left'),
          unknown: count('unknown'),
          median: minutesUntil(0.5, curve),
          p80: minutesUntil(0.8, curve),
          p90: minutesUntil(0.9, curve),
          horizon: curve.at(-1)!.minutes,
          mean_to_horizon: meanToHorizon(curve),
        };
        return [stage, row] as const;
      });
      for (const page of [season, budget]) expectSheet(page.sheet('turnaround'), 'stage', Object.fromEntries(rows));
    });

    test('shares within the target and shares that left, and all times again, as R has them', async () => {
      const madeOf = createHash('sha256')
        .update(await waitsFile(ask))
        .digest('hex');
      const remedy = 'the waits are others than those of made-with-r.json: see made-with-r.R';
      expect(madeWithR.sha256, remedy).toBe(madeOf);
      for (const page of [season, budget])
        expectSheet(page.sheet('turnaround').map(withoutZeros), 'stage', madeWithR.stages);
      const byStage = await curves('waits_by_stage');
      for (const row of season.sheet('turnaround')) {
        const stage = String(row['stage']);
        const curve = byStage.get(stage)!;
        const by = {
          inside: shareBy(target, curve, 'through'),
          left_share: shareBy(Number.POSITIVE_INFINITY, curve, 'gone'),
        };
        expectAlike({ inside: [row['inside']].flat()[0], left_share: [row['left_share']].flat()[0] }, by);
        if (by.left_share > 0) continue;
        // Nobody left: the one-sided limit of those who ended, or were followed to the last time of all.
        const [told] = await ask<{ washes: number }>(`
          select count(*) as washes from stages where season = 2025 and stage = '${stage}'
          and (course in ('done', 'left') or course = 'open' and minutes >= ${curve.at(-1)!.minutes})`);
        expectAlike({ limits: row['left_share'] }, { limits: [0, 0, 1 - 0.05 ** (1 / told!.washes)] });
      }
    });

    test('the figures: median wait, median turnaround, share within the target', async () => {
      const byStage = await curves('waits_by_stage');
      for (const page of [season, budget]) {
        const turnaround = minutesUntil(0.5, byStage.get('turnaround')!);
        expect(ofFigure(page.figure('median_turnaround'))).toEqual(turnaround);
        expect(page.figure('inside_target').value).toBeCloseTo(
          shareBy(target, byStage.get('turnaround')!, 'through'),
          10,
        );
      }
      expect(ofFigure(budget.figure('median_wait'))).toEqual(minutesUntil(0.5, byStage.get('wait')!));
    });

    test('by reason: median wait, washing and turnaround', async () => {
      const byReason = await curves('waits_by_reason');
      const groups = await ask<{ reason: string; washed: number }>(`
        select reason, count(*) as washed from washes where season = 2025 group by reason`);
      const rows = groups.map(({ reason, washed }) => {
        const median = (stage: string) => minutesUntil(0.5, byReason.get(`${reason}/${stage}`)!);
        return [
          reason,
          {
            washed,
            median_wait: median('wait'),
            median_washing: median('washing'),
            median_turnaround: median('turnaround'),
          },
        ];
      });
      expectSheet(season.sheet('by_reason'), 'reason', Object.fromEntries(rows));
    });

    test('who waits longest: by station, weekday and hour of the inspection', async () => {
      for (const by of ['station', 'weekday', 'hour']) {
        const byGroup = await curves(`waits_by_${by}`);
        const groups = await ask<{ grouped: string; shown: string; washed: number }>(`
          select grouped, any_value(${by === 'station' ? 'name' : 'grouped'}) as shown, count(*) as washed
          from (select *, ${{ station: 'station', weekday: 'dayname(inspected_at)', hour: 'hour(inspected_at)' }[by]} as grouped
            from washes where season = 2025) left join stations using (station) group by grouped`);
        const rows = groups.map(({ grouped, shown, washed }) => {
          const curve = byGroup.get(`${grouped}/wait`)!;
          return [
            shown,
            { washed, wait_half: bare(minutesUntil(0.5, curve)), wait_90: bare(minutesUntil(0.9, curve)) },
          ] as const;
        });
        expectSheet(budget.sheet(`waits_by_${by}`), by, Object.fromEntries(rows));
        if (by === 'hour') continue;
        for (const row of budget.sheet(`waits_by_${by}`)) {
          const group = groups.find(({ shown }) => shown === row[by])!;
          const [inside] = [row['inside']].flat();
          expectAlike(
            { inside: inside! },
            { inside: shareBy(target, byGroup.get(`${group.grouped}/turnaround`)!, 'through') },
          );
        }
      }
    });
  });
}

/** A share of none as R has it, without limits. */
function withoutZeros(row: Readonly<Record<string, Cell>>): Readonly<Record<string, Cell>> {
  const cells = Object.entries(row).map(
    ([name, cell]) => [name, Array.isArray(cell) && cell[0] === 0 ? [0] : cell] as const,
  );
  return Object.fromEntries(cells);
}

/** One wash alone has no limits. */
function bare(times: readonly (number | null)[]): Wanted {
  return times[1] === null && times[2] === null ? times[0] : times;
}
