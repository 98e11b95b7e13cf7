import { stat } from 'node:fs/promises';
import type { Entry, Options, ZipFile } from 'yauzl';
import { checksum } from './checksum.js';
import { SourceError } from './text-source.js';

/** One file of an archive. */
export interface ArchiveMember {
  readonly name: string;
  /** Its size once unpacked, in bytes, as the archive says; reading it stops where that is not so. */
  readonly size: number;
  readonly entry: Entry;
}

/** Most bytes that one archive, or the parts of one workbook, may give when unpacked, unless the crosswalk says otherwise. */
export const mostUnpacked = 512 * 1024 * 1024;

const mostMembers = 100_000;

/** What the archives opened last hold: each file within one opens it anew, and a listing reads every entry. */
const lastListed = new Map<string, { readonly mark: string; readonly members: ReadonlyMap<string, ArchiveMember> }>();
const mostListed = 4;

function damaged(error: unknown): SourceError {
  const said = error instanceof Error ? error.message : String(error);
  return new SourceError('damaged-archive', said, 'a whole ZIP archive', 'Export or copy it again.');
}

/** An open ZIP archive. What is wrong with it is thrown as a `SourceError`. */
export class Archive {
  readonly members: ReadonlyMap<string, ArchiveMember>;
  readonly #zip: ZipFile;

  private constructor(zip: ZipFile, members: ReadonlyMap<string, ArchiveMember>) {
    this.#zip = zip;
    this.members = members;
  }

  /** Opens an archive on disk; one that was listed before and stayed the same is not listed again. */
  static async open(path: string): Promise<Archive> {
    const found = await stat(path, { bigint: true }).catch(() => null);
    const mark = found === null ? '' : `${found.dev} ${found.ino} ${found.size} ${found.mtimeNs}`;
    const known = lastListed.get(path);
    // Most exports are no archives, and what opens them takes a while to load.
    const { openPromise } = await import('yauzl');
    if (known?.mark === mark) {
      try {
        return new Archive(await openPromise(path, { autoClose: false }), known.members);
      } catch (error) {
        throw damaged(error);
      }
    }
    const archive = await Archive.from((options) => openPromise(path, options));
    if (lastListed.size === mostListed) lastListed.clear();
    lastListed.set(path, { mark, members: archive.members });
    return archive;
  }

  static async from(opened: (options: Options) => Promise<ZipFile>): Promise<Archive> {
    let zip: ZipFile | null = null;
    try {
      zip = await opened({ autoClose: false });
      const members = new Map<string, ArchiveMember>();
      for await (const entry of zip.eachEntry()) {
        const name = entry.fileName;
        if (name.endsWith('/') || name.startsWith('__MACOSX/')) continue;
        if (members.has(name)) throw new Error(`it holds ${name} twice`);
        if (members.size === mostMembers) throw new Error(`it holds more than ${mostMembers} files`);
        members.set(name, { name, size: entry.uncompressedSize, entry });
      }
      return new Archive(zip, members);
    } catch (error) {
      zip?.close();
      throw damaged(error);
    }
  }

  /** The bytes of one of its files, at most that many; a longer one is refused before a byte of it is unpacked. */
  async *read({ name, size, entry }: ArchiveMember, most: number): AsyncGenerator<Uint8Array> {
    if (entry.isEncrypted()) {
      throw new SourceError('locked-archive', `${name} under a password`, 'an archive without one', 'Unpack it first.');
    }
    if (size > most) {
      const seen = `${name} of ${Math.ceil(size / 1_048_576)} MiB unpacked`;
      const wanted = `at most ${Math.floor(most / 1_048_576)} MiB`;
      const remedy = 'Look whether it is what you think; if so, raise unpacked_mib under dialect in the crosswalk.';
      throw new SourceError('too-large-unpacked', seen, wanted, remedy);
    }
    let sum = 0;
    try {
      // The library ends the stream with an error as soon as it gives more or fewer bytes than the archive says.
      for await (const chunk of await this.#zip.openReadStreamPromise(entry)) {
        const bytes = chunk as Uint8Array;
        sum = checksum(bytes, sum);
        yield bytes;
      }
    } catch (error) {
      throw error instanceof SourceError ? error : damaged(error);
    }
    if (sum !== entry.crc32) throw damaged(new Error(`the checksum of ${name} is another`));
  }

  close(): void {
    this.#zip.close();
  }
}
