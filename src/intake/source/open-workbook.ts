import { Archive } from './archive.js';
import type { Located } from './container.js';
import { SourceError } from './text-source.js';
import { readWorkbook, type Workbook, WorkbookParts } from './workbook.js';

/** An open workbook, to be closed by whoever opened it. */
export interface OpenWorkbook {
  readonly parts: WorkbookParts;
  readonly workbook: Workbook;
  readonly close: () => void;
}

/** Opens the workbook at a place: on disk, or within an archive, from where it is unpacked into memory. */
export async function openWorkbook(path: string, { member }: Located, most: number): Promise<OpenWorkbook> {
  const outer = await Archive.open(path);
  let book = outer;
  try {
    if (member !== null) {
      const found = outer.members.get(member);
      if (found === undefined) throw new SourceError('no-such-file', member, 'a file of the archive', 'Mend the path.');
      const pieces: Uint8Array[] = [];
      for await (const piece of outer.read(found, most)) pieces.push(piece);
      const { fromBufferPromise } = await import('yauzl');
      book = await Archive.from((options) => fromBufferPromise(Buffer.concat(pieces), options));
    }
    const parts = new WorkbookParts(book, most);
    const close = () => {
      book.close();
      if (book !== outer) outer.close();
    };
    return { parts, workbook: await readWorkbook(parts), close };
  } catch (error) {
    outer.close();
    throw error;
  }
}
