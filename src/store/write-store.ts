import { chmod, mkdtemp, readdir, rename, rm, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import type { ImportResult } from '../intake/import-exports.js';
import type { SetAsideRow } from '../intake/ledger.js';
import type { PastReading } from '../intake/recall/past-import.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import type { TableName } from '../record/field.js';
import { dataPackage } from '../record/table-schema.js';
import { tables } from '../record/tables.js';
import { arrowPieces } from './arrow-table.js';
import { cannotWrite } from './cannot-write.js';
import { describeStore, recoverStore } from './find-store.js';
import { removeStore, replacedFolder, writingPrefix } from './leftovers.js';
import { makeFolder } from './make-folder.js';
import type { StoredReadings } from './read-past.js';
import {
  asideFile,
  descriptionFingerprint,
  type StoreDescription,
  storeFiles,
  storeMark,
  storeVersion,
  tableFile,
} from './store-description.js';
import { syncFiles, syncNames, writePieces } from './write-durably.js';
import { asideRows, doubleEntryRows, ledgerRows, leftOutRows, unmatchedRows } from './write-ledger.js';

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

/** The rows read as a person mended them, as they stood then, each with its place in the exports. */
function* mendedRows(readings: readonly PastReading[]): Iterable<SetAsideRow> {
  for (const { file, mended } of readings) for (const { line, row } of mended) yield { file, line, row };
}

async function writeInto(folder: string, result: ImportResult): Promise<void> {
  const files: Record<string, string> = {};
  const write = async (name: string, pieces: Iterable<string | Uint8Array>) => {
    files[name] = await writePieces(join(folder, name), pieces);
  };
  const sizes = {} as Record<TableName, { rows: number; bytes: number }>;
  for (const { name } of tables) {
    const table = result.records[name];
    const pieces = arrowPieces(table);
    sizes[name] = { rows: table.rowCount, bytes: pieces.reduce((sum, { length }) => sum + length, 0) };
    await write(tableFile(name), pieces);
  }
  await write(storeFiles.setAside, ledgerRows(result.ledgers?.setAside() ?? result.setAside));
  await write(storeFiles.notes, ledgerRows(result.ledgers?.notes() ?? result.notes));
  await write(storeFiles.setAsideRows, asideRows(result.ledgers?.setAsideRows() ?? result.setAsideRows));
  await write(storeFiles.mendedRows, asideRows(mendedRows(result.remembered.readings)));
  const asideCounts = {} as Record<TableName, number>;
  const { aside, ...remembered } = result.remembered;
  for (const { name } of tables) {
    asideCounts[name] = aside[name].rowCount;
    if (aside[name].rowCount > 0) await write(asideFile(name), arrowPieces(aside[name]));
  }
  const { doubleEntries, unmatched } = result;
  const readings: StoredReadings = { ...remembered, doubleEntries, unmatched, asideRows: asideCounts };
  await write(storeFiles.readings, [`${JSON.stringify(readings)}\n`]);
  await write(storeFiles.doubleEntries, doubleEntryRows(doubleEntries));
  await write(storeFiles.leftOut, leftOutRows(result.remembered.readings));
  await write(storeFiles.unmatched, unmatchedRows(unmatched));
  await write(storeFiles.schema, [`${JSON.stringify(storedPackage(), null, 2)}\n`]);
  const { sum } = result;
  const plain: StoreDescription = { store: storeMark, version: storeVersion, sum, tables: sizes, files: { ...files } };
  const description = { ...plain, fingerprint: descriptionFingerprint(plain) };
  // Written last: a folder with a description is whole.
  await write(storeFiles.description, [`${JSON.stringify(description, null, 2)}\n`]);
  await syncFiles(folder, Object.keys(files));
}

function refusal(code: string, where: string, seen: string, wanted: string, remedy: string): Problem {
  return { code, severity: 'stops', place: wholeFile(where), seen, wanted, remedy };
}

/** Why no store may be written there, since the folder holds something that is none; null where one may. */
export async function refusedStore(where: string): Promise<Problem | null> {
  const folder = resolve(where);
  const found = await stat(folder).catch(() => null);
  if (found === null || (found.isDirectory() && (await readdir(folder)).length === 0)) return null;
  const described = await describeStore(folder);
  if (!('code' in described) || ['other-version', 'damaged-store'].includes(described.code)) return null;
  const seen = found.isDirectory() ? 'a folder with other files' : 'a file';
  const remedy = 'Name another folder; nothing in this one was touched.';
  return refusal('not-a-store', where, seen, 'a store, an empty folder or a new name', remedy);
}

/** What the writer of a store asks again just before the new one is put in its place. */
export interface StoreClaim {
  /** Whether nobody else has taken the store meanwhile. */
  readonly isHeld: () => Promise<boolean>;
}

/**
 * Writes an import as a store: an Arrow IPC file a table, the ledgers, and a description. The store is written beside the
 * folder, brought to the disk, and put in its place whole; a store that was there before is removed after that. What is no
 * store is left untouched, and the problem says so. Two may write to one folder at once only if each holds it in turn.
 */
export async function writeStore(where: string, result: ImportResult, claim?: StoreClaim): Promise<readonly Problem[]> {
  if (result.problems.length > 0) throw new Error('an import that was stopped cannot be stored');
  const folder = resolve(where);
  try {
    await makeFolder(dirname(folder));
    await recoverStore(folder);
    const refused = await refusedStore(where);
    if (refused !== null) return [refused];
    return (await replaceStore(folder, result, claim)) ? [] : [takenAway(where)];
  } catch (mistake) {
    return [cannotWrite(where, mistake)];
  }
}

function takenAway(where: string): Problem {
  const remedy = 'Another import took the store while this one read; import again once it has ended.';
  return refusal('store-held', where, 'a lock of somebody else', 'the store as it was taken', remedy);
}

/** Puts a new store in the place of the old one; false, and nothing changed, where the claim to it was lost. */
async function replaceStore(folder: string, result: ImportResult, claim: StoreClaim | undefined): Promise<boolean> {
  const beside = await mkdtemp(writingPrefix(folder));
  const replaced = replacedFolder(folder);
  try {
    // A folder made for one alone is opened to whoever may read its parent.
    await chmod(beside, 0o755);
    await writeInto(beside, result);
    if (claim !== undefined && !(await claim.isHeld())) {
      await rm(beside, { recursive: true, force: true });
      return false;
    }
    if ((await stat(folder).catch(() => null)) !== null) await rename(folder, replaced);
    await rename(beside, folder);
  } catch (mistake) {
    await removeStore(beside).catch(() => {});
    await recoverStore(folder).catch(() => {});
    throw mistake;
  }
  // From here on the new store is the store; that the old one lingers is no failure, and the next import removes it.
  await syncNames(dirname(folder)).catch(() => {});
  await removeStore(replaced).catch(() => {});
  return true;
}
