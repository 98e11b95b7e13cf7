import { components } from '../../record/components.js';
import { carriersOf, craftKind } from '../carriers.js';
import { findingFields, impossiblePart, readsAsAbsent, takenAsAbsent } from '../impossible-part.js';
import type { FileReading } from '../read-file.js';
import { positionOf, remarkAsSet, remarkOn } from '../set-aside.js';
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

/**
 * Remarks on every look at a part that the inspected craft does not carry, as its crosswalk sets the rule: one that is called
 * clean, and tells of nothing found, may be read as absent.
 */
export function checkParts(readings: readonly FileReading[], kinds: Int16Array): void {
  const carriers = components.map(({ component }) => carriersOf(component));
  const clean = codeNumber('checks', 'state', 'clean');
  const fouled = codeNumber('checks', 'state', 'fouled');
  const absent = codeNumber('checks', 'state', 'absent');
  for (const reading of readings) {
    const { draft } = reading;
    const inspections = draft.columns.get('inspection')?.values;
    const parts = draft.columns.get('component')?.values;
    const states = draft.columns.get('state')?.values;
    if (inspections === undefined || parts === undefined || states === undefined) continue;
    const position = positionOf(reading, 'component');
    const asAbsent = readsAsAbsent(reading.rule.choices);
    const found = findingFields.flatMap((name) => draft.columns.get(name)?.values ?? []);
    for (let row = 0; row < draft.rowCount; row++) {
      const kind = kinds[inspections[row]!] ?? -1;
      if (kind < 0 || parts[row] === 0 || (states[row] !== clean && states[row] !== fouled)) continue;
      if (carriers[parts[row]! - 1]![kind] === 1) continue;
      if (asAbsent && states[row] === clean && found.every((values) => values[row] === 0)) {
        states[row] = absent;
        reading.absent.add(row);
        remarkOn(reading, row, position, takenAsAbsent, 'notes');
      } else remarkAsSet(reading, row, position, impossiblePart);
    }
  }
}
