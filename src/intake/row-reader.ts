import type { Cell } from './cell.js';
import type { FieldRule } from './crosswalk.js';
import { type DatedCell, InstantCell } from './date-cell.js';
import { describeFault } from './describe-fault.js';
import type { Draft, DraftColumn } from './draft.js';
import { type Fault, fault } from './fault.js';
import { FoldCells, impossiblePart, unknownMark } from './fold-cells.js';
import type { Header } from './header.js';
import { makeCell, storedCode } from './make-cell.js';
import { type MissingTimes, timesMissingOf } from './missing-times.js';
import { partAtFault } from './part-at-fault.js';
import { bareCell } from './prepare-cell.js';
import type { RowRequest } from './read-rows.js';
import type { RecordScanner } from './record-scanner.js';
import type { Saying } from './remark.js';
import type { RowBlock } from './row-block.js';
import type { RowRemarks } from './row-remarks.js';
import { findingWithoutFouling, type RowRule, rowRulesOf } from './row-rules.js';
import { consequenceOf } from './rules/rule-choices.js';
import type { MeaningCell } from './text-cell.js';

/** A column of the file, the field it gives and the cell that reads it. */
interface Reading {
  readonly rule: FieldRule;
  readonly cell: Cell;
  /** Where its columns stand in the header. */
  readonly positions: readonly number[];
}

/** A field that is the same in every row of the file. */
interface Constant {
  readonly column: DraftColumn;
  readonly value: number;
}

const mostSayings = 1024;

/** Turns the rows that a scanner meets into rows of a draft. */
export class RowReader {
  readonly #scanner: RecordScanner;
  readonly #draft: Draft;
  readonly #remarks: RowRemarks;
  readonly #header: Header;
  readonly #single: readonly Reading[];
  readonly #singleAt: Int32Array;
  readonly #combined: readonly Reading[];
  readonly #seasonal: readonly Reading[];
  readonly #season: DatedCell | null;
  readonly #constants: readonly Constant[];
  readonly #fold: FoldCells | null = null;
  readonly #foldAt: readonly number[] = [];
  readonly #rules: readonly RowRule[];
  readonly #station: DraftColumn | null;
  readonly #stationIsRead: boolean;
  readonly #clocked: readonly InstantCell[];
  readonly #request: RowRequest;
  readonly #sayings = new Map<string, Saying>();
  #joined: Buffer = Buffer.alloc(256);
  /** By cell: the fault of each row of a block. */
  readonly #faults: Uint8Array[] = [];
  #remarked = new Uint8Array(0);

  constructor(request: RowRequest, scanner: RecordScanner, header: Header, draft: Draft, remarks: RowRemarks) {
    const { rule, texts } = request;
    this.#request = request;
    this.#scanner = scanner;
    this.#draft = draft;
    this.#remarks = remarks;
    this.#header = header;
    const clock = rule.timeZone === null ? null : request.clockOf(rule.timeZone);
    const readings = rule.fields.map((fieldRule): Reading => {
      const column = draft.columnOf(fieldRule.field, texts);
      const cell = makeCell(fieldRule, rule, column, clock, request.key);
      return { rule: fieldRule, cell, positions: fieldRule.columns.map((name) => header.get(name)!) };
    });
    // The station comes first, since a row's clock may be its station's.
    const byStation = (a: Reading, b: Reading) =>
      Number(b.rule.field.name === 'station') - Number(a.rule.field.name === 'station');
    this.#single = readings.filter(({ positions }) => positions.length === 1).sort(byStation);
    this.#singleAt = Int32Array.from(this.#single.map(({ positions }) => positions[0]!));
    this.#combined = readings.filter(({ positions }) => positions.length > 1);
    this.#seasonal = readings.filter(
      ({ rule: { codes } }) => codes !== null && [...codes.values()].some(Array.isArray),
    );
    const season = readings.find((reading) => reading.rule.field.name === rule.seasonOf);
    this.#season = season === undefined ? null : (bareCell(season.cell) as DatedCell);
    this.#constants = [...rule.constants].map(([name, constant]) => {
      const field = rule.table.fields.find((entry) => entry.name === name)!;
      const column = draft.columnOf(field, texts);
      return { column, value: typeof constant === 'number' ? constant : storedCode(column, constant) };
    });
    if (rule.fold !== null) {
      this.#fold = new FoldCells(draft, rule.fold, rule.missing);
      this.#foldAt = rule.fold.columns.map(({ column }) => header.get(column)!);
    }
    this.#rules = rowRulesOf(draft, rule);
    this.#clocked =
      clock === null ? readings.map(({ cell }) => bareCell(cell)).filter((cell) => cell instanceof InstantCell) : [];
    this.#station = draft.columns.get('station') ?? null;
    this.#stationIsRead = this.#single[0]?.rule.field.name === 'station';
  }

  /** Takes the scanner's row into the draft; it stays there even when it is set aside, marked so. */
  read(): void {
    const { cells, starts, ends, line } = this.#scanner;
    const draft = this.#draft;
    draft.makeRoom();
    const row = draft.rowCount++;
    draft.lines[row] = line;
    draft.offsets[row] = this.#scanner.base + this.#scanner.recordStart;
    draft.aside[row] = 0;
    for (const { column, value } of this.#constants) column.values[row] = value;
    const readings = this.#single;
    const at = this.#singleAt;
    if (this.#clocked.length > 0 && !this.#stationIsRead) this.#setClock(row);
    for (let index = 0; index < readings.length; index++) {
      const position = at[index]!;
      const found = readings[index]!.cell.read(cells, starts[position]!, ends[position]!, row);
      if (found !== fault.none) this.#fault(found, readings[index]!, position, row);
      if (index === 0 && this.#stationIsRead && this.#clocked.length > 0) this.#setClock(row);
    }
    for (const reading of this.#combined) this.#readCombined(reading, row);
    if (this.#seasonal.length > 0) this.#settle(row);
    if (this.#fold !== null) this.#readFold(this.#fold, row);
    for (const rule of this.#rules) if (rule.isBroken(row)) this.#breach(rule, row);
    if (draft.aside[row] === 1) this.#remarks.keepText();
  }

  /**
   * Whether rows may be read by `readBlock`: where no cell hangs on another of its row, on its season or its station's
   * clock, and no checklist is folded.
   */
  takesBlocks(): boolean {
    return this.#combined.length + this.#seasonal.length + this.#clocked.length === 0 && this.#fold === null;
  }

  /** Takes rows of a block into the draft, column by column; does what `read` does row by row, several times faster. */
  readBlock(block: RowBlock, from: number, to: number): void {
    const draft = this.#draft;
    const count = to - from;
    draft.makeRoom(count);
    const row = draft.rowCount;
    draft.rowCount += count;
    draft.lines.set(block.lines.subarray(from, to), row);
    draft.aside.fill(0, row, row + count);
    const base = this.#scanner.base;
    for (let at = from; at < to; at++) draft.offsets[row + at - from] = base + block.from[at]!;
    for (const { column, value } of this.#constants) column.values.fill(value, row, row + count);
    const rows = { block, from, to, row };
    while (this.#faults.length < this.#single.length) this.#faults.push(new Uint8Array(block.most));
    const remarked = this.#remarked.length < block.most ? new Uint8Array(block.most) : this.#remarked;
    this.#remarked = remarked;
    remarked.fill(0, from, to);
    const faulty = this.#single.map(({ cell }, index) =>
      cell.readMany(this.#singleAt[index]!, rows, this.#faults[index]!),
    );
    for (const [index, anyFault] of faulty.entries()) {
      if (anyFault) mark(this.#faults[index]!, from, to, remarked);
    }
    for (const rule of this.#rules) {
      for (let at = from; at < to; at++) if (rule.isBroken(row + at - from)) remarked[at] = 1;
    }
    for (let at = from; at < to; at++) if (remarked[at] === 1) this.#remarkOn(block, at, row + at - from, faulty);
  }

  #remarkOn(block: RowBlock, at: number, row: number, faulty: readonly boolean[]): void {
    this.#scanner.show(block, at);
    for (const [index, reading] of this.#single.entries()) {
      const found = faulty[index] === true ? (this.#faults[index]![at]! as Fault) : fault.none;
      if (found !== fault.none) this.#fault(found, reading, this.#singleAt[index]!, row);
    }
    for (const rule of this.#rules) if (rule.isBroken(row)) this.#breach(rule, row);
    if (this.#draft.aside[row] === 1) this.#remarks.keepText();
  }

  /** How often each field was missing, by the text that said so. */
  timesMissing(): MissingTimes {
    return timesMissingOf([...this.#single, ...this.#combined]);
  }

  /** Sets aside a row whose cells are too many or too few. */
  setAsideRagged(): void {
    this.#remarks.ragged();
    this.#markKey();
  }

  /** Sets aside a row with a quote that does not end. */
  setAsideBroken(): void {
    this.#remarks.broken();
    this.#markKey();
  }

  /** Sets aside a row that holds bytes which are no UTF-8. */
  setAsideUndecodable(): void {
    this.#remarks.undecodable(this.#request.rule.dialect.encoding);
    this.#markKey();
  }

  /** Remembers that the key was met, so that what refers to it is known to follow a row set aside. */
  #markKey(): void {
    const { table, texts } = { table: this.#draft.table.name, texts: this.#request.texts };
    const key = this.#draft.table.key[0];
    for (const { rule, cell, positions } of this.#single) {
      if (rule.field.name !== key || texts.keyTableOf(table, rule.field) !== table) continue;
      const position = positions[0]!;
      if (position >= this.#scanner.count) continue;
      this.#draft.makeRoom();
      const row = this.#draft.rowCount;
      cell.read(this.#scanner.cells, this.#scanner.starts[position]!, this.#scanner.ends[position]!, row);
      const code = cell.column.values[row]!;
      if (code !== 0) this.#draft.lostKeys.push(code);
    }
  }

  #setClock(row: number): void {
    const clock = this.#station === null ? null : this.#request.stationClock(this.#station.values[row]!);
    for (const cell of this.#clocked) cell.clock = clock;
  }

  #readCombined(reading: Reading, row: number): void {
    const { cells, starts, ends } = this.#scanner;
    const parts = reading.positions.map((position) => {
      const text = Buffer.from(cells.buffer, cells.byteOffset + starts[position]!, ends[position]! - starts[position]!);
      return text.toString('latin1').trim();
    });
    const missing = reading.rule.missing ?? this.#request.rule.missing;
    const isMissing = parts.map((part) => part === '' || missing.includes(part));
    const allMissing = !isMissing.includes(false);
    const joined = allMissing ? '' : parts.join(' ');
    if (this.#joined.length < joined.length) this.#joined = Buffer.alloc(joined.length);
    const length = this.#joined.write(joined, 'latin1');
    const found = reading.cell.read(this.#joined, 0, length, row);
    if (allMissing) {
      if (reading.rule.field.required) this.#fault(fault.missingValue, reading, reading.positions[0]!, row);
    } else if (isMissing.includes(true)) {
      this.#fault(fault.partlyMissing, reading, reading.positions[isMissing.indexOf(true)]!, row);
    } else if (found !== fault.none) {
      this.#fault(found, reading, reading.positions[partAtFault(reading.cell, parts)]!, row);
    }
  }

  #settle(row: number): void {
    const season = this.#season?.year ?? 0;
    // A row without a season is set aside for its date; its codes by season are left missing and not called unknown.
    if (season === 0 && this.#draft.aside[row] === 1) return;
    for (const reading of this.#seasonal) {
      const found = (bareCell(reading.cell) as MeaningCell).settle(season, row);
      if (found !== fault.none) this.#fault(found, reading, reading.positions[0]!, row);
    }
  }

  #readFold(fold: FoldCells, row: number): void {
    const { cells, starts, ends } = this.#scanner;
    const foldAt = this.#foldAt;
    for (let column = 0; column < foldAt.length; column++) {
      const position = foldAt[column]!;
      if (fold.read(column, cells, starts[position]!, ends[position]!, row)) continue;
      // A cell that names several parts is read once for each, and remarked on once.
      if (column > 0 && foldAt[column - 1] === position) continue;
      this.#remarks.add(row, position, unknownMark);
    }
    for (const column of fold.unfouledFindings(row)) {
      this.#addAsSet(row, foldAt[column]!, findingWithoutFouling);
    }
    for (const column of fold.impossibleParts(row)) this.#addAsSet(row, foldAt[column]!, impossiblePart);
  }

  #addAsSet(row: number, position: number, saying: Saying): void {
    const severity = consequenceOf(this.#request.rule.choices, saying.code);
    if (severity !== 'not checked') this.#remarks.add(row, position, saying, severity);
  }

  #breach(rule: RowRule, row: number): void {
    const column = this.#request.rule.fields.find(({ field }) => field.name === rule.field)?.columns.at(-1);
    const position = column === undefined ? null : this.#header.get(column)!;
    this.#remarks.add(row, position, rule, rule.severity);
  }

  /** What is said of a fault; an unknown code is compared with every known one, and the same slip comes back often. */
  #sayingOf(found: Fault, reading: Reading, seen: string): Saying {
    const name = `${found} ${reading.rule.field.name} ${seen}`;
    let saying = this.#sayings.get(name);
    if (saying === undefined) {
      saying = describeFault(found, reading.rule, seen);
      if (this.#sayings.size === mostSayings) this.#sayings.clear();
      this.#sayings.set(name, saying);
    }
    return saying;
  }

  #fault(found: Fault, reading: Reading, position: number, row: number): void {
    this.#remarks.add(row, position, this.#sayingOf(found, reading, this.#remarks.seen(position)));
  }
}

function mark(faults: Uint8Array, from: number, to: number, remarked: Uint8Array): void {
  for (let at = from; at < to; at++) if (faults[at] !== 0) remarked[at] = 1;
}
