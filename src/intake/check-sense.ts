import { components } from '../record/components.js';
import type { Field } from '../record/field.js';
import { tableOf } from '../record/tables.js';
import { carriersOf, craftKind } from './carriers.js';
import { impossiblePart } from './fold-cells.js';
import type { FileReading } from './read-file.js';
import type { Saying } from './remark.js';
import { positionOf, remarkOn } from './set-aside.js';

const withoutPart: Saying = {
  code: 'outcome-without-part',
  reason: 'the craft was intercepted, and no part is recorded with mussels',
  remedy: 'Compare with the form: the part was not entered, or the outcome is wrong.',
};

const withoutOutcome: Saying = {
  code: 'part-without-outcome',
  reason: 'a part is recorded with mussels, and the craft was not intercepted',
  remedy: 'Compare with the form: the outcome was not changed, or the finding is wrong.',
};

const oneSide: Saying = {
  code: 'one-side-only',
  reason: 'the part has two sides, and only one is recorded',
  remedy: 'Compare with the form; the other side counts as nothing, neither clean nor skipped.',
};

function codeOf(table: 'checks' | 'inspections', fieldName: string, code: string): number {
  const field: Field | undefined = tableOf(table).fields.find(({ name }) => name === fieldName);
  if (field?.type !== 'code') throw new Error(`${table} has no codes ${fieldName}`);
  return field.codes.codes.findIndex((entry) => entry.code === code) + 1;
}

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
  const clean = codeOf('checks', 'state', 'clean');
  const fouled = codeOf('checks', 'state', 'fouled');
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
        remarkOn(reading, row, positionOf(reading, 'component'), impossiblePart);
      }
    }
  }
}

/** Which inspections have mussels on a kept look, by the number of their key: 1 for yes. */
function withMussels(all: readonly FileReading[], keys: number): Uint8Array {
  const found = new Uint8Array(keys);
  const mussels = codeOf('checks', 'finding', 'mussels');
  const fouled = codeOf('checks', 'state', 'fouled');
  for (const { draft } of all) {
    const inspections = draft.columns.get('inspection')?.values;
    if (inspections === undefined) continue;
    if (draft.table.name === 'checks') {
      const findings = draft.columns.get('finding')?.values;
      const states = draft.columns.get('state')?.values;
      for (let row = 0; row < draft.rowCount; row++) {
        if (draft.aside[row] === 1) continue;
        if (findings?.[row] === mussels && states?.[row] === fouled) found[inspections[row]!] = 1;
      }
    } else if (draft.fold?.table.name === 'checks') {
      const width = draft.fold.columns.length;
      const says = [...draft.fold.values.values()].map(
        (said) => said.get('finding') === 'mussels' && said.get('state') === 'fouled',
      );
      for (let cell = 0; cell < draft.rowCount * width; cell++) {
        if (says[draft.folded[cell]! - 1]) found[inspections[Math.floor(cell / width)]!] = 1;
      }
    }
  }
  return found;
}

/** Notes every kept inspection whose outcome and parts contradict each other, where parts were read at all. */
export function noteContradictions(all: readonly FileReading[], keys: number): void {
  if (!all.some(({ draft }) => draft.table.name === 'checks' || draft.fold?.table.name === 'checks')) return;
  const found = withMussels(all, keys);
  const intercepted = codeOf('inspections', 'outcome', 'intercepted');
  for (const reading of all) {
    const { draft } = reading;
    if (draft.table.name !== 'inspections') continue;
    const inspections = draft.columns.get('inspection')!.values;
    const outcomes = draft.columns.get('outcome')!.values;
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1) continue;
      const isIntercepted = outcomes[row] === intercepted;
      const isFound = found[inspections[row]!] === 1;
      if (isIntercepted === isFound) continue;
      const saying = isIntercepted ? withoutPart : withoutOutcome;
      remarkOn(reading, row, positionOf(reading, 'outcome'), saying, 'notes');
    }
  }
}

/** Notes every kept look at one side of a part whose other side the same inspection does not record. */
export function noteSingleSides(all: readonly FileReading[], keys: number): void {
  const sided = components.flatMap((component, index) => (component.sided ? [index + 1] : []));
  const placeOf = new Int8Array(components.length + 1).fill(-1);
  for (const [place, component] of sided.entries()) placeOf[component] = place;
  const port = codeOf('checks', 'side', 'port');
  const starboard = codeOf('checks', 'side', 'starboard');
  const recorded = new Uint8Array(keys * sided.length);
  const eachSide = (visit: (reading: FileReading, row: number, at: number, bit: number) => void): void => {
    for (const reading of all) {
      const { draft } = reading;
      if (draft.table.name !== 'checks') continue;
      const [inspections, parts, sides] = draft.table.key.map((name) => draft.columns.get(name)!.values);
      for (let row = 0; row < draft.rowCount; row++) {
        const place = placeOf[parts![row]!]!;
        const bit = sides![row] === port ? 1 : sides![row] === starboard ? 2 : 0;
        if (place < 0 || bit === 0 || draft.aside[row] === 1) continue;
        visit(reading, row, inspections![row]! * sided.length + place, bit);
      }
    }
  };
  eachSide((_, __, at, bit) => {
    recorded[at] = recorded[at]! | bit;
  });
  eachSide((reading, row, at) => {
    if (recorded[at] !== 3) remarkOn(reading, row, positionOf(reading, 'side'), oneSide, 'notes');
  });
}
