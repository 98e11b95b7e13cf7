import { type Cell, type MissingTexts, trimmedEnd, trimmedStart } from './cell.js';
import type { DraftColumn } from './draft.js';
import { type Fault, fault } from './fault.js';
import { Interner } from './interner.js';
import { type BlockRows, readEach } from './row-block.js';
import { takenFrom, type WithinPattern } from './within.js';

/** What is done with a cell's text before it is read. */
export interface Preparation {
  /** The pattern that takes the value out of a longer text; null where the whole text is the value. */
  readonly within: WithinPattern | null;
  /** Whether a text that is not like the pattern has no value; otherwise it sets the row aside. */
  readonly orMissing: boolean;
  /** What stands between several values, and which of them is taken; null where there is only one. */
  readonly several: { readonly between: string; readonly take: 'first' | 'last' | 'only' } | null;
  /** What is put before a value that there is, so that numbers which begin anew each season stay apart; blank for nothing. */
  readonly prefix: string;
}

/** The text to be read in place of a cell's; null where the cell is not as declared. */
export function preparedText({ within, orMissing, several, prefix }: Preparation, text: string): string | null {
  const taken = within === null ? text : takenFrom(within, text);
  if (taken === null) return orMissing ? '' : null;
  const value = several === null ? taken : oneOf(several, taken);
  return value === null || value === '' ? value : prefix + value;
}

function oneOf({ between, take }: NonNullable<Preparation['several']>, text: string): string | null {
  const values = text.split(between).map((value) => value.trim());
  const present = values.filter((value) => value !== '');
  if (take === 'only' && new Set(present).size > 1) return null;
  return (take === 'last' ? present.at(-1) : present[0]) ?? '';
}

/** Reads cells whose value must first be taken out of their text; each distinct text is looked at once. */
export class PreparedCell implements Cell {
  readonly column: DraftColumn;
  /** The cell that reads what was taken. */
  readonly bare: Cell;
  readonly #preparation: Preparation;
  readonly #missing: MissingTexts;
  readonly #raw = new Interner();
  readonly #prepared: (Uint8Array | null)[] = [null];

  constructor(bare: Cell, preparation: Preparation, missing: MissingTexts) {
    this.bare = bare;
    this.column = bare.column;
    this.#preparation = preparation;
    this.#missing = missing;
  }

  readMany(position: number, rows: BlockRows, faults: Uint8Array): boolean {
    return readEach(this, position, rows, faults);
  }

  timesMissing(): ReadonlyMap<string, number> {
    return this.bare.timesMissing();
  }

  countMissing(bytes: Uint8Array, cellStart: number, cellEnd: number, times: number): void {
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const end = trimmedEnd(bytes, start, cellEnd);
    if (this.#missing.has(bytes, start, end)) this.bare.countMissing(bytes, start, end, times);
    else {
      const prepared = this.#prepared[this.#raw.find(bytes, start, end)] ?? null;
      if (prepared !== null) this.bare.countMissing(prepared, 0, prepared.length, times);
      else this.bare.countMissing(bytes, start, start, times);
    }
  }

  read(bytes: Uint8Array, cellStart: number, cellEnd: number, row: number): Fault {
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const end = trimmedEnd(bytes, start, cellEnd);
    if (this.#missing.has(bytes, start, end)) return this.bare.read(bytes, start, end, row);
    const raw = this.#raw.codeOf(bytes, start, end);
    if (raw === this.#prepared.length) {
      const text = preparedText(this.#preparation, this.#raw.textOf(raw));
      this.#prepared.push(text === null ? null : Buffer.from(text, 'utf8'));
    }
    const prepared = this.#prepared[raw]!;
    if (prepared !== null) return this.bare.read(prepared, 0, prepared.length, row);
    this.bare.read(bytes, start, start, row);
    return fault.notAsDeclared;
  }
}

/** The cell that reads dates, codes or numbers, whatever was done with its text before. */
export function bareCell(cell: Cell): Cell {
  return cell instanceof PreparedCell ? cell.bare : cell;
}
