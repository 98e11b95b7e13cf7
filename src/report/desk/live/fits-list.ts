import type { KnownName } from '../../../notebook/known-names.js';
import { wordOf } from '../../live/say.js';
import { type Fitting, fitting } from './fitting.js';

/** The list below an open place: names that fit, with their unit and meaning, chosen with arrow keys or a pointer. */
export class FitsList {
  readonly element: HTMLUListElement;
  private readonly editor: HTMLTextAreaElement;
  private readonly holds: string;
  private fits: readonly Fitting[] = [];
  private chosen = -1;

  constructor(editor: HTMLTextAreaElement, holds: string, id: string) {
    this.editor = editor;
    this.holds = holds;
    this.element = document.createElement('ul');
    this.element.className = 'fits';
    this.element.id = id;
    this.element.setAttribute('role', 'listbox');
    this.element.setAttribute('aria-label', wordOf('names'));
    editor.setAttribute('aria-autocomplete', 'list');
    editor.setAttribute('aria-controls', id);
    // The pointer must not take focus from the text before it chooses.
    this.element.addEventListener('mousedown', (event) => event.preventDefault());
    this.element.addEventListener('click', (event) => {
      const item = (event.target as Element).closest('li');
      if (item !== null) this.put([...this.element.children].indexOf(item));
    });
  }

  /** Shows what fits the text as it is written now. */
  refresh(names: readonly KnownName[]): void {
    const { value, selectionStart } = this.editor;
    this.fits = fitting(names, this.holds, value, selectionStart);
    this.choose(-1);
    this.element.replaceChildren(...this.fits.map((fit, at) => this.item(fit, at)));
    this.element.hidden = this.fits.length === 0;
  }

  /** Moves the choice by one; false where there is nothing to choose. */
  move(by: number): boolean {
    if (this.fits.length === 0) return false;
    const next = this.chosen + by;
    this.choose(next < -1 ? this.fits.length - 1 : next >= this.fits.length ? -1 : next);
    return true;
  }

  /** Puts the chosen name into the text; false where none is chosen. */
  putChosen(): boolean {
    if (this.chosen < 0) return false;
    this.put(this.chosen);
    return true;
  }

  private put(at: number): void {
    const { from, to, put } = this.fits[at]!;
    this.editor.focus();
    this.editor.setRangeText(put, from, to, 'end');
    this.editor.dispatchEvent(new Event('input', { bubbles: true }));
    this.element.replaceChildren();
    this.element.hidden = true;
    this.fits = [];
    this.choose(-1);
  }

  private choose(at: number): void {
    this.chosen = at;
    [...this.element.children].forEach((item, place) => {
      item.setAttribute('aria-selected', String(place === at));
      if (place === at) item.scrollIntoView({ block: 'nearest' });
    });
    if (at < 0) this.editor.removeAttribute('aria-activedescendant');
    else this.editor.setAttribute('aria-activedescendant', `${this.element.id}-${at}`);
  }

  private item({ known }: Fitting, at: number): HTMLLIElement {
    const item = document.createElement('li');
    item.id = `${this.element.id}-${at}`;
    item.setAttribute('role', 'option');
    item.setAttribute('aria-selected', 'false');
    const name = document.createElement('b');
    name.textContent = known.name;
    const kind = document.createElement('i');
    kind.textContent = [known.kind, known.unit, known.of === '' ? '' : `of ${known.of}`]
      .filter((text) => text !== '')
      .join(', ');
    const meaning = document.createElement('small');
    meaning.textContent = known.meaning;
    item.append(name, kind, meaning);
    return item;
  }
}
