import { type Archive, type ArchiveMember, mostUnpacked } from './archive.js';
import { builtInFormat, type NumberFormat, readNumberFormat } from './number-format.js';
import type { SerialBase } from './serial-date.js';
import { unescaped } from './sheet-cell.js';
import { SourceError } from './text-source.js';
import { readXml, type XmlEvents } from './xml-events.js';

/** A sheet of a workbook: its name on the tab, and the part of the archive that holds its cells. */
export interface Sheet {
  readonly name: string;
  readonly part: string;
}

/** What a workbook says of itself before a sheet is read. */
export interface Workbook {
  readonly sheets: readonly Sheet[];
  readonly base: SerialBase;
  /** The parts that hold the shared texts and the styles; null where it has none. */
  readonly stringsPart: string | null;
  readonly stylesPart: string | null;
}

const workbookPart = 'xl/workbook.xml';

/** Reads parts of an open workbook, which together may not be larger than the limit. */
export class WorkbookParts {
  readonly #archive: Archive;
  #left: number;

  constructor(archive: Archive, most = mostUnpacked) {
    this.#archive = archive;
    this.#left = most;
  }

  /** The part of that name; null where the workbook has none. */
  find(part: string): ArchiveMember | null {
    return this.#archive.members.get(part) ?? null;
  }

  /** The bytes of a part. */
  bytes(part: string): AsyncGenerator<Uint8Array> {
    const member = this.find(part);
    if (member === null) {
      throw new SourceError('damaged-workbook', `no part ${part}`, 'a whole .xlsx workbook', 'Save or copy it again.');
    }
    const most = this.#left;
    this.#left -= member.size;
    return this.#archive.read(member, most);
  }

  async readXml(part: string, events: XmlEvents): Promise<void> {
    await readXml(part, this.bytes(part), events);
  }
}

function partAt(target: string, from: string): string {
  if (target.startsWith('/')) return target.slice(1);
  const path = from.split('/').slice(0, -1);
  for (const step of target.split('/')) {
    if (step === '..') path.pop();
    else if (step !== '.') path.push(step);
  }
  return path.join('/');
}

/** The parts that the workbook names, by their id, and those of shared texts and styles, by the last word of their type. */
async function readRelations(parts: WorkbookParts): Promise<ReadonlyMap<string, string>> {
  const targets = new Map<string, string>();
  await parts.readXml('xl/_rels/workbook.xml.rels', {
    open: (tag, { Id, Type, Target }) => {
      if (tag !== 'Relationship' || Target === undefined) return;
      const part = partAt(Target, workbookPart);
      if (Id !== undefined) targets.set(Id, part);
      const kind = Type?.split('/').at(-1);
      if (kind === 'sharedStrings' || kind === 'styles') targets.set(kind, part);
    },
  });
  return targets;
}

/** The sheets of a workbook, in the order of its tabs, hidden ones too; chart sheets hold no cells and are left out. */
export async function readWorkbook(parts: WorkbookParts): Promise<Workbook> {
  const targets = await readRelations(parts);
  const sheets: Sheet[] = [];
  let base: SerialBase = 1900;
  await parts.readXml(workbookPart, {
    open: (tag, attributes) => {
      if (tag === 'workbookPr' && /^(?:1|true|on)$/u.test(attributes['date1904'] ?? '')) base = 1904;
      const part = targets.get(attributes['r:id'] ?? '');
      const name = attributes['name'];
      if (tag === 'sheet' && name !== undefined && part !== undefined && !part.includes('chartsheets/')) {
        sheets.push({ name, part });
      }
    },
  });
  const present = (kind: string): string | null => {
    const part = targets.get(kind);
    return part === undefined || parts.find(part) === null ? null : part;
  };
  return { sheets, base, stringsPart: present('sharedStrings'), stylesPart: present('styles') };
}

/** The texts that cells share, by their number. */
export async function readSharedStrings(parts: WorkbookParts, part: string | null): Promise<readonly string[]> {
  const texts: string[] = [];
  if (part === null) return texts;
  let text = '';
  let inText = false;
  let phonetic = false;
  await parts.readXml(part, {
    open: (tag) => {
      if (tag === 'si') text = '';
      else if (tag === 'rPh') phonetic = true;
      else if (tag === 't') inText = !phonetic;
    },
    text: (piece) => {
      if (inText) text += piece;
    },
    close: (tag) => {
      if (tag === 't') inText = false;
      else if (tag === 'rPh') phonetic = false;
      else if (tag === 'si') texts.push(unescaped(text));
    },
  });
  return texts;
}

/** How the numbers of each cell style are shown, by the style's number. */
export async function readFormats(parts: WorkbookParts, part: string | null): Promise<readonly NumberFormat[]> {
  const spelt = new Map<number, NumberFormat>();
  const formats: NumberFormat[] = [];
  if (part === null) return formats;
  let inCellFormats = false;
  await parts.readXml(part, {
    open: (tag, { numFmtId, formatCode }) => {
      const id = Number(numFmtId ?? 0);
      if (tag === 'numFmt') spelt.set(id, readNumberFormat(formatCode ?? ''));
      else if (tag === 'cellXfs') inCellFormats = true;
      else if (tag === 'xf' && inCellFormats) formats.push(spelt.get(id) ?? builtInFormat(id));
    },
    close: (tag) => {
      if (tag === 'cellXfs') inCellFormats = false;
    },
  });
  return formats;
}
