import { createHmac } from 'node:crypto';
import type { TableDefinition } from '../../record/field.js';
import type { Interner } from '../interner.js';
import type { Texts } from '../key-space.js';
import type { FileReading } from '../read-file.js';
import { shownKeys } from './shown-keys.js';

/**
 * The key of a row that was set aside before it could come among the others, as a store keeps it: its text, or where that
 * may be a private one in the wrong place, a keyed hash of it (HMAC-SHA-256).
 */
export type PastLostKey = string | { readonly hidden: string };

const mark = '\u0000hidden ';

function hashOf(text: string, key: Uint8Array): string {
  return createHmac('sha256', key).update(`lost key\n${text}`).digest('hex');
}

/**
 * Tells the lost keys of readings as a store keeps them. Where a file has private columns, what no sound cell shows is
 * hidden: the cells of a ragged row may have slipped.
 */
export class LostKeys {
  readonly #all: readonly FileReading[];
  readonly #texts: Texts;
  readonly #key: Uint8Array;
  readonly #shown = new Map<TableDefinition, Uint8Array>();

  constructor(all: readonly FileReading[], texts: Texts, key: Uint8Array) {
    this.#all = all;
    this.#texts = texts;
    this.#key = key;
  }

  of({ draft, rule }: FileReading): readonly PastLostKey[] {
    const { interner } = this.#texts.spaceOf(draft.table.name);
    return draft.lostKeys.map((code) => {
      const text = interner.textOf(code);
      if (text.startsWith(mark)) return { hidden: text.slice(mark.length) };
      const isShown = rule.privateColumns.size === 0 || this.#shownOf(draft.table, interner.size)[code] === 1;
      return isShown ? text : { hidden: hashOf(text, this.#key) };
    });
  }

  #shownOf(table: TableDefinition, size: number): Uint8Array {
    const shown = this.#shown.get(table) ?? shownKeys(table, this.#all, size);
    this.#shown.set(table, shown);
    return shown;
  }
}

/** The number of a lost key; one that is hidden gets a number that nothing else has, until it is found again. */
export function recallLostKey(lost: PastLostKey, interner: Interner): number {
  return interner.codeOfText(typeof lost === 'string' ? lost : mark + lost.hidden);
}

/**
 * Finds hidden keys again among the keys that newly read rows have or refer to. Where they were hashed under another key, and
 * a new row refers to what no row has, the files alone can tell: the places of those to be read again are given.
 */
export function findHiddenKeys(
  readings: readonly FileReading[],
  isRecalled: (place: number) => boolean,
  texts: Texts,
  key: Uint8Array | null,
): readonly number[] {
  const unreadable: number[] = [];
  const fresh = readings.filter((_, place) => !isRecalled(place));
  for (const [place, { draft }] of readings.entries()) {
    if (!isRecalled(place) || draft.lostKeys.length === 0) continue;
    const { interner } = texts.spaceOf(draft.table.name);
    const hidden = new Map<string, number>();
    for (const [at, code] of draft.lostKeys.entries()) {
      const text = interner.textOf(code);
      if (text.startsWith(mark)) hidden.set(text.slice(mark.length), at);
    }
    if (hidden.size === 0) continue;
    const ofTable = readings.filter((reading) => reading.draft.table === draft.table);
    const owned = shownKeys(draft.table, ofTable, interner.size);
    const asked = shownKeys(draft.table, fresh, interner.size);
    for (let code = 1; code < asked.length; code++) {
      if (asked[code] === 0) continue;
      const at = key === null ? undefined : hidden.get(hashOf(interner.textOf(code), key));
      if (at !== undefined) draft.lostKeys[at] = code;
      else if (key === null && owned[code] === 0) {
        unreadable.push(place);
        break;
      }
    }
  }
  return unreadable;
}
