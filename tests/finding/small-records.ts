import { recordsOfRows, type WrittenRow } from '../../src/finding/example/records-of-rows.js';
import type { ImportSum } from '../../src/record/file-sum.js';

/** A record as it would be written down: dates as `2025-06-01`, instants as ISO text with `Z`. */
export type SmallRow = WrittenRow;

/** Records from a few rows; tables not named have none. */
export const smallRecords = recordsOfRows;

/** An import of no files, told up to a moment. */
export function smallSum(asOf: string | null, more: Partial<ImportSum> = {}): ImportSum {
  return {
    files: [],
    definitionChanges: [],
    asOf: asOf === null ? null : Date.parse(asOf),
    fingerprint: '0'.repeat(64),
    ...more,
  };
}

export const elkPoint: SmallRow = {
  station: 'elk',
  name: 'Elk Point',
  setting: 'launch',
  time_zone: 'America/Denver',
};
export const pineGate: SmallRow = {
  station: 'pine',
  name: 'Pine Gate',
  setting: 'roadside',
  time_zone: 'America/Los_Angeles',
};

/** A full inspection at Elk Point at 18:00 UTC on 1 June 2025 with the named differences. */
export function inspection(number: string, more: SmallRow = {}): SmallRow {
  return {
    inspection: number,
    station: 'elk',
    started_at: '2025-06-01T18:00Z',
    direction: 'arriving',
    extent: 'full',
    watercraft_type: 'open motorboat',
    outcome: 'cleared',
    ...more,
  };
}

/** A look at one part: its state, or `mussels` for a part fouled with attached mussels, some of them. */
export function look(
  number: string,
  component: string,
  state: 'absent' | 'not checked' | 'clean' | 'mussels',
  side = 'none',
  more: SmallRow = {},
): SmallRow {
  const found: SmallRow =
    state === 'mussels' ? { state: 'fouled', finding: 'mussels', stage: 'attached', abundance: 'some' } : { state };
  return { inspection: number, component, side, ...found, ...more };
}
