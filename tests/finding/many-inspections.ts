import { inspection, type SmallRow } from './small-records.js';

/** So many full inspections alike, the first of them interceptions, with numbers that begin with a mark. */
export function many(mark: string, full: number, intercepted: number, more: SmallRow = {}): SmallRow[] {
  return Array.from({ length: full }, (_, at) =>
    inspection(`${mark}${at}`, { outcome: at < intercepted ? 'intercepted' : 'cleared', ...more }),
  );
}
