import { createHash } from 'node:crypto';
import { computeNotebook } from '../notebook/compute-notebook.js';
import type { DocumentEdit } from '../notebook/edit/document-edit.js';
import { editDocument } from '../notebook/edit/edit-document.js';
import { Memory } from '../notebook/memory.js';
import { type ReadNotebook, readDocument } from '../notebook/read-document.js';
import type { NotebookWorkings } from '../notebook/workings.js';
import { rememberedCharts } from '../report/desk/remembered-charts.js';
import { rememberedSheets } from '../report/desk/remembered-sheets.js';
import { readNotebook, writeNotebook } from './desk-folder.js';
import type { DeskSeason } from './desk-season.js';

/** A notebook's text with all that is computed from it. */
export interface OpenText {
  readonly text: string;
  /** SHA-256 of the text. */
  readonly version: string;
  readonly read: ReadNotebook;
  readonly workings: NotebookWorkings;
}

/** What became of an edit: the line on which to look next, or why it was not made. */
export interface EditOutcome {
  readonly refused: string | null;
  readonly line: number | null;
}

const mostSteps = 300;

/** One notebook that is open: its text, what it was before, and what its file says. */
export class DeskSession {
  readonly name: string;
  readonly draw = rememberedCharts();
  readonly sheets = rememberedSheets();
  private readonly path: string;
  private readonly season: DeskSeason;
  private readonly memory = new Memory();
  private readonly past: string[] = [];
  private readonly future: string[] = [];
  private text: string;
  /** What the file said when the desk and it last agreed. */
  private agreed: string;
  private file: string | null;
  private computed: OpenText | null = null;

  constructor(path: string, name: string, season: DeskSeason) {
    this.path = path;
    this.name = name;
    this.season = season;
    this.file = readNotebook(path);
    this.text = this.file ?? '';
    this.agreed = this.text;
  }

  /** The notebook as it stands here, computed. */
  get open(): OpenText {
    if (this.computed?.text !== this.text || this.computed.workings.book !== this.season.book) {
      this.computed = this.compute(this.text);
    }
    return this.computed;
  }

  /** The notebook's title, without computing anything. */
  get title(): string {
    return (this.computed?.read ?? readDocument(this.name, this.text)).document.title;
  }

  get canUndo(): boolean {
    return this.past.length > 0;
  }

  get canRedo(): boolean {
    return this.future.length > 0;
  }

  get isUnsaved(): boolean {
    return this.text !== this.agreed;
  }

  /** What the file says where that is neither what stands here nor what it said before; null where it is. */
  get elsewhere(): { readonly text: string | null; readonly fingerprint: string } | null {
    if (this.file === this.agreed || this.file === this.text) return null;
    return { text: this.file, fingerprint: fingerprintOf(this.file) };
  }

  /** Looks at the file again; true where it says something else than when it was last looked at. */
  look(): boolean {
    const before = this.file;
    this.file = readNotebook(this.path);
    return this.file !== before;
  }

  /** The notebook as it would be with an edit that is still being written; nothing is kept. */
  tryOut(edit: DocumentEdit): OpenText & EditOutcome {
    const edited = editDocument(this.text, edit, this.open.read);
    if ('refused' in edited) return { ...this.open, refused: edited.refused, line: null };
    return { ...this.compute(edited.text), refused: null, line: edited.line };
  }

  /** Makes an edit and saves it, where the file still says what it said. */
  edit(edit: DocumentEdit): EditOutcome {
    const edited = editDocument(this.text, edit, this.open.read);
    if ('refused' in edited) return { refused: edited.refused, line: null };
    if (edited.text !== this.text) this.become(edited.text);
    return { refused: null, line: edited.line };
  }

  /** Goes a step back or forth and saves that. */
  step(way: 'undo' | 'redo'): EditOutcome {
    const [from, to] = way === 'undo' ? [this.past, this.future] : [this.future, this.past];
    const text = from.pop();
    if (text === undefined)
      return { refused: way === 'undo' ? 'there is nothing to undo' : 'there is nothing to redo', line: null };
    to.push(this.text);
    this.text = text;
    this.save();
    return { refused: null, line: null };
  }

  /** Takes over what the file says; what stood here can be had back by undoing. */
  take(fingerprint: string): EditOutcome {
    this.look();
    if (fingerprint !== fingerprintOf(this.file)) return changedAgain;
    this.agreed = this.file ?? '';
    if (this.agreed !== this.text) {
      this.remember();
      this.text = this.agreed;
    }
    return { refused: null, line: null };
  }

  /** Saves what stands here over the file, if that still says what was shown. */
  keep(fingerprint: string): EditOutcome {
    this.look();
    if (fingerprint !== fingerprintOf(this.file)) return changedAgain;
    this.agreed = this.file ?? '';
    this.write();
    return { refused: null, line: null };
  }

  /** Takes over what the file says, without asking: for a page that only shows. */
  follow(): void {
    this.text = this.file ?? '';
    this.agreed = this.text;
  }

  private become(text: string): void {
    this.remember();
    this.text = text;
    this.save();
  }

  private remember(): void {
    this.past.push(this.text);
    if (this.past.length > mostSteps) this.past.shift();
    this.future.length = 0;
  }

  /** Saves where the file still says what it said when both agreed; otherwise the page shows the difference and asks. */
  private save(): void {
    this.look();
    if (this.file === this.agreed) this.write();
  }

  private write(): void {
    writeNotebook(this.path, this.text);
    this.file = this.text;
    this.agreed = this.text;
  }

  private compute(text: string): OpenText {
    const version = fingerprintOf(text);
    const read = readDocument(this.name, text);
    const { book, fingerprints } = this.season;
    return { text, version, read, workings: computeNotebook(read, book, version, this.memory, fingerprints) };
  }
}

const changedAgain: EditOutcome = { refused: 'the file was changed once more; look again', line: null };

function fingerprintOf(text: string | null): string {
  return text === null ? 'no file' : createHash('sha256').update(text).digest('hex');
}
