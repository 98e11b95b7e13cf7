import { MissingTexts } from './cell.js';
import type { CellReading } from './cell-reading.js';
import type { FileRule } from './crosswalk.js';
import type { Draft } from './draft.js';
import { type Fault, fault } from './fault.js';
import { JoinedCells } from './joined-cells.js';
import { moveToNextDay } from './next-day.js';
import { partAtFault } from './part-at-fault.js';
import type { RecordScanner } from './record-scanner.js';

/** Told of what was wrong with the cells of a field, and of which of them. */
type OnFault = (found: Fault, reading: CellReading, position: number) => void;

/** The fields of a table that are read from several cells of a row each. */
export class CombinedCells {
  readonly readings: readonly CellReading[];
  readonly #missing: readonly MissingTexts[];
  readonly #joined = new JoinedCells();
  readonly #draft: Draft;

  constructor(readings: readonly CellReading[], rule: FileRule, draft: Draft) {
    // By the order of the table's fields, in which each moment follows those before it.
    const placeOf = ({ rule: { field } }: CellReading) => rule.table.fields.indexOf(field);
    this.readings = readings.filter(({ positions }) => positions.length > 1).sort((a, b) => placeOf(a) - placeOf(b));
    this.#missing = this.readings.map((reading) => new MissingTexts(reading.rule.missing ?? rule.missing));
    this.#draft = draft;
  }

  /** Reads them from the scanner's row into a row of the draft. */
  read(scanner: RecordScanner, row: number, onFault: OnFault): void {
    for (const [index, reading] of this.readings.entries())
      this.#readOne(scanner, reading, this.#missing[index]!, row, onFault);
  }

  #readOne(scanner: RecordScanner, reading: CellReading, missing: MissingTexts, row: number, onFault: OnFault): void {
    const joined = this.#joined;
    const { positions } = reading;
    const { codes, minus, field, partlyBlankIsMissing } = reading.rule;
    // A joined text that stands among the codes means what they say, whichever of its cells are blank.
    const isMapped = codes !== null || minus !== undefined;
    joined.take(scanner, positions, missing, isMapped);
    if (minus !== undefined) joined.sign(minus);
    const read = reading.cell.read(joined.bytes, 0, joined.length, row);
    const found = read === fault.none ? moveToNextDay(reading, this.#draft, row) : read;
    const at = joined.isMissing.indexOf(true);
    if (!joined.isMissing.includes(false)) {
      if (field.required) onFault(fault.missingValue, reading, positions[0]!);
    } else if (at >= 0 && !isMapped) {
      if (partlyBlankIsMissing === true) reading.cell.read(joined.bytes, 0, 0, row);
      else onFault(fault.partlyMissing, reading, positions[at]!);
    } else if (found !== fault.none) {
      onFault(found, reading, positions[partAtFault(reading.cell, joined.lengths)]!);
    }
  }
}
