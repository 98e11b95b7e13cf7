import { isUtf8 } from 'node:buffer';
import type { AsideTexts } from './aside-texts.js';
import type { FileRule } from './crosswalk.js';
import type { Draft } from './draft.js';
import { fill } from './find-header.js';
import { type Header, saysHeaderAgain } from './header.js';
import type { Texts } from './key-space.js';
import { type LeftOutRow, LeftOutRows } from './leave-out.js';
import { MendedRows } from './mending/mended-rows.js';
import type { MendedRow } from './mending/mending.js';
import { MergedRows } from './merged-rows.js';
import type { MissingTimes } from './missing-times.js';
import { met, type RecordScanner } from './record-scanner.js';
import type { Remarks } from './remarks.js';
import { RowReader } from './row-reader.js';
import { RowRemarks } from './row-remarks.js';
import { SoundRows } from './sound-rows.js';
import type { TextSource } from './source/text-source.js';
import type { ZoneClock } from './time-zone.js';

/** What reading rows needs to know beside the text itself. */
export interface RowRequest {
  readonly rule: FileRule;
  readonly texts: Texts;
  readonly key: Uint8Array;
  readonly clockOf: (zone: string) => ZoneClock;
  /** The clock of a station, by its number among the stations' keys; null where nothing is known of it. */
  readonly stationClock: (station: number) => ZoneClock | null;
  /** Rows that a person mended, to be read in the place of those in the file. */
  readonly mended: readonly MendedRow[];
}

/** A header that was found and understood. */
export interface KnownHeader {
  readonly header: Header;
  /** The headings as the file spells them, in order. */
  readonly headings: readonly string[];
  /** The bytes of each of its lines, by which a header that is said again is known. */
  readonly bytes: readonly Uint8Array[];
  /** Where in the text the last rows begin that a rule leaves out; infinity for none. */
  readonly lastFrom: number;
}

/** What reading rows gave beside the draft they came into. */
export interface RowsRead {
  readonly remarks: Remarks;
  readonly asideTexts: AsideTexts;
  /** Rows met, whether they came into the draft or not. */
  readonly read: number;
  /** Of those, the ones that a rule of the crosswalk leaves out. */
  readonly leftOut: readonly LeftOutRow[];
  /** How often each field was missing, by the text that said so; rows mended are not among them. */
  readonly missing: MissingTimes;
  /** Of those, the ones that were read as a person mended them. */
  readonly mended: readonly MendedRow[];
  /** How many of them hold bytes that are no letters. */
  readonly undecodable: number;
  /** The line of a row without end, with which the reading stopped; null where it went on. */
  readonly endless: number | null;
}

/** Reads the rows from where a scanner is into a draft; what is wrong with one is remarked, and the reading goes on. */
export async function readRows(
  request: RowRequest,
  { header, headings, bytes, lastFrom }: KnownHeader,
  scanner: RecordScanner,
  source: TextSource,
  draft: Draft,
  progress: (rows: number) => void,
): Promise<RowsRead> {
  const { rule } = request;
  const width = headings.length;
  const withheld = [...rule.privateColumns].map((name) => header.get(name)!).sort((a, b) => a - b);
  const remarks = new RowRemarks(scanner, draft, withheld, width);
  const rows = new RowReader(request, scanner, header, draft, remarks);
  const leftOut = rule.leaveOut.length > 0 ? new LeftOutRows(scanner, rule, header, lastFrom) : null;
  const mended = request.mended.length > 0 ? new MendedRows(request, scanner, header, draft, withheld) : null;
  const mergedRows = new MergedRows(source.merged ?? [], rule, header);
  scanner.width = width;
  let read = 0;
  let undecodable = 0;
  let endless: number | null = null;
  const takesBlocks = width > 1 && leftOut === null && mended === null && !rule.dialect.isSheet && rows.takesBlocks();
  if (takesBlocks && scanner.waiting().length === 0) await fill(scanner, source);
  const sound = takesBlocks ? new SoundRows(scanner, rows, bytes, rule.dialect.delimiter, width) : null;
  for (;;) {
    if (sound !== null) read += sound.read();
    const state = scanner.next();
    if (state === met.more) {
      await fill(scanner, source);
      progress(read);
      continue;
    }
    if (state === met.end) break;
    if (state === met.tooLong) {
      endless = scanner.line;
      break;
    }
    if (saysHeaderAgain(scanner.bytes, scanner.recordStart, scanner.recordEnd, bytes)) continue;
    read++;
    if (rule.dialect.isSheet && scanner.count < width) scanner.padTo(width);
    const merged = mergedRows.coveredIn(scanner);
    if (leftOut?.takes() === true || mended?.takes(remarks) === true) continue;
    if (scanner.broken) remarks.broken();
    else if (scanner.count !== width) remarks.ragged();
    else if (withheld.length > 0 && scanner.torn) remarks.torn();
    else if (merged !== null) remarks.merged(merged);
    else if (scanner.high && !isUtf8(scanner.bytes.subarray(scanner.recordStart, scanner.recordEnd))) {
      undecodable++;
      remarks.undecodable(rule.dialect.encoding);
    } else {
      rows.read();
      continue;
    }
    rows.markKey();
  }
  const { remarks: found, asideTexts } = remarks;
  const told = { missing: rows.timesMissing(), leftOut: leftOut?.rows ?? [], mended: mended?.taken ?? [] };
  return { remarks: found, asideTexts, read, ...told, undecodable, endless };
}
