import { BlockReader, type Constant, type RowParts } from './block-reader.js';
import { type CellReading, cellReadings } from './cell-reading.js';
import { CombinedCells } from './combined-cells.js';
import { type DatedCell, InstantCell } from './date-cell.js';
import type { Draft, DraftColumn } from './draft.js';
import { EndingValues } from './ending-values.js';
import { type Fault, fault } from './fault.js';
import { FaultSayings } from './fault-sayings.js';
import { FoldCells, unknownMark } from './fold-cells.js';
import type { Header } from './header.js';
import { impossiblePart, takenAsAbsent } from './impossible-part.js';
import { storedCode } from './make-cell.js';
import { type MissingTimes, timesMissingOf } from './missing-times.js';
import { bareCell } from './prepare-cell.js';
import type { RowRequest } from './read-rows.js';
import type { RecordScanner } from './record-scanner.js';
import type { Saying } from './remark.js';
import type { RowBlock } from './row-block.js';
import type { RowEndings } from './row-endings.js';
import type { RowRemarks } from './row-remarks.js';
import { findingWithoutFouling, type RowRule, rowRulesOf } from './row-rules.js';
import { followsFrom } from './rules/rule-choices.js';
import type { MeaningCell } from './text-cell.js';

/** Turns the rows that a scanner meets into rows of a draft. */
export class RowReader {
  readonly #scanner: RecordScanner;
  readonly #draft: Draft;
  readonly #remarks: RowRemarks;
  readonly #header: Header;
  readonly #single: readonly CellReading[];
  readonly #singleAt: Int32Array;
  readonly #combined: CombinedCells;
  readonly #seasonal: readonly CellReading[];
  readonly #season: DatedCell | null;
  readonly #constants: readonly Constant[];
  readonly #fold: FoldCells | null = null;
  readonly #foldAt: readonly number[] = [];
  readonly #rules: readonly RowRule[];
  readonly #station: DraftColumn | null;
  readonly #stationIsRead: boolean;
  readonly #clocked: readonly InstantCell[];
  readonly #request: RowRequest;
  readonly #sayings = new FaultSayings();
  /** What was wrong with each cell of the row read last. */
  readonly #found: Fault[] = [];
  #endings: EndingValues | null = null;
  #blocks: BlockReader | null = null;

  constructor(request: RowRequest, scanner: RecordScanner, header: Header, draft: Draft, remarks: RowRemarks) {
    const { rule, texts } = request;
    this.#request = request;
    this.#scanner = scanner;
    this.#draft = draft;
    this.#remarks = remarks;
    this.#header = header;
    const clock = rule.timeZone === null ? null : request.clockOf(rule.timeZone);
    const readings = cellReadings(request, clock, header, draft);
    // The station comes first, since a row's clock may be its station's.
    const byStation = (a: CellReading, b: CellReading) =>
      Number(b.rule.field.name === 'station') - Number(a.rule.field.name === 'station');
    this.#single = readings.filter(({ positions }) => positions.length === 1).sort(byStation);
    this.#singleAt = Int32Array.from(this.#single.map(({ positions }) => positions[0]!));
    this.#combined = new CombinedCells(readings, rule, draft);
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
    draft.places.add(row, line, this.#scanner.base + this.#scanner.recordStart);
    draft.aside[row] = 0;
    for (const { column, value } of this.#constants) column.values[row] = value;
    const readings = this.#single;
    const at = this.#singleAt;
    if (this.#clocked.length > 0 && !this.#stationIsRead) this.#setClock(row);
    for (let index = 0; index < readings.length; index++) {
      const position = at[index]!;
      const found = readings[index]!.cell.read(cells, starts[position]!, ends[position]!, row);
      this.#found[index] = found;
      if (found !== fault.none) this.#fault(found, readings[index]!, position, row);
      if (index === 0 && this.#stationIsRead && this.#clocked.length > 0) this.#setClock(row);
    }
    this.#combined.read(this.#scanner, row, (found, reading, position) => this.#fault(found, reading, position, row));
    if (this.#seasonal.length > 0) this.#settle(row);
    if (this.#fold !== null) this.#readFold(this.#fold, row);
    this.#close(row);
    this.#endings?.learn(this.#scanner, row, this.#found);
  }

  /**
   * Whether rows may be read by `readBlock`: where no cell hangs on another of its row, on its season or its station's
   * clock, and no checklist is folded.
   */
  takesBlocks(): boolean {
    return this.#combined.readings.length + this.#seasonal.length + this.#clocked.length === 0 && this.#fold === null;
  }

  /** Where the columns of single cells stand in the header. */
  get columnsRead(): Int32Array {
    return this.#singleAt;
  }

  /** From here on, learns the endings of the rows that it reads; null where it need not any more. */
  learnEndings(endings: RowEndings | null): void {
    this.#endings?.countMissing();
    this.#blocks = null;
    const { cells, positions } = this.#parts();
    this.#endings = endings === null ? null : new EndingValues(endings, cells, positions);
  }

  /** Takes rows of a block into the draft; does what `read` does row by row, in less time. */
  readBlock(block: RowBlock, from: number, to: number): void {
    this.#blocks ??= new BlockReader(this.#draft, this.#parts(), this.#endings, block.most);
    const blocks = this.#blocks;
    blocks.read(block, from, to, this.#scanner.base, (at, row) => {
      this.#scanner.show(block, at);
      for (const [index, reading] of this.#single.entries()) {
        const found = blocks.faultOf(index, block, at);
        if (found !== fault.none) this.#fault(found, reading, this.#singleAt[index]!, row);
      }
      this.#close(row);
    });
  }

  #parts(): RowParts {
    const cells = this.#single.map(({ cell }) => cell);
    return { cells, positions: this.#singleAt, constants: this.#constants, rules: this.#rules };
  }

  #close(row: number): void {
    for (const rule of this.#rules) if (rule.isBroken(row)) this.#breach(rule, row);
    if (this.#draft.aside[row] === 1) this.#remarks.keepText();
  }

  /** How often each field was missing, by the text that said so. */
  timesMissing(): MissingTimes {
    this.#endings?.countMissing();
    return timesMissingOf([...this.#single, ...this.#combined.readings]);
  }

  /** Remembers the key of a row set aside unread, so that what refers to it is known to follow that row. */
  markKey(): void {
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
    for (const column of fold.impossibleParts(row)) {
      if (fold.takeAsAbsent(row, column)) this.#remarks.add(row, foldAt[column]!, takenAsAbsent, 'notes');
      else this.#addAsSet(row, foldAt[column]!, impossiblePart);
    }
  }

  #addAsSet(row: number, position: number, saying: Saying): void {
    const severity = followsFrom(this.#request.rule.choices, saying.code);
    if (severity !== null) this.#remarks.add(row, position, saying, severity);
  }

  #breach(rule: RowRule, row: number): void {
    const column = this.#request.rule.fields.find(({ field }) => field.name === rule.field)?.columns.at(-1);
    const position = column === undefined ? null : this.#header.get(column)!;
    this.#remarks.add(row, position, rule, rule.severity);
  }

  #fault(found: Fault, reading: CellReading, position: number, row: number): void {
    this.#remarks.add(row, position, this.#sayings.of(found, reading.rule, this.#remarks.seen(position)));
  }
}
