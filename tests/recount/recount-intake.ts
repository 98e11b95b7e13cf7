import { describe, expect, test } from 'vitest';
import { expectAlike, expectSheet, ofFigure } from './alike.js';
import { carriedPage } from './carried.js';
import type { Ask } from './records.js';

/** Rows read, kept, set aside and left out, file by file, and why. */
export function recountIntake(ask: Ask): void {
  const page = carriedPage('record-quality');
  const whole = (value: number) => value.toLocaleString('en-US');

  describe('what was read', () => {
    test('rows of every file: read, kept, set aside, left out', async () => {
      const files = await ask<{ file: string; taken: number; kept: number }>(`
        select file, count(*) as taken, count(*) filter (id not in (select id from faults)) as kept from rows group by file`);
      expect(files.length).toBe(29);
      const counted = Object.fromEntries(
        files.map(({ file, taken, kept }) => [file, { read: taken, kept, set_aside: taken - kept, left_out: 0 }]),
      );
      expectSheet(page.sheet('by_file'), 'file', counted);
      // Every page tells the same of its files.
      for (const name of ['season', 'training-focus', 'budget-request', 'record-quality']) {
        const told = carriedPage(name).files.map(({ file, read, kept, setAside }) => [
          file,
          { read, kept, set_aside: setAside, left_out: 0 },
        ]);
        expect(Object.fromEntries(told), name).toEqual(counted);
      }
    });

    test('the sum over all files, and the sentence that tells it', async () => {
      const [sum] = await ask<{ taken: number; aside: number }>(`
        select count(*) as taken, count(*) filter (id in (select id from faults)) as aside from rows`);
      const { taken, aside } = sum!;
      const names = ['rows_read', 'rows_kept', 'rows_set_aside', 'rows_left_out', 'share_set_aside'];
      expectAlike(Object.fromEntries(names.map((name) => [name, ofFigure(page.figure(name))])), {
        rows_read: taken,
        rows_kept: taken - aside,
        rows_set_aside: aside,
        rows_left_out: 0,
        share_set_aside: aside / taken,
      });
      expect(page.headline).toContain(
        `Of ${whole(taken)} rows read, ${whole(taken - aside)} were kept, ${whole(aside)} set aside, ${((100 * aside) / taken).toFixed(2)} %`,
      );
    });

    test('the reasons, as often as each was met', async () => {
      const reasons = await ask<{ code: string; times: number }>(
        'select code, count(*) as times from faults group by code',
      );
      expectSheet(
        page.sheet('reasons'),
        'code',
        Object.fromEntries(reasons.map(({ code, times }) => [code, { times }])),
      );
      expect(page.figure('double_entries').value).toBe(reasons.find(({ code }) => code === 'double-entry')?.times);
    });

    test('what was noted on rows that are kept', async () => {
      const noted = await ask<{ code: string; times: number }>('from noted');
      const [met, never] = [noted.filter(({ times }) => times > 0), noted.filter(({ times }) => times === 0)];
      expectSheet(page.sheet('noted'), 'code', Object.fromEntries(met.map(({ code, times }) => [code, { times }])));
      expect(never).toEqual([{ code: 'inspected-while-closed', times: page.figure('inspected_while_closed').value }]);
      expect(noted.find(({ code }) => code === 'open-without-trace')?.times).toBe(
        page.figure('open_without_trace').value,
      );
    });

    test('contradictions, days and hours, and looks by station', async () => {
      const [wrong] = await ask<{ outcome_without_part: number; part_without_outcome: number }>('from contradictions');
      expectAlike(Object.fromEntries(Object.keys(wrong!).map((name) => [name, page.figure(name).value])), { ...wrong });
      const days = await ask<
        Record<'name', string> & Record<'open' | 'closed' | 'unrecorded' | 'without_hours' | 'hours', number>
      >('select name, station_hours.* from station_hours join stations using (station)');
      expectSheet(
        page.sheet('days_by_station'),
        'station',
        Object.fromEntries(
          days.map(({ name, open, closed, unrecorded, without_hours, hours }) => [
            name,
            { open, closed, not_recorded: unrecorded, without_hours, hours_recorded: hours },
          ]),
        ),
      );
      const looks = await ask<{ name: string; carried: number; looked: number }>(`
        select name, count(*) as carried, count(*) filter (state in ('clean', 'fouled')) as looked
        from looks join kept_inspections on id = inspection join stations using (station) where turn = 'first' and season = 2025 and state <> 'absent' group by name`);
      expectSheet(
        page.sheet('looked').map(({ station, parts_carried, looked_at }) => ({
          station: station!,
          parts_carried: parts_carried!,
          looked_at: looked_at!,
        })),
        'station',
        Object.fromEntries(
          looks.map(({ name, carried, looked }) => [name, { parts_carried: carried, looked_at: looked }]),
        ),
      );
    });
  });
}
