import { chmod, mkdir, mkdtemp, open, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { ImportResult } from '../intake/import-exports.js';
import type { LedgerLine } from '../intake/ledger.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import type { TableName } from '../record/field.js';
import { dataPackage } from '../record/table-schema.js';
import { tables } from '../record/tables.js';
import { arrowBytes } from './arrow-table.js';
import { delimitedRow } from './delimited.js';
import { describeStore, recoverStore, replacedFolder } from './find-store.js';
import { type StoreDescription, storeFiles, storeMark, storeVersion, tableFile } from './store-description.js';

const ledgerColumns = ['file', 'line', 'column', 'seen', 'code', 'reason', 'remedy'];
const piece = 1 << 16;

async function writeRows(path: string, rows: Iterable<readonly (string | number)[]>): Promise<void> {
  const handle = await open(path, 'w');
  try {
    let text = '';
    for (const row of rows) {
      text += delimitedRow(row);
      if (text.length < piece) continue;
      await handle.write(text);
      text = '';
    }
    await handle.write(text);
  } finally {
    await handle.close();
  }
}

function* ledgerRows(lines: readonly LedgerLine[]): Iterable<readonly (string | number)[]> {
  yield ledgerColumns;
  for (const { file, line, column, seen, code, reason, remedy } of lines) {
    yield [file, line, column, seen, code, reason, remedy];
  }
}

function* asideRows(result: ImportResult): Iterable<readonly (string | number)[]> {
  yield ['file', 'line', 'row'];
  for (const { file, line, row } of result.setAsideRows) yield [file, line, row];
}

/** The canonical tables' descriptor, with the names of the stored files. */
function storedPackage(): object {
  const described = dataPackage() as { readonly resources: readonly { readonly name: TableName }[] };
  return {
    ...described,
    resources: described.resources.map((resource) => ({
      ...resource,
      path: tableFile(resource.name),
      format: 'arrow',
      mediatype: 'application/vnd.apache.arrow.file',
    })),
  };
}

async function writeInto(folder: string, result: ImportResult): Promise<void> {
  const sizes = {} as Record<TableName, { rows: number; bytes: number }>;
  for (const { name } of tables) {
    const table = result.records[name];
    const bytes = arrowBytes(table);
    sizes[name] = { rows: table.rowCount, bytes: bytes.length };
    await writeFile(join(folder, tableFile(name)), bytes);
  }
  await writeRows(join(folder, storeFiles.setAside), ledgerRows(result.setAside));
  await writeRows(join(folder, storeFiles.notes), ledgerRows(result.notes));
  await writeRows(join(folder, storeFiles.setAsideRows), asideRows(result));
  await writeFile(join(folder, storeFiles.schema), `${JSON.stringify(storedPackage(), null, 2)}\n`);
  const description: StoreDescription = { store: storeMark, version: storeVersion, sum: result.sum, tables: sizes };
  // Written last: a folder with a description is whole.
  await writeFile(join(folder, storeFiles.description), `${JSON.stringify(description, null, 2)}\n`);
}

function refusal(code: string, where: string, seen: string, wanted: string, remedy: string): Problem {
  return { code, severity: 'stops', place: wholeFile(where), seen, wanted, remedy };
}

/** Why nothing may be written there: the folder holds something that is no store. */
async function refuse(where: string, folder: string): Promise<Problem | null> {
  const found = await stat(folder).catch(() => null);
  if (found === null || (found.isDirectory() && (await readdir(folder)).length === 0)) return null;
  const described = await describeStore(folder);
  if (!('code' in described) || described.code === 'other-version') return null;
  const seen = found.isDirectory() ? 'a folder with other files' : 'a file';
  const remedy = 'Name another folder; nothing in this one was touched.';
  return refusal('not-a-store', where, seen, 'a store, an empty folder or a new name', remedy);
}

async function removeLeftovers(folder: string): Promise<void> {
  const parent = dirname(folder);
  const prefix = `${basename(folder)}.writing-`;
  for (const name of await readdir(parent)) {
    if (name.startsWith(prefix)) await rm(join(parent, name), { recursive: true, force: true });
  }
}

/**
 * Writes an import as a store: an Arrow IPC file a table, the ledgers, and a description. The store is written beside the
 * folder and put in its place whole; a store that was there before is removed after that. What is no store is left
 * untouched, and the problem says so.
 */
export async function writeStore(where: string, result: ImportResult): Promise<readonly Problem[]> {
  if (result.problems.length > 0) throw new Error('an import that was stopped cannot be stored');
  try {
    return await replaceStore(where, result);
  } catch (mistake) {
    // A full disk, a missing right or a file in the way is no mistake of ours.
    if (!(mistake instanceof Error) || !('syscall' in mistake)) throw mistake;
    const remedy = 'Look at the rights and the space there; a store that was there before is as it was.';
    return [refusal('cannot-write', where, mistake.message, 'a place that can be written to', remedy)];
  }
}

async function replaceStore(where: string, result: ImportResult): Promise<readonly Problem[]> {
  const folder = resolve(where);
  await mkdir(dirname(folder), { recursive: true });
  await recoverStore(folder);
  const refused = await refuse(where, folder);
  if (refused !== null) return [refused];
  await removeLeftovers(folder);
  const beside = await mkdtemp(`${folder}.writing-`);
  // A folder made for one alone is opened to whoever may read its parent.
  await chmod(beside, 0o755);
  try {
    await writeInto(beside, result);
    const hadOne = (await stat(folder).catch(() => null)) !== null;
    if (hadOne) await rename(folder, replacedFolder(folder));
    await rename(beside, folder);
    if (hadOne) await rm(replacedFolder(folder), { recursive: true, force: true });
  } catch (mistake) {
    await rm(beside, { recursive: true, force: true });
    await recoverStore(folder);
    throw mistake;
  }
  return [];
}
