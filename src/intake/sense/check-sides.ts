import { side } from '../../record/codes.js';
import { components } from '../../record/components.js';
import type { FileReading } from '../read-file.js';
import { sayingOf } from '../rules/saying-of.js';
import { positionOf, remarkAsSet } from '../set-aside.js';
import { codeNumber } from './code-number.js';

const oneSide = sayingOf('one-side-only');

/** Two bits for each of many places: there are as many as inspections times parts with two sides. */
class PairsOfBits {
  readonly #bytes: Uint8Array;

  constructor(count: number) {
    this.#bytes = new Uint8Array((count + 3) >>> 2);
  }

  add(place: number, bits: number): void {
    this.#bytes[place >>> 2]! |= bits << ((place & 3) << 1);
  }

  at(place: number): number {
    return (this.#bytes[place >>> 2]! >> ((place & 3) << 1)) & 3;
  }
}

/** Remarks on every kept look at one side of a part whose other side the same inspection does not record. */
export function checkSides(all: readonly FileReading[], keys: number): void {
  const sided = components.flatMap((component, index) => (component.sided ? [index + 1] : []));
  // By the part's number: its place among those with two sides, from 1.
  const placeOf = new Uint8Array(components.length + 1);
  for (const [place, component] of sided.entries()) placeOf[component] = place + 1;
  const bitOf = new Uint8Array(side.codes.length + 1);
  bitOf[codeNumber('checks', 'side', 'port')] = 1;
  bitOf[codeNumber('checks', 'side', 'starboard')] = 2;
  const recorded = new PairsOfBits(keys * sided.length);
  const checks = all.filter(({ draft }) => draft.table.name === 'checks');
  const columnsOf = ({ draft }: FileReading) => draft.table.key.map((name) => draft.columns.get(name)!.values);
  for (const reading of checks) {
    const { aside, rowCount } = reading.draft;
    const [inspections, parts, sides] = columnsOf(reading);
    for (let row = 0; row < rowCount; row++) {
      const bit = bitOf[sides![row]!]!;
      if (bit === 0 || aside[row] === 1) continue;
      const place = placeOf[parts![row]!]!;
      if (place > 0) recorded.add(inspections![row]! * sided.length + place - 1, bit);
    }
  }
  for (const reading of checks) {
    const { aside, rowCount } = reading.draft;
    const [inspections, parts, sides] = columnsOf(reading);
    const position = positionOf(reading, 'side');
    for (let row = 0; row < rowCount; row++) {
      if (bitOf[sides![row]!] === 0 || aside[row] === 1) continue;
      const place = placeOf[parts![row]!]!;
      if (place === 0 || recorded.at(inspections![row]! * sided.length + place - 1) === 3) continue;
      remarkAsSet(reading, row, position, oneSide);
    }
  }
}
