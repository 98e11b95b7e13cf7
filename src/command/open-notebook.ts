import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { withChangedInputs } from '../notebook/changed-inputs.js';
import { computeNotebook } from '../notebook/compute-notebook.js';
import { Memory } from '../notebook/memory.js';
import { readDocument } from '../notebook/read-document.js';
import type { NotebookWorkings } from '../notebook/workings.js';
import { writtenInputs } from '../notebook/written-inputs.js';
import type { Problem } from '../problem/problem.js';
import { wholeFile } from '../problem/problem.js';
import type { Book } from '../record/book.js';

/** The names of the inputs in a notebook file; none where it cannot be read, which is told where it is opened. */
export function inputsInFile(file: string): readonly string[] {
  const found = readNotebookFile(file);
  return 'problem' in found ? [] : [...writtenInputs(readDocument(file, found.text).document).keys()];
}

/** How a notebook is opened: with other values for some inputs, and with a memory of its own. */
export interface NotebookOpening {
  readonly inputs?: ReadonlyMap<string, string>;
  readonly memory?: Memory;
}

/** A notebook computed, with its inputs as its file has them, by name, whatever was chosen in their place. */
export interface OpenedNotebook extends NotebookWorkings {
  readonly written: ReadonlyMap<string, string>;
}

/** The bytes of a notebook file and its text, or the problem with the file itself. */
export function readNotebookFile(
  file: string,
): { readonly bytes: Uint8Array; readonly text: string } | { readonly problem: Problem } {
  const bad = (code: string, seen: string, remedy: string): { problem: Problem } => ({
    problem: { code, severity: 'stops', place: wholeFile(file), seen, wanted: 'a notebook: a CommonMark file', remedy },
  });
  const found = statSync(file, { throwIfNoEntry: false });
  if (found === undefined) return bad('no-such-file', 'no file', 'Check the path.');
  if (found.isDirectory()) return bad('is-a-folder', 'a folder', 'Name a file inside it, such as season.md.');
  const bytes = readFileSync(file);
  if (bytes.length === 0) return bad('empty-file', '0 bytes', 'Write the notebook, or restore it.');
  try {
    return { bytes, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return bad('not-utf-8', 'bytes that are not UTF-8', 'Save the file as UTF-8.');
  }
}

/** A notebook file computed over a book, or the problem with the file itself; mistakes inside it are in its own list. */
export function openNotebook(
  file: string,
  book: Book,
  { inputs = new Map(), memory = new Memory() }: NotebookOpening = {},
): OpenedNotebook | { readonly problem: Problem } {
  const found = readNotebookFile(file);
  if ('problem' in found) return found;
  const { bytes, text } = found;
  const read = readDocument(file, text);
  const changed = { ...read, document: withChangedInputs(read.document, inputs) };
  const workings = computeNotebook(changed, book, createHash('sha256').update(bytes).digest('hex'), memory);
  return { ...workings, written: writtenInputs(read.document) };
}
