import { stat } from 'node:fs/promises';
import { join } from 'node:path';

/** A file of an export: on disk by itself, or within an archive, a workbook, or a workbook within an archive. */
export interface Located {
  /** The path on disk, below the folder of exports. */
  readonly file: string;
  /** Its name within the archive; null outside of one. */
  readonly member: string | null;
  /** The sheet of the workbook; null for a text, and where the path names the workbook as a whole. */
  readonly sheet: string | null;
  readonly isWorkbook: boolean;
}

const archiveName = /\.zip$/iu;
const workbookName = /\.xls[xm]$/iu;

/** Whether a name is that of an archive or a workbook, which hold files of their own. */
export function holdsFiles(name: string): boolean {
  return archiveName.test(name) || workbookName.test(name);
}

/** Whether a name is that of a workbook. */
export function isWorkbookName(name: string): boolean {
  return workbookName.test(name);
}

/** A path of an export taken apart: `lakes/2025.zip/book.xlsx/Sheet 1` lies in `lakes/2025.zip` on disk. */
export async function locate(from: string, path: string): Promise<Located> {
  const names = path.split('/');
  for (let count = 1; count <= names.length; count++) {
    const name = names[count - 1]!;
    if (!holdsFiles(name)) continue;
    const file = names.slice(0, count).join('/');
    // A folder may be called so too.
    if ((await stat(join(from, file)).catch(() => null))?.isFile() !== true) continue;
    const within = names.slice(count);
    if (isWorkbookName(name)) {
      return { file, member: null, sheet: within.length === 0 ? null : within.join('/'), isWorkbook: true };
    }
    const book = within.findIndex(isWorkbookName);
    if (book < 0)
      return { file, member: within.length === 0 ? null : within.join('/'), sheet: null, isWorkbook: false };
    const sheet = within.slice(book + 1).join('/');
    return { file, member: within.slice(0, book + 1).join('/'), sheet: sheet === '' ? null : sheet, isWorkbook: true };
  }
  return { file: path, member: null, sheet: null, isWorkbook: false };
}
