import { components } from '../../record/components.js';
import { carriersOf, craftKind } from '../carriers.js';
import { impossiblePart } from '../fold-cells.js';
import type { FileReading } from '../read-file.js';
import { positionOf, remarkAsSet } from '../set-aside.js';
import { codeNumber } from './code-number.js';

/**
 * The kind of craft of each inspection, by the number of its key, as `carriersOf` counts them; −1 where no kept inspection
 * has the key.
 */
export function craftKinds(inspections: readonly FileReading[], keys: number): Int16Array {
  const kinds = new Int16Array(keys).fill(-1);
  for (const { draft } of inspections) {
    const key = draft.columns.get('inspection')?.values;
    const types = draft.columns.get('watercraft_type')?.values;
    const drives = draft.columns.get('drive')?.values;
    if (key === undefined) continue;
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 0) kinds[key[row]!] = craftKind(types?.[row] ?? 0, drives?.[row] ?? 0);
    }
  }
  return kinds;
}

/** Sets aside every look at a part that the inspected craft does not carry. */
export function checkParts(readings: readonly FileReading[], kinds: Int16Array): void {
  const carriers = components.map(({ component }) => carriersOf(component));
  const clean = codeNumber('checks', 'state', 'clean');
  const fouled = codeNumber('checks', 'state', 'fouled');
  for (const reading of readings) {
    const { draft } = reading;
    const inspections = draft.columns.get('inspection')?.values;
    const parts = draft.columns.get('component')?.values;
    const states = draft.columns.get('state')?.values;
    if (inspections === undefined || parts === undefined || states === undefined) continue;
    for (let row = 0; row < draft.rowCount; row++) {
      const kind = kinds[inspections[row]!] ?? -1;
      if (kind < 0 || parts[row] === 0 || (states[row] !== clean && states[row] !== fouled)) continue;
      if (carriers[parts[row]! - 1]![kind] === 0) {
        remarkAsSet(reading, row, positionOf(reading, 'component'), impossiblePart);
      }
    }
  }
}
