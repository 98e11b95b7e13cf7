import type { DirtBook } from './dirt.js';
import type { WrittenFile } from './export-file.js';
import type { FigureBook } from './figures.js';
import type { Inspection } from './inspection.js';
import { writeLakeChecks } from './lake-checks.js';
import { writeLakeDays } from './lake-days.js';
import { writeLakeInspections } from './lake-inspections.js';
import { writeLakeRechecks } from './lake-rechecks.js';
import { writeLakeWashes } from './lake-washes.js';
import { randomStream } from './random.js';
import { writeRoadDays } from './road-days.js';
import { writeRoadForms } from './road-forms.js';
import { writeRoadWashes } from './road-washes.js';
import { repeatedNumbers, withSlips } from './slips.js';
import type { StationDay } from './station-days.js';

/** What one export format holds of one season, and the books in which its writing is kept. */
export interface SeasonToWrite {
  readonly folder: string;
  readonly seed: number;
  readonly season: number;
  readonly days: readonly StationDay[];
  readonly inspections: readonly Inspection[];
  readonly dirt: DirtBook;
  readonly figures: FigureBook;
}

interface Forms {
  readonly forms: readonly Inspection[];
  readonly repeated: ReadonlyMap<Inspection, Inspection>;
}

/** Puts forms in order of time, lets people slip, and numbers forms and washes. */
function formsOf(toWrite: SeasonToWrite, stream: string, prefix: string, sidesMayBeLost: boolean): Forms {
  const { seed, season, inspections, dirt } = toWrite;
  const random = randomStream(seed, `${stream} ${season}`);
  const ordered = inspections.toSorted((a, b) => a.started - b.started);
  const forms = dirt.clean ? ordered : withSlips(random, ordered, sidesMayBeLost);
  forms.forEach((form, index) => {
    form.number = `${prefix}${String(index + 1).padStart(5, '0')}`;
  });
  let washes = 0;
  for (const { wash, repeats } of forms) {
    if (wash !== null && repeats === null) wash.number = `${prefix}W${String(++washes).padStart(4, '0')}`;
  }
  return { forms, repeated: dirt.clean ? new Map() : repeatedNumbers(random, forms) };
}

/** Writes a season of the lake tablets, and counts what is kept of it. */
export function writeLakeSeason(toWrite: SeasonToWrite): WrittenFile[] {
  const { folder, season, days, dirt, figures } = toWrite;
  const { forms, repeated } = formsOf(toWrite, 'lake slips', `L${season % 100}-`, true);
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

/** Writes a season of the road stations' forms, and counts what is kept of it. */
export function writeRoadSeason(toWrite: SeasonToWrite): WrittenFile[] {
  const { folder, season, days, dirt, figures } = toWrite;
  const { forms, repeated } = formsOf(toWrite, 'road slips', `R${season}/`, false);
  const written = [
    writeRoadDays(folder, season, days, dirt),
    writeRoadForms(folder, season, forms, repeated, dirt),
    writeRoadWashes(folder, season, forms, dirt),
  ];
  for (const form of forms) figures.countInspection(form, undefined, undefined);
  return written;
}
