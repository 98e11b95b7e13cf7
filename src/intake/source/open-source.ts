import { join } from 'node:path';
import type { Dialect } from '../crosswalk.js';
import { Archive } from './archive.js';
import { type Located, locate } from './container.js';
import { fileBytes, fileFingerprint, firstOf, openFile } from './file-bytes.js';
import { firstBytes, transcoderFor } from './first-bytes.js';
import { madeText } from './made-text.js';
import { openWorkbook } from './open-workbook.js';
import { PlainFile } from './plain-file.js';
import { sheetText } from './sheet-text.js';
import { type RawBytes, StreamedText } from './streamed-text.js';
import { SourceError, type TextSource } from './text-source.js';

/** What of a rule tells how a file becomes text. */
export interface SourceSettings {
  readonly dialect: Dialect;
  readonly decimalByte: number;
}

async function openSheet(path: string, located: Located, settings: SourceSettings): Promise<TextSource> {
  const { headerLine, headerSpan, spreadsMerged, mostUnpacked: most } = settings.dialect;
  const { parts, workbook, close } = await openWorkbook(path, located, most);
  try {
    const sheet = workbook.sheets.find(({ name }) => name === located.sheet);
    if (sheet === undefined) throw new SourceError('no-such-file', located.sheet ?? '', 'a sheet', 'Mend the path.');
    const headerLines = headerLine === null ? 0 : headerLine + headerSpan - 1;
    const decimalMark = String.fromCharCode(settings.decimalByte);
    const { text, merged } = await sheetText(parts, workbook, sheet, { decimalMark, headerLines, spreadsMerged, most });
    return madeText(text, merged, () => fileFingerprint(path));
  } finally {
    close();
  }
}

async function openMember(path: string, member: string, { dialect }: SourceSettings): Promise<TextSource> {
  const archive = await Archive.open(path);
  try {
    const found = archive.members.get(member);
    if (found === undefined) throw new SourceError('no-such-file', member, 'a file of the archive', 'Mend the path.');
    const chunks = archive.read(found, dialect.mostUnpacked);
    const close = async () => {
      await chunks.return(undefined);
      archive.close();
    };
    const first = await chunks.next();
    const bytes = first.done === true ? new Uint8Array(0) : first.value;
    const raw: RawBytes = { size: found.size, chunks, fingerprint: () => fileFingerprint(path), close };
    return new StreamedText(raw, bytes, transcoderFor(dialect.encoding, bytes.subarray(0, firstBytes)));
  } catch (error) {
    archive.close();
    throw error;
  }
}

/**
 * The text of a file of the exports, in UTF-8, ready to be read from its first byte; byte order marks are left in. Throws a
 * `SourceError` where the file is not what its dialect says, is damaged, or grows too large when unpacked.
 */
export async function openSource(
  from: string,
  file: string,
  settings: SourceSettings,
  chunk: number,
): Promise<TextSource> {
  const located = await locate(from, file);
  const path = join(from, located.file);
  if (located.isWorkbook) return openSheet(path, located, settings);
  if (located.member !== null) return openMember(path, located.member, settings);
  const { handle, size } = await openFile(path);
  try {
    const bytes = await firstOf(handle, firstBytes);
    const transcoder = transcoderFor(settings.dialect.encoding, bytes);
    if (transcoder === null) return new PlainFile(handle, size, chunk);
    return new StreamedText(fileBytes(handle, path, size, chunk, bytes.length), bytes, transcoder);
  } catch (error) {
    await handle.close();
    throw error;
  }
}
