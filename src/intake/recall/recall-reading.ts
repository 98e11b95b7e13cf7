import type { TableName } from '../../record/field.js';
import { AsideTexts } from '../aside-texts.js';
import { Draft } from '../draft.js';
import type { Task } from '../find-exports.js';
import { fittedRule } from '../fitted-rule.js';
import type { Growable } from '../growing.js';
import type { Texts } from '../key-space.js';
import type { SetAsideRow } from '../ledger.js';
import type { FileReading } from '../read-file.js';
import { Remarks } from '../remarks.js';
import { codeNumber } from '../sense/code-number.js';
import { recallLostKey } from './lost-keys.js';
import type { PastImport, PastReading } from './past-import.js';
import { ColumnRecall, type Slice, sliceOf } from './recall-columns.js';
import { recallFold } from './recall-fold.js';

/** Gives readings of an earlier import as if their files had been read again. */
export class Recall {
  readonly #past: PastImport;
  readonly #texts: Texts;
  readonly #columns = new ColumnRecall();
  readonly #rowsOf = new Map<string, SetAsideRow[]>();

  constructor(past: PastImport, texts: Texts) {
    this.#past = past;
    this.#texts = texts;
    for (const row of past.setAsideRows) {
      const others = this.#rowsOf.get(row.file);
      if (others === undefined) this.#rowsOf.set(row.file, [row]);
      else others.push(row);
    }
  }

  /** The reading of a file as the crosswalks read it then, before its rows are held against those of other files. */
  reading(past: PastReading, task: Task, place: number): FileReading {
    const header = new Map(past.header);
    const rule = fittedRule(task.rule, (column) => header.has(column));
    const draft = new Draft(rule.table, place, Number.MAX_SAFE_INTEGER, rule.fields, rule.fold);
    const given = [...rule.fields, ...rule.waters].map(({ field }) => field.name);
    const names = new Set([...given, ...rule.constants.keys()]);
    // Names of waters are held beside the table's fields until they are matched, and are matched already.
    for (const field of rule.table.fields.filter(({ name }) => names.has(name))) draft.columnOf(field, this.#texts);
    const [kept, aside] = this.#slices(past, rule.table.name);
    const places = this.#placesOf(draft, kept, aside);
    for (const column of draft.columns.values()) {
      this.#columns.put(kept, places.kept, column);
      this.#columns.put(aside, places.aside, column);
    }
    if (rule.fold !== null) {
      const [keptChecks, asideChecks] = this.#slices(past, rule.fold.table.name);
      recallFold(draft, rule.fold, keptChecks, places.kept);
      recallFold(draft, rule.fold, asideChecks, places.aside);
    }
    // Whether the craft lacks the part is asked again, since what is known of the craft may have changed.
    const states = draft.columns.get('state')?.values;
    for (const row of past.absent ?? []) states![row] = codeNumber('checks', 'state', 'clean');
    const { interner } = this.#texts.spaceOf(rule.table.name);
    for (const key of past.lostKeys) draft.lostKeys.push(recallLostKey(key, interner));
    return {
      file: past.file,
      crosswalk: past.crosswalk,
      rule,
      fingerprint: past.fingerprint,
      header,
      headings: past.headings,
      draft,
      read: past.read,
      leftOut: [...(past.leftOut ?? [])],
      joined: new Set(),
      absent: new Set(),
      missing: past.missing ?? {},
      mended: past.mended,
      unmatchedBefore: past.unmatched ?? null,
      remarks: recallRemarks(past, draft),
      asideTexts: this.#asideTexts(past),
      problems: [],
    };
  }

  /** The rows of a table that came from a file: those kept and those set aside. */
  #slices(past: PastReading, table: TableName): readonly [Slice, Slice] {
    const { records, aside, readings } = this.#past;
    const { files } = records[table].origin;
    const before = readings.slice(0, readings.indexOf(past));
    const part = before.filter((reading) => reading.tables.includes(table)).length;
    if (files[part] !== past.file) throw new Error(`the store does not know ${past.file} where it should`);
    return [sliceOf(records[table], part), sliceOf(aside[table], part)];
  }

  /** Makes room for the rows of both kinds in order of line, and says where in the draft each goes. */
  #placesOf(draft: Draft, kept: Slice, aside: Slice): { kept: Uint32Array; aside: Uint32Array } {
    const places = { kept: new Uint32Array(kept.end - kept.start), aside: new Uint32Array(aside.end - aside.start) };
    const keptLines = kept.table.origin.lineOf;
    const asideLines = aside.table.origin.lineOf;
    draft.begin(places.kept.length + places.aside.length);
    for (const column of draft.columns.values()) column.values = emptyLike(column.values, draft.rowCount);
    let [a, b] = [kept.start, aside.start];
    for (let row = 0; row < draft.rowCount; row++) {
      const isKept = b >= aside.end || (a < kept.end && keptLines[a]! < asideLines[b]!);
      // A row that is recalled is not looked for in its file.
      draft.places.add(row, isKept ? keptLines[a]! : asideLines[b]!, 0);
      if (isKept) places.kept[a++ - kept.start] = row;
      else places.aside[b++ - aside.start] = row;
    }
    return places;
  }

  #asideTexts(past: PastReading): AsideTexts {
    const lines = new Set(past.remarks.flatMap(([, setsAside, line]) => (setsAside === 1 ? [line] : [])));
    const texts = new AsideTexts();
    for (const { line, row } of this.#rowsOf.get(past.file) ?? []) if (lines.delete(line)) addText(texts, line, row);
    return texts;
  }
}

function emptyLike<A extends Growable>(values: A, length: number): A {
  return new (values.constructor as new (length: number) => A)(length);
}

function recallRemarks(past: PastReading, draft: Draft): Remarks {
  const remarks = new Remarks();
  for (const [place, setsAside, line, row, position, seen] of past.remarks) {
    remarks.add(past.sayings[place]!, setsAside === 1 ? 'sets aside' : 'notes', line, row, position, seen);
    if (setsAside === 1 && row !== null) draft.aside[row] = 1;
  }
  return remarks;
}

/** Adds the text of a row set aside, in which private cells are withheld already. */
export function addText(texts: AsideTexts, line: number, row: string): void {
  const bytes = Buffer.from(row, 'utf8');
  texts.add(line, bytes, 0, bytes.length, []);
}
