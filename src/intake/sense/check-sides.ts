import { components } from '../../record/components.js';
import type { FileReading } from '../read-file.js';
import { sayingOf } from '../rules/saying-of.js';
import { positionOf, remarkAsSet } from '../set-aside.js';
import { codeNumber } from './code-number.js';

const oneSide = sayingOf('one-side-only');

/** Remarks on every kept look at one side of a part whose other side the same inspection does not record. */
export function checkSides(all: readonly FileReading[], keys: number): void {
  const sided = components.flatMap((component, index) => (component.sided ? [index + 1] : []));
  const placeOf = new Int8Array(components.length + 1).fill(-1);
  for (const [place, component] of sided.entries()) placeOf[component] = place;
  const port = codeNumber('checks', 'side', 'port');
  const starboard = codeNumber('checks', 'side', 'starboard');
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
    if (recorded[at] !== 3) remarkAsSet(reading, row, positionOf(reading, 'side'), oneSide);
  });
}
