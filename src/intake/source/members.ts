import { join } from 'node:path';
import { Archive, mostUnpacked } from './archive.js';
import { holdsFiles, isWorkbookName, locate } from './container.js';
import { openWorkbook } from './open-workbook.js';

/**
 * The paths of what an archive or workbook holds, as `FILE/MEMBER` or `FILE/SHEET`, workbooks within an archive sheet by
 * sheet, in the order in which they stand there. Throws a `SourceError` where it cannot be opened.
 */
export async function membersOf(from: string, file: string): Promise<readonly string[]> {
  const located = await locate(from, file);
  const path = join(from, located.file);
  if (located.isWorkbook) {
    const { workbook, close } = await openWorkbook(path, located, mostUnpacked);
    close();
    return workbook.sheets.map(({ name }) => `${file}/${name}`);
  }
  const archive = await Archive.open(path);
  const names = [...archive.members.keys()];
  archive.close();
  const paths: string[] = [];
  for (const name of names) {
    const inner = `${file}/${name}`;
    // An archive within an archive stays closed.
    if (!isWorkbookName(name)) {
      if (!holdsFiles(name)) paths.push(inner);
    } else paths.push(...(await membersOf(from, inner)));
  }
  return paths;
}
