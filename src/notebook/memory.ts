import { type EvaluationCache, emptyCache } from '../formula/environment.js';
import { type Formula, namesIn } from '../formula/tree.js';
import type { Book } from '../record/book.js';
import { type LocaleName, usualLocale } from '../record/written-numbers.js';
import { tableKeys } from './table-keys.js';

/** For how many turns a value that nobody asks for is kept, unless a memory is told otherwise. */
const usualTurnsKept = 12;

/**
 * What computations of a notebook leave for the next one: every value beside a key of all that it depends on. The key of a
 * name is made of its formula and of the keys of the names and tables in it, so that a change reaches what stands on it and
 * nothing else. Values are shared, never changed.
 */
export class Memory {
  private readonly kept = new Map<string, { readonly value: unknown; turn: number }>();
  private readonly keys = new Map<string, string>();
  private readonly computed: string[] = [];
  private book: Book | null = null;
  private tables: ReadonlyMap<string, string> = new Map();
  private evaluationCache: EvaluationCache = emptyCache();
  private locale: LocaleName = usualLocale;
  private turn = 0;
  private readonly turnsKept: number;
  private readonly beingMade: string[] = [];

  /** Values that no computation has asked for in `turnsKept` turns are let go. */
  constructor(turnsKept = usualTurnsKept) {
    this.turnsKept = turnsKept;
  }

  /**
   * Begins a computation over a book. `fingerprints` tell the content of its tables, by name; without them a book that was
   * imported from the same exports counts as the same.
   */
  begin(book: Book, fingerprints: ReadonlyMap<string, string> = new Map(), locale: LocaleName = usualLocale): void {
    this.turn += 1;
    // What findings say has numbers in it, so that nothing said in another locale may be remembered.
    if (locale !== this.locale) this.kept.clear();
    this.locale = locale;
    this.computed.length = 0;
    if (book !== this.book) {
      this.book = book;
      this.evaluationCache = emptyCache();
      this.tables = tableKeys(book, fingerprints);
    }
    for (const [key, { turn }] of this.kept) if (turn < this.turn - this.turnsKept) this.kept.delete(key);
  }

  /** What the evaluator makes once for a book. */
  get cache(): EvaluationCache {
    return this.evaluationCache;
  }

  /** The key of all records together, for what may ask any table. */
  get recordsKey(): string {
    return this.keyOf('records', ...this.tables.values());
  }

  /** What has been computed since the last beginning, by the names given, in order; the rest was remembered. */
  get computedNames(): readonly string[] {
    return this.computed;
  }

  /** The name whose value is being made at this moment; null where none is. */
  get making(): string | null {
    return this.beingMade.at(-1) ?? null;
  }

  /** The value that belongs to a key, made only where it is not remembered; `name` tells what was computed. */
  value<Value>(name: string, key: string, make: () => Value): Value {
    const found = this.kept.get(key);
    if (found !== undefined) {
      found.turn = this.turn;
      return found.value as Value;
    }
    this.beingMade.push(name);
    try {
      const value = make();
      this.computed.push(name);
      this.kept.set(key, { value, turn: this.turn });
      return value;
    } finally {
      this.beingMade.pop();
    }
  }

  /** A short key that stands for texts, the same for the same ones. */
  keyOf(...texts: readonly string[]): string {
    const whole = JSON.stringify(texts);
    let key = this.keys.get(whole);
    if (key === undefined) {
      key = String(this.keys.size + 1);
      this.keys.set(whole, key);
    }
    return key;
  }

  /** The key of a formula whose names have the keys given; a name without one is a table's, or a field's and stands for itself. */
  formulaKey(formula: Formula, keyOfName: (name: string) => string | undefined, ...context: readonly string[]): string {
    const names = namesIn(formula).map((name) => keyOfName(name) ?? this.tables.get(name) ?? '');
    return this.keyOf('formula', formula.text, ...context, ...names);
  }
}
