import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { Craft } from './generate/craft.js';
import { type CraftPool, craftPool } from './generate/craft-pool.js';
import { type Dirt, DirtBook } from './generate/dirt.js';
import type { WrittenFile } from './generate/export-file.js';
import { FigureBook, type Figures } from './generate/figures.js';
import { type Inspection, seasonInspections } from './generate/inspections.js';
import { writeLakeChecks } from './generate/lake-checks.js';
import { writeLakeDays } from './generate/lake-days.js';
import { writeLakeInspections } from './generate/lake-inspections.js';
import { writeLakeLists } from './generate/lake-lists.js';
import { writeLakeRechecks } from './generate/lake-rechecks.js';
import { writeLakeWashes } from './generate/lake-washes.js';
import type { Manifest } from './generate/manifest.js';
import { writeSpending } from './generate/office-writer.js';
import { randomStream } from './generate/random.js';
import { writeRoadDays, writeRoadStations } from './generate/road-days.js';
import { writeRoadForms } from './generate/road-forms.js';
import { writeRoadWashes } from './generate/road-washes.js';
import { repeatedNumbers, withSlips } from './generate/slips.js';
import { spendingOf } from './generate/spending.js';
import { type StationDay, stationDays } from './generate/station-days.js';
import { isRoad, type Station, stations } from './generate/stations.js';
import { orderWashes } from './generate/washes.js';
import { seasons } from './truth.js';

export type { Dirt } from './generate/dirt.js';
export type { Figures } from './generate/figures.js';
export type { Manifest } from './generate/manifest.js';

/** What makes one basin different from another: its seed, and its size against the demo's. */
export interface BasinOptions {
  readonly seed?: number;
  readonly scale?: number;
}

/** What was written, and what is true of it by the generator's own objects. */
export interface Basin {
  readonly manifest: Manifest;
  /** Places that set a row aside; children of such rows, which follow them, are left out. */
  readonly dirt: readonly Dirt[];
  /** Contradictions in rows that are kept. */
  readonly notes: readonly Dirt[];
  readonly figures: Figures;
}

/** Writes the demo's exports into a folder, the same bytes every time. */
export async function writeExports(folder: string, options: BasinOptions = {}): Promise<Manifest> {
  return (await writeBasin(folder, options)).manifest;
}

/** Writes the exports into a folder and gives the truth about them with the manifest. */
export async function writeBasin(folder: string, { seed = 2025, scale = 1 }: BasinOptions = {}): Promise<Basin> {
  const dirt = new DirtBook(seed);
  const figures = new FigureBook();
  const visitors: Craft[] = [];
  const serials = { next: 1 };
  const pools = new Map(stations.map((place) => [place, craftPool(seed, scale, place, serials, visitors)]));
  const files: WrittenFile[] = [...writeLakeLists(folder), writeRoadStations(folder)];
  const allDays: StationDay[] = [];
  for (const season of seasons) {
    const days = new Map(stations.map((place) => [place, stationDays(seed, scale, season, place)]));
    const lakes = stations.filter((place) => !isRoad(place));
    const roads = stations.filter(isRoad);
    files.push(...writeLakeSeason(folder, seed, season, daysOf(days, lakes), made(lakes), dirt, figures));
    files.push(...writeRoadSeason(folder, seed, season, daysOf(days, roads), made(roads), dirt, figures));
    for (const list of days.values()) allDays.push(...list);

    function made(places: readonly Station[]): Inspection[] {
      return places.flatMap((place) => oneStation(seed, days.get(place)!, pools.get(place)!));
    }
    // Let the process breathe between seasons, so that progress can be shown.
    await new Promise((resume) => setImmediate(resume));
  }
  for (const day of allDays) figures.countDay(day);
  const ledger = spendingOf(seed, allDays);
  files.push(writeSpending(folder, ledger, dirt));
  for (const entry of ledger) figures.countSpending(entry);
  return {
    manifest: { seed, scale, files },
    dirt: dirt.setAside,
    notes: dirt.notes,
    figures: figures.figures(files),
  };
}

function daysOf(days: ReadonlyMap<Station, StationDay[]>, places: readonly Station[]): StationDay[] {
  return places.flatMap((place) => days.get(place)!);
}

function oneStation(seed: number, days: readonly StationDay[], pool: CraftPool): Inspection[] {
  const inspections = seasonInspections(seed, days, pool);
  orderWashes(seed, inspections);
  return inspections;
}

/** Puts forms in order of time, gives them their numbers, and numbers their washes alike. */
function numbered(inspections: Inspection[], prefix: string): void {
  inspections.forEach((inspection, index) => {
    inspection.number = `${prefix}${String(index + 1).padStart(5, '0')}`;
  });
  let washes = 0;
  for (const { wash, repeats } of inspections) {
    if (wash !== null && repeats === null) wash.number = `${prefix}W${String(++washes).padStart(4, '0')}`;
  }
}

function writeLakeSeason(
  folder: string,
  seed: number,
  season: number,
  days: readonly StationDay[],
  inspections: Inspection[],
  dirt: DirtBook,
  figures: FigureBook,
): WrittenFile[] {
  const random = randomStream(seed, `lake slips ${season}`);
  const forms = withSlips(
    random,
    inspections.sort((a, b) => a.started - b.started),
    true,
  );
  numbered(forms, `L${season % 100}-`);
  const repeated = repeatedNumbers(random, forms);
  const written = [
    writeLakeDays(folder, season, days, dirt),
    writeLakeInspections(folder, season, forms, repeated, dirt),
  ];
  const checks = writeLakeChecks(folder, season, forms, repeated, dirt);
  const washes = writeLakeWashes(folder, season, forms, dirt);
  const rechecks = writeLakeRechecks(folder, season, forms, dirt);
  for (const form of forms) figures.countInspection(form, checks.lost.get(form), rechecks.lost.get(form));
  return [...written, checks.written, washes, rechecks.written];
}

function writeRoadSeason(
  folder: string,
  seed: number,
  season: number,
  days: readonly StationDay[],
  inspections: Inspection[],
  dirt: DirtBook,
  figures: FigureBook,
): WrittenFile[] {
  const random = randomStream(seed, `road slips ${season}`);
  const forms = withSlips(
    random,
    inspections.sort((a, b) => a.started - b.started),
    false,
  );
  numbered(forms, `R${season}/`);
  const repeated = repeatedNumbers(random, forms);
  const written = [
    writeRoadDays(folder, season, days, dirt),
    writeRoadForms(folder, season, forms, repeated, dirt),
    writeRoadWashes(folder, season, forms, dirt),
  ];
  for (const form of forms) figures.countInspection(form, undefined, undefined);
  return written;
}

function writeTruth(folder: string, basin: Basin): void {
  const table = (places: readonly Dirt[]): string =>
    ['file,line,column,code', ...places.map(({ file, line, column, code }) => [file, line, column, code].join(','))]
      .join('\n')
      .concat('\n');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'dirt.csv'), table(basin.dirt));
  writeFileSync(join(folder, 'notes.csv'), table(basin.notes));
  writeFileSync(join(folder, 'figures.json'), `${JSON.stringify(basin.figures, null, 2)}\n`);
}

const here = dirname(fileURLToPath(import.meta.url));
if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { seed: { type: 'string' }, scale: { type: 'string' }, truth: { type: 'string' } },
  });
  const isDemo = positionals.length === 0 && values.seed === undefined && values.scale === undefined;
  const folder = positionals[0] ?? join(here, 'exports');
  const basin = await writeBasin(folder, {
    ...(values.seed === undefined ? {} : { seed: Number(values.seed) }),
    ...(values.scale === undefined ? {} : { scale: Number(values.scale) }),
  });
  const truthFolder = values.truth ?? (isDemo ? join(here, 'truth') : null);
  if (truthFolder !== null) writeTruth(truthFolder, basin);
  const { files } = basin.manifest;
  if (isDemo) writeFileSync(join(here, 'manifest.json'), `${JSON.stringify(basin.manifest, null, 2)}\n`);
  const megabytes = files.reduce((sum, { bytes }) => sum + bytes, 0) / 1e6;
  console.log(`${files.length} files, ${megabytes.toFixed(1)} MB, written to ${folder}`);
}
