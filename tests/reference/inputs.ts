/** The inputs of one reference case, read by name; a missing or misshapen one throws with its name. */
export class Inputs {
  readonly #values: Readonly<Record<string, unknown>>;

  constructor(values: Readonly<Record<string, unknown>>) {
    this.#values = values;
  }

  has(name: string): boolean {
    return this.#values[name] !== undefined;
  }

  number(name: string): number {
    const value = this.#values[name];
    if (typeof value !== 'number') throw new Error(`input ${name} is not a number`);
    return value;
  }

  /** A list of numbers; a single number is a list of one. */
  numbers(name: string): readonly number[] {
    const value = this.#values[name];
    if (typeof value === 'number') return [value];
    if (!Array.isArray(value) || !value.every((entry): entry is number => typeof entry === 'number')) {
      throw new Error(`input ${name} is not a list of numbers`);
    }
    return value;
  }

  /** A list of lists of numbers. */
  table(name: string): readonly (readonly number[])[] {
    const value = this.#values[name];
    if (!Array.isArray(value)) throw new Error(`input ${name} is not a table`);
    return value.map((_, index) => new Inputs({ [name]: value[index] }).numbers(name));
  }

  text(name: string): string {
    const value = this.#values[name];
    if (typeof value !== 'string') throw new Error(`input ${name} is not a text`);
    return value;
  }

  /** A list of texts; a single text is a list of one. */
  texts(name: string): readonly string[] {
    const value = this.#values[name];
    if (typeof value === 'string') return [value];
    if (!Array.isArray(value) || !value.every((entry): entry is string => typeof entry === 'string')) {
      throw new Error(`input ${name} is not a list of texts`);
    }
    return value;
  }

  /** The confidence, under any of the names in use; 0.95 where none is given. */
  get confidence(): number {
    const name = ['conf', 'confidence', 'conf_level', 'level'].find((known) => this.has(known));
    return name === undefined ? 0.95 : this.number(name);
  }
}

/** One method's way from a case's inputs to values under the names that its expected values have. */
export type Method = (inputs: Inputs) => Readonly<Record<string, unknown>>;
