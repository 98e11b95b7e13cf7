import { type DirtBook, type Spoiling, spoiltCell } from './dirt.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import type { Inspection } from './inspection.js';
import { lookCells, lookHeader } from './lake-checks.js';
import * as codes from './lake-codes.js';
import type { Look } from './looks.js';

const spoilings: readonly Spoiling<Look>[] = [
  spoiltCell('unknown-code', 'part', (cell) => `${cell}?`),
  spoiltCell('unknown-reference', 'insp_id', (cell) => `${cell.slice(0, 3)}9${cell.slice(4)}`),
  spoiltCell('not-a-date', 'again_at', (cell) => `00${cell.slice(2)}`),
];

/** A season's blind second looks. */
export function writeLakeRechecks(
  folder: string,
  season: number,
  inspections: readonly Inspection[],
  dirt: DirtBook,
): { readonly written: WrittenFile; readonly lost: Map<Inspection, Set<Look>> } {
  const header = ['insp_id', ...lookHeader, 'again_at', 'second_staff'];
  const file = new ExportFile(folder, `lakes/rechecks-${season}.csv`, header, codes.lakeDialect(season));
  const lost = new Map<Inspection, Set<Look>>();
  for (const inspection of inspections) {
    if (inspection.recheck === null || inspection.repeats !== null) continue;
    const { looks, at, inspector } = inspection.recheck;
    for (const look of looks) {
      const cells = [inspection.number, ...lookCells(look), codes.lakeMoment(at), inspector];
      const rate = inspection.kept && look.side === 'none' && look.state !== 'fouled' ? 0.004 : 0;
      if (!dirt.write(file, cells, look, rate, spoilings)) {
        lost.set(inspection, (lost.get(inspection) ?? new Set()).add(look));
      }
    }
  }
  return { written: file.close(), lost };
}
