import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { Craft } from './generate/craft.js';
import { type CraftPool, craftPool } from './generate/craft-pool.js';
import { type Dirt, DirtBook } from './generate/dirt.js';
import type { WrittenFile } from './generate/export-file.js';
import { FigureBook, type Figures } from './generate/figures.js';
import type { Inspection } from './generate/inspection.js';
import { seasonInspections } from './generate/inspections.js';
import { writeLakeLists } from './generate/lake-lists.js';
import type { Manifest } from './generate/manifest.js';
import { writeSpending } from './generate/office-writer.js';
import { writeRoadStations } from './generate/road-days.js';
import { spendingOf } from './generate/spending.js';
import { type StationDay, stationDays } from './generate/station-days.js';
import { isRoad, type Station, stations } from './generate/stations.js';
import { orderWashes } from './generate/washes.js';
import { type SeasonToWrite, writeLakeSeason, writeRoadSeason } from './generate/write-season.js';
import { seasons } from './truth.js';

export type { Dirt } from './generate/dirt.js';
export type { Figures } from './generate/figures.js';
export type { Manifest } from './generate/manifest.js';

/** What makes one basin different from another: its seed, and its size against the demo's. */
export interface BasinOptions {
  readonly seed?: number;
  readonly scale?: number;
  /** Whether nothing is spoilt and nobody slips, so that the records follow the truth alone. */
  readonly clean?: boolean;
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
export async function writeBasin(folder: string, options: BasinOptions = {}): Promise<Basin> {
  const { seed = 2025, scale = 1, clean = false } = options;
  const dirt = new DirtBook(seed, clean);
  const figures = new FigureBook();
  const visitors: Craft[] = [];
  const serials = { next: 1 };
  const pools = new Map(stations.map((place) => [place, craftPool(seed, scale, place, serials, visitors)]));
  const files: WrittenFile[] = [...writeLakeLists(folder), writeRoadStations(folder)];
  const allDays: StationDay[] = [];
  for (const season of seasons) {
    const days = new Map(stations.map((place) => [place, stationDays(seed, scale, season, place)]));
    const ofPlaces = (places: readonly Station[]): SeasonToWrite => ({
      folder,
      seed,
      season,
      dirt,
      figures,
      days: places.flatMap((place) => days.get(place)!),
      inspections: places.flatMap((place) => oneStation(seed, days.get(place)!, pools.get(place)!)),
    });
    files.push(...writeLakeSeason(ofPlaces(stations.filter((place) => !isRoad(place)))));
    files.push(...writeRoadSeason(ofPlaces(stations.filter(isRoad))));
    for (const list of days.values()) allDays.push(...list);
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

function oneStation(seed: number, days: readonly StationDay[], pool: CraftPool): Inspection[] {
  const inspections = seasonInspections(seed, days, pool);
  orderWashes(seed, inspections);
  return inspections;
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
    options: {
      seed: { type: 'string' },
      scale: { type: 'string' },
      clean: { type: 'boolean' },
      truth: { type: 'string' },
    },
  });
  const isDemo = positionals.length === 0 && values.seed === undefined && values.scale === undefined && !values.clean;
  const folder = positionals[0] ?? join(here, 'exports');
  const basin = await writeBasin(folder, {
    ...(values.seed === undefined ? {} : { seed: Number(values.seed) }),
    ...(values.scale === undefined ? {} : { scale: Number(values.scale) }),
    clean: values.clean === true,
  });
  const truthFolder = values.truth ?? (isDemo ? join(here, 'truth') : null);
  if (truthFolder !== null) writeTruth(truthFolder, basin);
  const { files } = basin.manifest;
  if (isDemo) writeFileSync(join(here, 'manifest.json'), `${JSON.stringify(basin.manifest, null, 2)}\n`);
  const megabytes = files.reduce((sum, { bytes }) => sum + bytes, 0) / 1e6;
  console.log(`${files.length} files, ${megabytes.toFixed(1)} MB, written to ${folder}`);
}
