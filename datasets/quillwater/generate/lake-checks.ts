import { type DirtBook, raggedRows, type Spoiling, spoiltCell } from './dirt.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import type { Inspection } from './inspection.js';
import * as codes from './lake-codes.js';
import type { Look } from './looks.js';
import { parts } from './parts.js';

/** The columns of one look, in checks and rechecks alike. */
export const lookHeader = ['part', 'side', 'state', 'found', 'stage', 'amount', 'alive', 'by'];

/** One look in the tablets’ codes. */
export function lookCells(look: Look): string[] {
  const { found } = look;
  return [
    codes.lakeParts[look.part]!,
    codes.lakeSides[look.side]!,
    codes.lakeStates[look.state]!,
    found === null ? '' : codes.lakeFindings[found.finding]!,
    found?.stage == null ? '' : { attached: 'ATT', settler: 'SET' }[found.stage]!,
    found?.abundance == null ? '' : { trace: '1', some: '2', many: '3', encrusted: '4' }[found.abundance]!,
    found?.viability == null ? '' : { alive: 'L', dead: 'D', undetermined: 'U' }[found.viability]!,
    found === null ? '' : found.by.toUpperCase(),
  ];
}

/** Only rows of parts without sides and without a find are spoilt, so that no contradiction follows from it. */
const spoilable = (look: Look): boolean => look.side === 'none' && look.state !== 'fouled';
const spoilings: readonly Spoiling<Look>[] = [
  spoiltCell('unknown-code', 'part', (cell) => cell.replace(/[AEIOU]/, '')),
  spoiltCell('unknown-reference', 'insp_id', (cell) => `${cell.slice(0, 3)}9${cell.slice(4)}`),
  spoiltCell('unknown-code', 'state', 'OKAY'),
  ...raggedRows<Look>(),
  spoiltCell('missing-value', 'state', ''),
  spoiltCell('unknown-code', 'side', 'X'),
];

/** A season's component checks: a row for each part and side of each inspection. */
export function writeLakeChecks(
  folder: string,
  season: number,
  inspections: readonly Inspection[],
  repeated: ReadonlyMap<Inspection, Inspection>,
  dirt: DirtBook,
): { readonly written: WrittenFile; readonly lost: Map<Inspection, Set<Look>> } {
  const header = ['insp_id', ...lookHeader];
  const file = new ExportFile(folder, `lakes/component-checks-${season}.csv`, header, codes.lakeDialect(season));
  const lost = new Map<Inspection, Set<Look>>();
  const gimbal = parts.findIndex(({ part }) => part === 'gimbal area');
  let untilRepeat = 20_000;
  let untilImpossible = 9_000;
  for (const inspection of inspections) {
    if (repeated.has(inspection)) continue;
    for (const look of inspection.looks) {
      const cells = [inspection.number, ...lookCells(look)];
      const alone = inspection.kept && look.side !== 'none' && isAlone(inspection, look);
      untilRepeat--;
      untilImpossible--;
      if (!inspection.kept || inspection.protected) file.row(cells);
      else if (!dirt.write(file, cells, look, spoilable(look) ? 0.0025 : 0, spoilings)) {
        lost.set(inspection, (lost.get(inspection) ?? new Set()).add(look));
      } else if (untilRepeat < 0 && spoilable(look)) {
        dirt.writeFaulty(file, cells, 'insp_id', 'duplicate-key');
        untilRepeat = 20_000;
      }
      if (alone) dirt.note(file, 'side', 'one-side-only');
    }
    if (
      untilImpossible < 0 &&
      inspection.kept &&
      inspection.craft.type === 'paddlecraft' &&
      inspection.extent === 'full'
    ) {
      const cells = [inspection.number, codes.lakeParts[gimbal]!, '-', 'OK', '', '', '', '', ''];
      dirt.writeFaulty(file, cells, 'part', 'impossible-part');
      untilImpossible = 9_000;
    }
  }
  return { written: file.close(), lost };
}

/** Whether only one side of a two-sided part was recorded. */
function isAlone(inspection: Inspection, look: Look): boolean {
  return !inspection.looks.some(({ part, side }) => part === look.part && side !== look.side);
}
