import { side } from '../record/codes.js';
import { fieldOf, type TableDefinition } from '../record/field.js';
import { componentCodes } from '../record/tables/checks.js';
import type { Texts } from './key-space.js';
import type { FileReading } from './read-file.js';
import type { Saying } from './remark.js';
import { RowSet } from './row-set.js';
import { positionOf, remarkOn } from './set-aside.js';

function repeated(table: TableDefinition): Saying {
  return {
    code: 'duplicate-key',
    reason: `an earlier row has the same ${table.key.join(', ')}`,
    remedy:
      'If it is the same record, leave this row out; if not, give it a key of its own, or a prefix in the crosswalk where numbers begin anew.',
  };
}

const sideCount = side.codes.length + 1;
const partCount = (componentCodes.codes.length + 1) * sideCount;

function hasKey(reading: FileReading): boolean {
  return reading.draft.table.key.every((name) => reading.draft.columns.has(name));
}

/**
 * Looks are many and mostly stand together by inspection, so that a stamp for each part tells a repeat; only inspections
 * whose looks are scattered are remembered one by one.
 */
function checkLooks(
  readings: readonly FileReading[],
  folded: ReadonlyMap<number, ReadonlySet<number>>,
  keys: number,
): void {
  const stamps = new Int32Array(partCount);
  let run = 0;
  /** By the inspection's number: whether a look of it was met before. */
  const met = new Uint8Array(keys);
  const scattered = new Set<number>();
  const eachLook = (visit: (reading: FileReading, row: number, inspection: number, part: number) => void): void => {
    for (const reading of readings) {
      const { draft } = reading;
      const [inspections, components, sides] = draft.table.key.map((name) => draft.columns.get(name)!.values);
      for (let row = 0; row < draft.rowCount; row++) {
        if (draft.aside[row] === 1) continue;
        visit(reading, row, inspections![row]!, components![row]! * sideCount + sides![row]!);
      }
    }
  };
  const setAside = (reading: FileReading, row: number) => {
    const { table } = reading.draft;
    remarkOn(reading, row, positionOf(reading, table.key[0]!), repeated(table));
  };
  const hasFolded = folded.size > 0;
  let current = 0;
  eachLook((reading, row, inspection, part) => {
    if (inspection !== current) {
      if (met[inspection] === 1) scattered.add(inspection);
      met[inspection] = 1;
      current = inspection;
      run++;
    }
    if (stamps[part] === run || (hasFolded && folded.get(inspection)?.has(part))) setAside(reading, row);
    else stamps[part] = run;
  });
  if (scattered.size === 0) return;
  const seen = new Set<number>();
  eachLook((reading, row, inspection, part) => {
    if (!scattered.has(inspection)) return;
    const look = inspection * partCount + part;
    if (seen.has(look)) setAside(reading, row);
    seen.add(look);
  });
}

/** The parts that each inspection of a wide checklist records already, by the inspection's number. */
function foldedParts(table: TableDefinition, owners: readonly FileReading[]): ReadonlyMap<number, ReadonlySet<number>> {
  const parts = new Map<number, ReadonlySet<number>>();
  for (const { draft } of owners) {
    if (draft.fold?.table !== table) continue;
    const codeOf = (name: string, code: string): number => {
      const field = table.fields.find((entry) => entry.name === name);
      if (field?.type !== 'code') throw new Error(`${table.name} has no codes ${name}`);
      return field.codes.codes.findIndex((entry) => entry.code === code) + 1;
    };
    const recorded = new Set(
      draft.fold.columns.map(
        (column) => codeOf('component', column.component) * sideCount + codeOf('side', column.side),
      ),
    );
    const keys = draft.columns.get(draft.table.key[0]!)!.values;
    for (let row = 0; row < draft.rowCount; row++) if (draft.aside[row] === 0) parts.set(keys[row]!, recorded);
  }
  return parts;
}

/** Texts are numbered, so that a mark for each number tells a repeat. */
function checkTextKeys(readings: readonly FileReading[], keys: number): void {
  const met = new Uint8Array(keys);
  for (const reading of readings) {
    const { draft } = reading;
    const { table } = draft;
    const codes = draft.columns.get(table.key[0]!)!.values;
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1) continue;
      const code = codes[row]!;
      if (met[code] === 1) remarkOn(reading, row, positionOf(reading, table.key[0]!), repeated(table));
      met[code] = 1;
    }
  }
}

/** Sets aside every row whose key an earlier row has; rows set aside before do not count as earlier ones. */
export function checkKeys(
  table: TableDefinition,
  readings: readonly FileReading[],
  all: readonly FileReading[],
  texts: Texts,
): void {
  const keyed = readings.filter(hasKey);
  if (table.key[1] === 'component') {
    checkLooks(keyed, foldedParts(table, all), texts.spaceOf('inspections').interner.size);
    return;
  }
  if (table.key.length === 1 && keyed.every(({ draft }) => draft.columns.get(table.key[0]!)!.interner !== null)) {
    checkTextKeys(keyed, texts.internerOf(table.name, fieldOf(table, table.key[0]!)!).size);
    return;
  }
  const rows = new RowSet(keyed.map(({ draft }) => table.key.map((name) => draft.columns.get(name)!.values)));
  for (const [index, reading] of keyed.entries()) {
    for (let row = 0; row < reading.draft.rowCount; row++) {
      if (reading.draft.aside[row] === 1 || rows.add(index, row)) continue;
      remarkOn(reading, row, positionOf(reading, table.key[0]!), repeated(table));
    }
  }
}
