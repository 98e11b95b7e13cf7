import { type CraftDrawing, drawnComponents } from '../../../src/chart/craft/craft-drawing.js';
import type { Result } from '../../../src/formula/result.js';
import type { ChartRequest, EvaluatedSheet } from '../../../src/notebook/evaluated.js';
import { key, number, request, share, sheet, text, value } from '../small-sheet.js';

/** A row of a sheet of fouling sites: the part, craft fouled there of 40, looks, and the skipped share. */
export type PartRow = readonly [component: string, fouled: number, looks: number, skipped: number];

/** A sheet of fouling sites from a few rows. */
export function sitesSheet(rows: readonly PartRow[]): EvaluatedSheet {
  return sheet(
    [key('component'), value('share', 'percent'), value('looked', 'whole'), value('skipped', 'percent')],
    rows.map(([component, fouled, looks, skipped]): Result[] => [
      text(component),
      share(fouled, 40, fouled === 0 ? 0 : (fouled - 1) / 40, (fouled + 3) / 40),
      number(looks),
      number(skipped),
    ]),
  );
}

/** Invented figures for parts of a craft, of every standing: all of them, or the ones on a usual form. */
export function inventedSites(drawing: CraftDrawing, every: 'all' | 'usual'): EvaluatedSheet {
  const unusual = ['waterline', 'seams and welds', 'zincs', 'gear', 'fenders', 'mooring lines', 'speed indicator'];
  const listed = drawnComponents(drawing).filter((component) => every === 'all' || !unusual.includes(component));
  return sitesSheet(
    listed.map((component, at) => [component, (at * 7) % 23, at % 9 === 8 ? 4 : 900, at % 4 === 0 ? 0.21 : 0.05]),
  );
}

/** The request for a drawing of those sheets. */
export function craftRequest(craft: string, more: Readonly<Record<string, string>> = {}): ChartRequest {
  const options = { part: 'component', craft, value: 'share', looks: 'looked', skipped: 'skipped', ...more };
  return { ...request('craft', options), name: `craft-${craft}` };
}
