import { describe, expect, test } from 'vitest';
import { expectSheet, rowsOf } from './alike.js';
import { carriedPage } from './carried.js';
import type { Ask } from './records.js';
import { type ClusteredCounts, clusteredShare } from './textbook.js';

type Grouped = ClusteredCounts & { readonly grouped: string };

/** How forms were filled in: clocks, codes from season to season, fields left blank. */
export function recountForms(ask: Ask): void {
  const quality = carriedPage('record-quality');
  const shares = (view: string) => ask<Grouped>(`from share_by('${view}')`);

  describe('how forms were filled in', () => {
    test('starts at the full and the half hour', async () => {
      const names = new Map(
        (await ask<{ station: string; name: string }>('from stations')).map(({ station, name }) => [station, name]),
      );
      const half = await shares('starts_on_half');
      const wanted = rowsOf(
        await shares('starts_on_hour'),
        ({ grouped }) => names.get(grouped)!,
        (row) => {
          const other = half.find(({ grouped }) => grouped === row.grouped)!;
          return {
            starts: row.trials,
            on_hour: row.cases,
            on_hour_share: clusteredShare(row),
            on_half: other.cases,
            on_half_share: clusteredShare(other),
          };
        },
      );
      expectSheet(quality.sheet('heaping'), 'station', wanted);
      expect(Object.keys(wanted).length).toBe(11);
    });

    test('the share of every code, season by season, and fields without a value', async () => {
      const codes = rowsOf(
        await ask<Grouped>('from code_shares'),
        ({ grouped }) => grouped,
        (row) => ({ coded: row.trials, used: row.cases, share: clusteredShare(row) }),
      );
      expectSheet(quality.sheet('drift'), 'field code season', codes);
      const missing = await ask<{ field: string; missing: number }>('from missing_values');
      const rows = quality.sheet('missing').filter(({ field }) => missing.some((entry) => entry.field === field));
      expectSheet(
        rows,
        'field',
        rowsOf(
          missing,
          ({ field }) => field,
          (row) => ({ missing: row.missing }),
        ),
      );
    });
  });
}
