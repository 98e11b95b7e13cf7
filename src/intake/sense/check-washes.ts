import type { FileReading } from '../read-file.js';
import { sayingOf } from '../rules/saying-of.js';
import { positionOf, remarkAsSet } from '../set-aside.js';

const apart = sayingOf('wash-apart');
const day = 86_400_000;

/**
 * Remarks on every kept wash that was ordered more than a day before the inspection that it names began, or longer after it
 * than a stage of a wash may take: where numbers of forms begin anew each season, a wash names another year's craft, and
 * nothing else of it looks wrong. `keys` is how many keys of inspections were met.
 */
export function checkWashes(all: readonly FileReading[], keys: number): void {
  const washes = all.filter(({ draft }) => draft.table.name === 'decontaminations');
  if (washes.length === 0) return;
  const startOf = new Float64Array(keys).fill(Number.NaN);
  for (const { draft } of all) {
    if (draft.table.name !== 'inspections') continue;
    const inspections = draft.columns.get('inspection')!.values;
    const starts = draft.columns.get('started_at')!.values;
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 0) startOf[inspections[row]!] = starts[row]!;
    }
  }
  for (const reading of washes) {
    const { draft, rule } = reading;
    const inspections = draft.columns.get('inspection')!.values;
    const orders = draft.columns.get('ordered_at')!.values;
    const longest = rule.choices.washStageDays * day;
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1) continue;
      const after = orders[row]! - startOf[inspections[row]!]!;
      // Without a kept inspection there is nothing to compare with, and NaN is neither.
      if (after > longest || after < -day) remarkAsSet(reading, row, positionOf(reading, 'ordered_at'), apart);
    }
  }
}
