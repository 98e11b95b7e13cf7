import { crc32, deflateRawSync } from 'node:zlib';

/** What a test may spoil in one file of an archive. */
export interface Spoilt {
  /** The unpacked size that the archive claims. */
  readonly claimedSize?: number;
  readonly checksum?: number;
  readonly encrypted?: boolean;
}

/** A ZIP archive of those files, by APPNOTE 6.3: local headers, then the central directory. */
export function archiveOf(files: readonly (readonly [name: string, content: string | Uint8Array, spoilt?: Spoilt])[]) {
  const pieces: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const [name, content, spoilt = {}] of files) {
    const bytes = Buffer.from(content);
    const packed = deflateRawSync(bytes);
    const fields = Buffer.alloc(26);
    fields.writeUInt16LE(20, 0);
    fields.writeUInt16LE(0x800 | (spoilt.encrypted === true ? 1 : 0), 2);
    fields.writeUInt16LE(8, 4);
    fields.writeUInt32LE(spoilt.checksum ?? crc32(bytes), 10);
    fields.writeUInt32LE(packed.length, 14);
    fields.writeUInt32LE(spoilt.claimedSize ?? bytes.length, 18);
    fields.writeUInt16LE(Buffer.byteLength(name), 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04'), fields, Buffer.from(name), packed]);
    const entry = Buffer.alloc(14);
    entry.writeUInt32LE(offset, 10);
    directory.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\0'), fields, entry, Buffer.from(name)]));
    pieces.push(local);
    offset += local.length;
  }
  const central = Buffer.concat(directory);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(files.length, 4);
  end.writeUInt16LE(files.length, 6);
  end.writeUInt32LE(central.length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...pieces, central, Buffer.from('PK\x05\x06'), end]);
}

/** A workbook with one sheet, from the XML of its rows; `styles` is the XML within `styleSheet`. */
export function workbookOf(rows: string, parts: Readonly<Record<string, string>> = {}): Buffer {
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const related = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const relation = (id: string, kind: string, target: string) =>
    `<Relationship Id="${id}" Type="${related}/${kind}" Target="${target}"/>`;
  return archiveOf(
    Object.entries({
      'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${related}"><sheets><sheet name="Sheet" sheetId="1" r:id="a"/></sheets></workbook>`,
      'xl/_rels/workbook.xml.rels': `<Relationships>${relation('a', 'worksheet', 'worksheets/sheet1.xml')}${relation('b', 'sharedStrings', 'sharedStrings.xml')}${relation('c', 'styles', 'styles.xml')}</Relationships>`,
      'xl/worksheets/sheet1.xml': `<worksheet xmlns="${main}"><sheetData>${rows}</sheetData></worksheet>`,
      ...parts,
    }),
  );
}
