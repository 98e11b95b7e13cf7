import type { DocumentEdit } from '../../../notebook/edit/document-edit.js';
import type { KnownName } from '../../../notebook/known-names.js';
import { wordOf } from '../../live/say.js';
import { FitsList } from './fits-list.js';
import { numberOf } from './parts.js';
import { buttonOf, lineOf, partOf } from './slots.js';
import { wordButton } from './word-button.js';

/** What a slip tells the desk. */
export interface SlipCalls {
  readonly typed: (edit: DocumentEdit) => void;
  readonly putIn: (edit: DocumentEdit | null) => void;
  readonly left: () => void;
  readonly names: () => readonly KnownName[];
}

const manyLined = new Set(['prose', 'settings']);

/** A place held open: its text where its value stood, the names that fit, and words for what can be done with its row or part. */
export class Slip {
  readonly slot: HTMLElement;
  private readonly editor: HTMLTextAreaElement;
  private readonly calls: SlipCalls;
  private readonly fits: FitsList;
  private readonly element: HTMLElement;
  private readonly was: string;
  private readonly line: number;
  private readonly column: number;
  /** Where it is opened: the place itself, or the bench above the table in whose head the place stands. */
  private readonly host: HTMLElement;
  private readonly wrong: HTMLElement;

  constructor(slot: HTMLElement, calls: SlipCalls, acts: readonly HTMLElement[]) {
    this.slot = slot;
    this.calls = calls;
    this.was = slot.dataset.text!;
    this.line = lineOf(slot);
    this.column = numberOf(slot, 'column');
    this.host = (slot.closest('th') === null ? null : partOf(slot).querySelector<HTMLElement>('.bench')) ?? slot;
    this.wrong = document.createElement('div');
    const holds = slot.dataset.holds!;
    const isLong = manyLined.has(holds);
    this.editor = document.createElement('textarea');
    this.editor.id = 'open-text';
    this.editor.rows = Math.max(1, this.was.split('\n').length);
    this.editor.spellcheck = isLong;
    this.editor.autocapitalize = 'off';
    this.editor.value = this.was;
    this.fits = new FitsList(this.editor, holds, 'open-fits');
    const label = document.createElement('label');
    label.htmlFor = this.editor.id;
    label.textContent = slot.dataset.label!;
    const own = document.createElement('div');
    own.className = 'acts';
    own.append(
      wordButton(wordOf(isLong ? 'putslines' : 'puts'), () => this.putIn()),
      wordButton(wordOf('leaves'), () => calls.left()),
    );
    this.element = document.createElement('div');
    this.element.className = isLong ? 'slip lines' : 'slip';
    this.element.append(label, this.editor, this.fits.element, this.wrong, own, ...acts);
    this.listen(isLong);
    this.host.dataset.held = '';
    for (const child of this.host.children) if (child instanceof HTMLElement) child.hidden = true;
    this.host.append(this.element);
    this.showWrong();
    this.editor.focus();
    if (isLong) this.editor.setSelectionRange(0, 0);
    else this.editor.select();
    this.fits.refresh(calls.names());
  }

  /** The edit that would put the text in, as it is written now. */
  edit(): DocumentEdit {
    const now = this.editor.value;
    const { last } = this.slot.dataset;
    if (last === undefined) {
      return { change: 'cell', line: this.line, column: this.column, was: this.was, now };
    }
    const first = this.line;
    const end = first + Number(last) - numberOf(this.slot, 'line');
    if (now.trim() !== '' || this.slot.dataset.holds === 'settings') {
      return { change: 'lines', first, last: end, was: this.was, now };
    }
    // Without any text there is no part left.
    const part = partOf(this.slot);
    return { change: 'take part', first: numberOf(part, 'first'), last: numberOf(part, 'last') };
  }

  /** Closes the place, so that its value stands there again, and has the focus where its text had it. */
  close(): void {
    const isFocused = this.element.contains(document.activeElement);
    this.element.remove();
    delete this.host.dataset.held;
    for (const child of this.host.children) if (child instanceof HTMLElement) child.hidden = false;
    if (isFocused) buttonOf(this.slot)?.focus();
  }

  /** Repeats on the bench what is wrong in the narrow head of the table. */
  showWrong(): void {
    if (this.host === this.slot) return;
    const said = [...this.slot.closest('th')!.querySelectorAll('.wrong')];
    this.wrong.replaceChildren(...said.map((one) => one.cloneNode(true)));
  }

  /** The edit that would put the text in; null where it is as it was. */
  changed(): DocumentEdit | null {
    return this.editor.value === this.was ? null : this.edit();
  }

  private putIn(): void {
    this.calls.putIn(this.changed());
  }

  private listen(isLong: boolean): void {
    this.editor.addEventListener('input', () => {
      this.fits.refresh(this.calls.names());
      this.calls.typed(this.edit());
    });
    this.element.addEventListener('keydown', (event) => {
      if (event.isComposing) return;
      if (event.key === 'Escape') this.calls.left();
      else if (event.target !== this.editor) return;
      else if (event.key === 'ArrowDown' && this.fits.move(1)) event.preventDefault();
      else if (event.key === 'ArrowUp' && this.fits.move(-1)) event.preventDefault();
      else if (event.key === 'Enter' && !event.altKey && (!isLong || event.ctrlKey || event.metaKey)) {
        event.preventDefault();
        if (!this.fits.putChosen()) this.putIn();
      } else return;
      event.stopPropagation();
    });
  }
}
