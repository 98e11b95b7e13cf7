import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import { tables } from '../record/tables.js';
import { storeFiles, tableFile } from '../store/store-description.js';
import { openSeason } from './open-season.js';

/** The records that a desk asks: they are read anew when the store was written anew. */
export class DeskSeason {
  private readonly store: string;
  private opened: { readonly book: Book; readonly fingerprints: ReadonlyMap<string, string> };
  private written: string;

  private constructor(store: string, book: Book) {
    this.store = store;
    this.written = lastWritten(store);
    this.opened = { book, fingerprints: fingerprintsOf(store) };
  }

  /** The season of a store, or the problems that keep it from being opened. */
  static async open(store: string): Promise<DeskSeason | { readonly problems: readonly Problem[] }> {
    const season = await openSeason(store);
    return 'problems' in season ? season : new DeskSeason(store, season.book);
  }

  get book(): Book {
    return this.opened.book;
  }

  /** SHA-256 of each table's file, by the table's name. */
  get fingerprints(): ReadonlyMap<string, string> {
    return this.opened.fingerprints;
  }

  /** Reads the store again where it was written since; true where the records are others now. A store that fails to open changes nothing. */
  async renew(): Promise<boolean> {
    const written = lastWritten(this.store);
    if (written === this.written || written === '') return false;
    const season = await openSeason(this.store);
    if ('problems' in season) return false;
    this.written = written;
    this.opened = { book: season.book, fingerprints: fingerprintsOf(this.store) };
    return true;
  }
}

function lastWritten(store: string): string {
  const found = statSync(join(store, storeFiles.description), { throwIfNoEntry: false });
  return found === undefined ? '' : `${found.mtimeMs} ${found.ino}`;
}

function fingerprintsOf(store: string): ReadonlyMap<string, string> {
  return new Map(
    tables.map(({ name }) => [
      name,
      createHash('sha256')
        .update(readFileSync(join(store, tableFile(name))))
        .digest('hex'),
    ]),
  );
}
