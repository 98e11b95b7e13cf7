import type { MergedCells } from './sheet-rows.js';

/**
 * The text of one exported file as UTF-8 bytes, wherever it lies and however it is written on disk. Offsets count bytes of
 * that text, and a second reading gives the same bytes at the same offsets.
 */
export interface TextSource {
  /** How much there is to go through, in bytes; only the ratio of `done` to it means anything. */
  readonly size: number;
  readonly done: number;
  /** The merged cells of a sheet, whose lines are its rows; absent for other files. */
  readonly merged?: readonly MergedCells[];
  /** Puts at least one byte of the text there and says how many; 0 at its end. */
  readonly read: (into: Uint8Array) => Promise<number>;
  /** Goes to an offset of the text at or behind the place now reached. */
  readonly seek: (offset: number) => Promise<void>;
  /** The SHA-256 of the file on disk that holds the text, in hexadecimal; asked for once the text was read to its end. */
  readonly fingerprint: () => Promise<string>;
  readonly close: () => Promise<void>;
}

/** Something about a file, found before or while its text was read, that stops it. */
export interface SourceFault {
  readonly code: string;
  readonly seen: string;
  readonly wanted: string;
  readonly remedy: string;
}

/** A `SourceFault` on its way to the edge of the reading, where it becomes a problem of its file. */
export class SourceError extends Error {
  readonly fault: SourceFault;

  constructor(code: string, seen: string, wanted: string, remedy: string) {
    super(`${code}: ${seen}`);
    this.fault = { code, seen, wanted, remedy };
  }
}
