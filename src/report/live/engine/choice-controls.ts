import type { WrittenChoice } from '../../choice/choice-address.js';

type Control = HTMLSelectElement | HTMLInputElement;

const fieldMark = 'only.';
const inputMark = 'with.';

/** The fields, years and inputs of a page by which a reader chooses. */
export class ChoiceControls {
  readonly form: HTMLFormElement;

  constructor(form: HTMLFormElement) {
    this.form = form;
  }

  get #controls(): readonly Control[] {
    return [...this.form.elements].filter(
      (control): control is Control => control instanceof HTMLSelectElement || control instanceof HTMLInputElement,
    );
  }

  /** The inputs as the notebook has them, by name. */
  get inputs(): ReadonlyMap<string, string> {
    const inputs = this.#controls.filter(({ name }) => name.startsWith(inputMark));
    return new Map(inputs.map((control) => [control.name.slice(inputMark.length), usual(control)]));
  }

  /** What is chosen; what stands at its usual value is not. */
  read(): WrittenChoice {
    const only = new Map<string, string>();
    const inputs = new Map<string, string>();
    for (const control of this.#controls) {
      const { name, value } = control;
      if (value === usual(control)) continue;
      if (name.startsWith(fieldMark)) only.set(name.slice(fieldMark.length), value);
      if (name.startsWith(inputMark)) inputs.set(name.slice(inputMark.length), value);
    }
    return { only, inputs };
  }

  /** Puts a choice into the controls; what it does not name stands at its usual value. */
  write({ only, inputs }: WrittenChoice): void {
    for (const control of this.#controls) {
      const { name } = control;
      const given = name.startsWith(fieldMark)
        ? only.get(name.slice(fieldMark.length))
        : inputs.get(name.slice(inputMark.length));
      control.value = given ?? usual(control);
      // A select keeps nothing that it does not offer.
      if (control instanceof HTMLSelectElement && control.selectedIndex < 0) control.value = usual(control);
    }
  }

  /** Shows the years chosen where the page lists its inputs, and whether there is anything to take back. */
  follow({ only, inputs }: WrittenChoice): void {
    const all = this.inputs;
    for (const shown of document.querySelectorAll<HTMLElement>('[data-input]')) {
      const name = shown.dataset['input']!;
      shown.textContent = inputs.get(name) ?? all.get(name) ?? '';
    }
    const reset = this.form.querySelector<HTMLButtonElement>('button[type=reset]');
    // A button that goes dead under the finger that pressed it would lose the reader's place.
    reset?.setAttribute('aria-disabled', String(only.size + inputs.size === 0));
    reset?.removeAttribute('disabled');
  }
}

function usual(control: Control): string {
  if (control instanceof HTMLInputElement) return control.defaultValue;
  return [...control.options].find(({ defaultSelected }) => defaultSelected)?.value ?? control.options[0]?.value ?? '';
}
