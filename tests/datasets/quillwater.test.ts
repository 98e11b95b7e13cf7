import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { americanMoment, calendarDay, dayNumber, elapsedMinutes } from '../../datasets/quillwater/generate/calendar.js';
import { builds, makeCraft, type WatercraftType } from '../../datasets/quillwater/generate/craft.js';
import { craftPool } from '../../datasets/quillwater/generate/craft-pool.js';
import { expectedWalk } from '../../datasets/quillwater/generate/expectation.js';
import { seasonInspections } from '../../datasets/quillwater/generate/inspections.js';
import { foundMussels, settle, walk } from '../../datasets/quillwater/generate/looks.js';
import { carryProbability, parts } from '../../datasets/quillwater/generate/parts.js';
import { randomStream } from '../../datasets/quillwater/generate/random.js';
import { stationDays } from '../../datasets/quillwater/generate/station-days.js';
import { stations } from '../../datasets/quillwater/generate/stations.js';
import { type Basin, type Manifest, writeBasin, writeExports } from '../../datasets/quillwater/generate.js';
import * as truth from '../../datasets/quillwater/truth.js';
import { componentOf, mayCarry } from '../../src/record/components.js';

const home = new URL('../../datasets/quillwater/', import.meta.url).pathname;
const temporary = mkdtempSync(join(tmpdir(), 'quillwater-'));
afterAll(() => rmSync(temporary, { recursive: true, force: true }));

const committed = (file: string): string => readFileSync(join(home, file), 'utf8');
const places = (table: string): readonly string[] => table.trimEnd().split('\n').slice(1);

describe('the demo', () => {
  let basin: Basin;
  const folder = join(temporary, 'demo');
  beforeAll(async () => {
    basin = await writeBasin(folder);
  });

  test('what the generator writes is what the manifest says', () => {
    expect(basin.manifest).toEqual(JSON.parse(committed('manifest.json')) as Manifest);
  });

  test('the committed truth is that of the committed exports', () => {
    expect(basin.figures).toEqual(JSON.parse(committed('truth/figures.json')));
    const listed = (dirt: Basin['dirt']): string[] =>
      dirt.map(({ file, line, column, code }) => [file, line, column, code].join(','));
    expect(listed(basin.dirt)).toEqual(places(committed('truth/dirt.csv')));
    expect(listed(basin.notes)).toEqual(places(committed('truth/notes.csv')));
  });

  test('no committed file is over 3 MB, and all together stay under 4 MB', () => {
    const files = execFileSync('git', ['ls-files', '-z', '.'], { cwd: home, encoding: 'utf8' }).split('\0');
    const sizes = files.filter((file) => file !== '').map((file) => statSync(join(home, file)).size);
    expect(sizes.length).toBeGreaterThan(30);
    expect(Math.max(...sizes)).toBeLessThan(3e6);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(4e6);
  });

  test('the committed exports are the ones in the manifest', () => {
    const tracked = execFileSync('git', ['ls-files', '-z', 'exports'], { cwd: home, encoding: 'utf8' }).split('\0');
    const files = basin.manifest.files.filter(({ file }) => tracked.includes(`exports/${file}`));
    expect(files.length).toBeGreaterThan(10);
    for (const { file, sha256 } of files) {
      const digest = createHash('sha256')
        .update(readFileSync(join(home, 'exports', file)))
        .digest('hex');
      expect(digest, file).toBe(sha256);
    }
  });

  // The ranges are those that published programs report: interceptions 0.1 to 1.4 per 1,000, the rest common practice.
  test.each(truth.seasons)('the season of %i has a plausible shape', (year) => {
    const season = basin.figures.seasons[year]!;
    const { leaving, washes, stationDays: days } = season;
    expect(season.inspections).toBeGreaterThan(21_000);
    expect(season.inspections).toBeLessThan(27_000);
    const arrivals = season.full - leaving.inspections;
    const intercepted = season.intercepted - season.interceptedByDirection.leaving!;
    expect((1000 * intercepted) / arrivals).toBeGreaterThan(0.3);
    expect((1000 * intercepted) / arrivals).toBeLessThan(1.4);
    expect(leaving.inspections).toBeGreaterThan(2500);
    expect(leaving.inspections).toBeLessThan(3500);
    expect(leaving.fouled / leaving.inspections).toBeGreaterThan(0.02);
    expect(leaving.fouled / leaving.inspections).toBeLessThan(0.06);
    expect(washes.washing).toBeGreaterThanOrEqual(25);
    expect(washes.washing).toBeLessThanOrEqual(30);
    expect(washes.leftUnwashed).toBeGreaterThan(0);
    expect(days.closed).toBeGreaterThan(20);
    expect(days.notRecorded).toBeGreaterThan(5);
    expect(days.withoutHours).toBeGreaterThan(3);
    expect(season.byMonth[7]!).toBeGreaterThan(8 * season.byMonth[3]!);
  });

  test('early months are tiny in volume and rich: about 5 per 1,000 in March and April', () => {
    const of = (counts: 'arrivalsByMonth' | 'interceptedArrivalsByMonth', months: readonly number[]): number =>
      truth.seasons.reduce(
        (sum, year) => months.reduce((inner, month) => inner + (basin.figures.seasons[year]![counts][month] ?? 0), sum),
        0,
      );
    const perThousand = (months: readonly number[]): number =>
      (1000 * of('interceptedArrivalsByMonth', months)) / of('arrivalsByMonth', months);
    expect(of('arrivalsByMonth', [3, 4]) / of('arrivalsByMonth', [3, 4, 5, 6, 7, 8, 9, 10, 11])).toBeLessThan(0.12);
    expect(perThousand([3, 4])).toBeGreaterThan(2.5);
    expect(perThousand([3, 4])).toBeLessThan(8);
    expect(perThousand([3, 4])).toBeGreaterThan(4 * perThousand([6, 7, 8]));
  });

  test('craft are still held at the cut-off, in the last season only', () => {
    const held = truth.seasons.map((year) => basin.figures.seasons[year]!.washes.held);
    expect(held.slice(0, -1)).toEqual([0, 0]);
    expect(held.at(-1)).toBeGreaterThan(0);
  });

  test('standing water jumps more than threefold in 2025 while vegetation holds still', () => {
    const share = (year: number, tick: 'standingWater' | 'vegetation'): number =>
      basin.figures.seasons[year]![tick] / basin.figures.seasons[year]!.full;
    expect(share(2025, 'standingWater') / share(2024, 'standingWater')).toBeGreaterThan(3);
    expect(share(2025, 'vegetation') / share(2024, 'vegetation')).toBeLessThan(1.3);
    expect(share(2025, 'vegetation') / share(2024, 'vegetation')).toBeGreaterThan(0.75);
  });

  test('between 0.1 and 1 % of the larger files is spoilt, and no place is listed twice', () => {
    const spoilt = new Map<string, number>();
    for (const { file } of basin.dirt) spoilt.set(file, (spoilt.get(file) ?? 0) + 1);
    for (const { file, rows } of basin.manifest.files) {
      if (rows < 5000) continue;
      expect((spoilt.get(file) ?? 0) / rows, file).toBeGreaterThan(0.001);
      expect((spoilt.get(file) ?? 0) / rows, file).toBeLessThan(0.01);
    }
    const lines = basin.dirt.map(({ file, line }) => `${file}:${line}`);
    expect(new Set(lines).size).toBe(lines.length);
  });

  test('every listed place is spoilt as it says, by a look at the bytes', () => {
    const linesOf = new Map<string, readonly string[]>();
    for (const { file } of basin.manifest.files)
      linesOf.set(file, readFileSync(join(folder, file), 'utf8').split(/\r?\n/));
    for (const { file, line, column, code } of basin.dirt) {
      const lines = linesOf.get(file)!;
      const delimiter = file.startsWith('roads/') ? ';' : ',';
      const header = lines[0]!.replace('\uFEFF', '').split(delimiter);
      // Only the last column is ever quoted before the ragged end, so that a plain split finds all others.
      const cells = lines[line - 1]!.split(delimiter);
      const cell = cells[header.indexOf(column)];
      const at = `${file}:${line} ${column} ${code} ${cell}`;
      if (code === 'missing-value') expect(cell, at).toBe('');
      else if (code === 'not-a-number') expect(Number(cell!.replace(',', '.')), at).toBeNaN();
      else if (code === 'out-of-range') expect(Number(cell!.replace(',', '.')), at).toBeGreaterThan(200);
      else if (code === 'not-a-date') expect(cell, at).toMatch(/^(0[26]\/3[01]|00\/|31\.0[26])/);
      else if (code === 'unterminated-quote') expect(lines[line - 1]!.match(/"/g), at).toHaveLength(1);
      else if (code === 'ragged-row') {
        if (!lines[line - 1]!.includes('"')) expect(cells.length, at).not.toBe(header.length);
      } else if (column !== '') expect(cell, at).toBeTruthy();
    }
  });

  test('each private column is dropped or hashed, and every column of every file is named in a crosswalk', () => {
    const personal = /^(owner_name|phone|registration|hull_no|staff|second_staff|plate|driver|tel|hin|crew|booked_by)$/;
    const named = new Set<string>();
    for (const name of ['lakes', 'roads', 'office']) {
      const crosswalk = parse(committed(`${name}.crosswalk.yaml`)) as CrosswalkText;
      for (const rule of crosswalk.files) {
        const pattern = new RegExp(`^${rule.files.replaceAll('.', '\\.').replaceAll('*', '[^/]*')}$`);
        const columns = new Set([
          ...Object.keys(rule.columns),
          ...Object.values(rule.combine ?? {}).flatMap((combined) => combined.columns),
          ...Object.keys(rule.fold?.columns ?? {}),
        ]);
        for (const [column, { private: treated }] of Object.entries(rule.columns)) {
          if (personal.test(column)) expect(['drop', 'hash'], column).toContain(treated);
        }
        for (const { file } of basin.manifest.files.filter((entry) => pattern.test(entry.file))) {
          const first = readFileSync(join(folder, file), 'utf8').split(/\r?\n/)[0]!.replace('\uFEFF', '');
          expect(new Set(first.split(/[,;]/)), file).toEqual(columns);
          named.add(file);
        }
      }
    }
    expect([...named].sort()).toEqual(basin.manifest.files.map(({ file }) => file).sort());
  });
});

interface CrosswalkText {
  readonly files: readonly {
    readonly files: string;
    readonly columns: Readonly<Record<string, { readonly private?: string }>>;
    readonly combine?: Readonly<Record<string, { readonly columns: readonly string[] }>>;
    readonly fold?: { readonly columns: Readonly<Record<string, unknown>> };
  }[];
}

describe('the generator', () => {
  test('writes the same bytes twice, and other bytes for another seed', async () => {
    const once = await writeExports(join(temporary, 'once'), { scale: 0.02 });
    const again = await writeExports(join(temporary, 'again'), { scale: 0.02 });
    const other = await writeExports(join(temporary, 'other'), { scale: 0.02, seed: 7 });
    expect(again).toEqual(once);
    expect(other.files.map(({ sha256 }) => sha256)).not.toEqual(once.files.map(({ sha256 }) => sha256));
  });

  test('a scale makes the season as much smaller', async () => {
    const { figures } = await writeBasin(join(temporary, 'tenth'), { scale: 0.1 });
    expect(figures.seasons[2024]!.inspections).toBeGreaterThan(2000);
    expect(figures.seasons[2024]!.inspections).toBeLessThan(2700);
  });

  test('a clean basin has nothing spoilt, nobody slips, and every row is kept', async () => {
    const clean = await writeBasin(join(temporary, 'clean'), { scale: 0.1, clean: true });
    expect([clean.dirt, clean.notes.filter(({ code }) => code !== 'hours-not-recorded')]).toEqual([[], []]);
    const { figures, manifest } = clean;
    const forms = manifest.files
      .filter(({ file }) => /inspections|forms/.test(file))
      .reduce((sum, { rows }) => sum + rows, 0);
    expect(truth.seasons.reduce((sum, year) => sum + figures.seasons[year]!.inspections, 0)).toBe(forms);
  });

  test('no craft carries a part that the component catalogue denies it', () => {
    for (const part of parts) {
      const component = componentOf(part.part)!;
      expect([part.sided, part.hidden], part.part).toEqual([component.sided, component.hidden]);
      for (const type of Object.keys(builds) as WatercraftType[]) {
        for (const { propulsion, drive } of builds[type]) {
          const carried = carryProbability(part, { type, propulsion, drive }) > 0;
          if (carried) expect(mayCarry(component, type, drive), `${part.part} on ${type} ${drive}`).toBe(true);
        }
      }
    }
  });

  test('arriving craft are intercepted at the rates that the truth states', () => {
    let expected = 0;
    let intercepted = 0;
    for (let seed = 1; seed <= 4; seed++) {
      for (const station of stations) {
        const days = stationDays(seed, 1, 2024, station);
        const pool = craftPool(seed, 1, station, { next: 1 }, []);
        for (const inspection of seasonInspections(seed, days, pool)) {
          if (inspection.extent !== 'full' || inspection.direction === 'leaving') continue;
          const { month } = calendarDay(Math.floor(inspection.started / 1440));
          expected += (truth.interceptionPerThousand[station.setting][month - 3]! * truth.seasonRichness[2024]!) / 1000;
          if (inspection.outcome === 'intercepted') intercepted++;
        }
      }
    }
    // About 60 events; their variance is a little above Poisson's through the clustering of station-days.
    expect(expected).toBeGreaterThan(40);
    expect(Math.abs(intercepted - expected)).toBeLessThan(4 * Math.sqrt(1.3 * expected));
  });

  test.each([
    ['moored', 'cabin motorboat'],
    ['day', 'open motorboat'],
  ] as const)('simulated walks around %s craft agree with their exact expectation: %s', (use, type) => {
    const random = randomStream(11, `walks ${use}`);
    const walks = 40_000;
    const counts = parts.map(() => ({ carrying: 0, looked: 0, found: 0 }));
    let fouled = 0;
    const mix = new Map<string, number>();
    for (let made = 0; made < walks; ) {
      const craft = makeCraft(random, made, use, true);
      if (craft.type !== type) continue;
      made++;
      const build = `${craft.propulsion},${craft.drive ?? ''}`;
      mix.set(build, (mix.get(build) ?? 0) + 1 / walks);
      const load = random.chance(truth.settled[use].heavy) ? 'heavy' : 'light';
      const sites = random.chance(truth.settled[use].share) ? settle(random, craft, load) : null;
      const looks = walk(random, craft, sites, load, true);
      if (looks.some(foundMussels)) fouled++;
      parts.forEach((_, index) => {
        const here = looks.filter(({ part }) => part === index);
        if (craft.carries[index]) counts[index]!.carrying++;
        if (here.some(({ state }) => state === 'clean' || state === 'fouled')) counts[index]!.looked++;
        if (here.some(foundMussels)) counts[index]!.found++;
      });
    }
    const expectations = [...mix].map(([build, share]) => {
      const [propulsion, drive] = build.split(',');
      return { share, walk: expectedWalk({ type, propulsion: propulsion!, drive: drive === '' ? null : drive! }, use) };
    });
    const near = (seen: number, wanted: number, what: string): void => {
      const error = Math.sqrt(Math.max(0, wanted * (1 - wanted)) / walks) + 1e-9;
      expect(Math.abs(seen / walks - wanted), `${what}: ${seen / walks}, ${wanted}`).toBeLessThan(4.5 * error);
    };
    near(
      fouled,
      expectations.reduce((sum, { share, walk: of }) => sum + share * of.fouled, 0),
      'fouled',
    );
    for (const measure of ['carrying', 'looked', 'found'] as const) {
      parts.forEach(({ part }, index) => {
        const wanted = expectations.reduce((sum, { share, walk: of }) => sum + share * of.parts[index]![measure], 0);
        near(counts[index]![measure], wanted, `${measure} ${part}`);
      });
    }
  });

  test('draws have the moments of their distributions', () => {
    const random = randomStream(3, 'moments');
    const many = 100_000;
    const mean = (draw: () => number): number => {
      let sum = 0;
      for (let index = 0; index < many; index++) sum += draw();
      return sum / many;
    };
    expect(mean(random.uniform)).toBeCloseTo(0.5, 2);
    expect(mean(() => random.normal() ** 2)).toBeCloseTo(1, 1);
    expect(mean(() => random.exponential(3))).toBeCloseTo(3, 1);
    expect(mean(() => random.gammaOfMeanOne(2))).toBeCloseTo(1, 1);
    expect(mean(() => random.poisson(4))).toBeCloseTo(4, 1);
    expect(mean(() => Number(random.logNormal(27, 0.7) > 27))).toBeCloseTo(0.5, 2);
  });

  test('washes have their tail: under 3 % take over two hours', () => {
    const random = randomStream(3, 'tail');
    let long = 0;
    for (let draw = 0; draw < 100_000; draw++) {
      if (random.logNormal(truth.washMinutes.median, truth.washMinutes.spread) > 120) long++;
    }
    expect(long / 100_000).toBeGreaterThan(0.01);
    expect(long / 100_000).toBeLessThan(0.03);
  });

  test('elapsed minutes count the hour that a clock change takes or gives', () => {
    // Clocks leapt on 2024-03-10 and fell back on 2024-11-03 in both zones (15 U.S.C. 260a).
    const noon = (month: number, day: number): number => dayNumber(2024, month, day) * 1440 + 720;
    expect(elapsedMinutes(noon(3, 9), noon(3, 10))).toBe(23 * 60);
    expect(elapsedMinutes(noon(11, 2), noon(11, 3))).toBe(25 * 60);
    expect(elapsedMinutes(noon(7, 1), noon(7, 2))).toBe(24 * 60);
    expect(americanMoment(noon(7, 4) - 720)).toBe('07/04/2024 12:00 AM');
  });
});
