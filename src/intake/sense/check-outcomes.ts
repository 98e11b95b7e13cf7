import type { FileReading } from '../read-file.js';
import { sayingOf } from '../rules/saying-of.js';
import { positionOf, remarkAsSet } from '../set-aside.js';
import { codeNumber } from './code-number.js';

const withoutPart = sayingOf('outcome-without-part');
const withoutOutcome = sayingOf('part-without-outcome');

/** Which inspections have mussels on a kept look, by the number of their key: 1 for yes. */
function withMussels(all: readonly FileReading[], keys: number): Uint8Array {
  const found = new Uint8Array(keys);
  const mussels = codeNumber('checks', 'finding', 'mussels');
  const fouled = codeNumber('checks', 'state', 'fouled');
  for (const { draft } of all) {
    const inspections = draft.columns.get('inspection')?.values;
    if (inspections === undefined) continue;
    if (draft.table.name === 'checks') {
      const findings = draft.columns.get('finding')?.values;
      const states = draft.columns.get('state')?.values;
      if (findings === undefined || states === undefined) continue;
      for (let row = 0; row < draft.rowCount; row++) {
        // Few looks find mussels, so that this is asked first.
        if (findings[row] !== mussels || states[row] !== fouled || draft.aside[row] === 1) continue;
        found[inspections[row]!] = 1;
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

/** Remarks on every kept inspection whose outcome and parts contradict each other, where parts were read at all. */
export function checkOutcomes(all: readonly FileReading[], keys: number): void {
  if (!all.some(({ draft }) => draft.table.name === 'checks' || draft.fold?.table.name === 'checks')) return;
  const found = withMussels(all, keys);
  const intercepted = codeNumber('inspections', 'outcome', 'intercepted');
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
      remarkAsSet(reading, row, positionOf(reading, 'outcome'), saying);
    }
  }
}
