import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Basin, writeBasin } from '../../datasets/quillwater/generate.js';
import { openBook } from '../../src/finding/book.js';
import { foulingSites } from '../../src/finding/fouling-sites.js';
import { interceptions } from '../../src/finding/interceptions.js';
import { turnaround } from '../../src/finding/turnaround.js';
import { importExports } from '../../src/intake/import-exports.js';
import { type Book, type BookTable, waitEnding } from '../../src/record/book.js';
import { months } from '../../src/record/calendar-names.js';
import { values } from './book/read-column.js';
import { ask, cells } from './read-finding.js';

/**
 * A small Quillwater Basin: the generator counts its own objects and never reads an export; the book is opened from the
 * exports. Both roads must come to the same counts.
 */
let folder: string;
let basin: Basin;
let book: Book;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quillwater-'));
  basin = await writeBasin(folder, { seed: 11, scale: 0.2 });
  const crosswalks = ['lakes', 'roads', 'office'].map((name) => `datasets/quillwater/${name}.crosswalk.yaml`);
  const key = new Uint8Array(32).fill(7);
  const imported = await importExports({ crosswalks, from: folder, key, progress: () => {} });
  expect(imported.problems).toEqual([]);
  book = openBook(imported.records, imported.sum);
});

afterAll(() => rm(folder, { recursive: true }));

const table = (name: string): BookTable => book.tables.get(name)!;

/** How many rows of a table have each value of a field, in one season. */
function counts(name: string, season: number, field: string, only?: readonly [string, string]): Record<string, number> {
  const seasons = values(table(name), 'season');
  const own = values(table(name), field);
  const filter = only === undefined ? null : values(table(name), only[0]);
  const found: Record<string, number> = {};
  own.forEach((value, row) => {
    if (seasons[row] !== season || (filter !== null && filter[row] !== only![1])) return;
    found[String(value)] = (found[String(value)] ?? 0) + 1;
  });
  return found;
}

const rowsWhere = (name: string, passes: (row: number) => boolean): number[] =>
  Array.from({ length: table(name).rowCount }, (_, row) => row).filter(passes);

describe('the basin’s own counts', () => {
  it('are those of interceptions, season by season', () => {
    const truth = Object.entries(basin.figures.seasons).map(([season, own]) => [
      Number(season),
      own.inspections,
      own.paperChecks,
      own.full,
      own.intercepted,
    ]);
    const found = ask(interceptions, book, ['season']);
    expect(cells(found, 'season', 'inspections', 'paper_checks', 'full', 'intercepted')).toEqual(truth);
  });

  it('are those of stations, months, types and outcomes', () => {
    for (const [year, own] of Object.entries(basin.figures.seasons)) {
      const season = Number(year);
      const byMonth = Object.entries(own.byMonth).map(([month, count]) => [months[Number(month) - 1], count]);
      expect(counts('inspections', season, 'month')).toEqual(Object.fromEntries(byMonth));
      expect(counts('inspections', season, 'station')).toEqual(own.byStation);
      expect(counts('inspections', season, 'watercraft_type')).toEqual(own.byWatercraftType);
      expect(counts('inspections', season, 'outcome')).toEqual(own.byOutcome);
      const intercepted = counts('inspections', season, 'station', ['outcome', 'intercepted']);
      expect(intercepted).toEqual(own.interceptedByStation);
    }
  });

  it('are those of station-days', () => {
    for (const [year, { stationDays }] of Object.entries(basin.figures.seasons)) {
      const found = counts('station_days', Number(year), 'state');
      expect([found.open ?? 0, found.closed ?? 0, found['not recorded'] ?? 0]).toEqual([
        stationDays.open,
        stationDays.closed,
        stationDays.notRecorded,
      ]);
    }
  });

  it('are those of fouling sites on craft leaving the positive lake', () => {
    const seasons = values(table('checks'), 'season');
    const directions = values(table('checks'), 'direction');
    for (const [year, { leaving }] of Object.entries(basin.figures.seasons)) {
      const rows = rowsWhere('checks', (row) => seasons[row] === Number(year) && directions[row] === 'leaving');
      const found = ask(foulingSites, book, [], rows);
      const names = ['component', 'carrying', 'looked', 'fouled', 'skipped', 'sole', 'fouled_craft'] as const;
      const wanted = Object.entries(leaving.components)
        .filter(([, part]) => part.carrying > 0)
        .map(([name, part]) => [
          name,
          part.carrying,
          part.looked,
          part.fouled,
          part.skipped,
          part.sole,
          leaving.fouled,
        ]);
      const byName = (one: readonly unknown[], other: readonly unknown[]): number =>
        String(one[0]) < String(other[0]) ? -1 : 1;
      expect(cells(found, ...names).sort(byName)).toEqual(wanted.sort(byName));
    }
  });

  it('are those of washes, with those held and those that left', () => {
    const seasons = values(table('decontaminations'), 'season');
    for (const [year, { washes }] of Object.entries(basin.figures.seasons)) {
      const rows = rowsWhere('decontaminations', (row) => seasons[row] === Number(year));
      const whole = cells(ask(turnaround, book, [], rows), 'washes', 'open', 'left_unwashed')[3];
      expect(whole).toEqual([washes.count, washes.held, washes.leftUnwashed]);
      const { minutes, ending } = table('decontaminations').column('wait') as {
        minutes: Float64Array;
        ending: Uint8Array;
      };
      const ended = rows.filter((row) => ending[row] === waitEnding.ended).map((row) => minutes[row]!);
      const sorted = ended.sort((one, other) => one - other);
      const middle = (sorted.length - 1) / 2;
      expect((sorted[Math.floor(middle)]! + sorted[Math.ceil(middle)]!) / 2).toBe(washes.wait);
    }
  });
});
