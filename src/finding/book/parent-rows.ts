import type { TextColumn } from '../../record/column.js';

const none = -1;

/** How many parents without children are passed over before all are looked through. */
const mostChildless = 30;

/** The row of each key's record, by the codes of the children's dictionary; -1 for a text that is no key. */
function parentByCode(keys: TextColumn, dictionary: readonly string[]): Int32Array {
  const parents = new Int32Array(dictionary.length).fill(none);
  const { codes, dictionary: keyTexts } = keys;
  let rowByKey: Map<string, number> | null = null;
  let expected = 0;
  for (let code = 1; code < dictionary.length; code++) {
    const key = dictionary[code]!;
    // Children mostly stand in their parents' order, so the next parents are tried before a map of all is built.
    let next = expected;
    const last = Math.min(codes.length, expected + mostChildless) - 1;
    while (next < last && keyTexts[codes[next]!] !== key) next++;
    if (next <= last && keyTexts[codes[next]!] === key) {
      parents[code] = next;
      expected = next + 1;
      continue;
    }
    rowByKey ??= rowsByKey(keys);
    const row = rowByKey.get(key);
    if (row === undefined) continue;
    parents[code] = row;
    expected = row + 1;
  }
  return parents;
}

function rowsByKey(keys: TextColumn): Map<string, number> {
  const rows = new Map<string, number>();
  keys.codes.forEach((code, row) => {
    if (code !== 0) rows.set(keys.dictionary[code]!, row);
  });
  return rows;
}

/** Rows found before: several pages and tables ask for those of the same columns. */
const found = new WeakMap<TextColumn, { readonly keys: TextColumn; readonly rows: Int32Array }>();

/**
 * The row of each child's parent: `keys` names the parents, `references` what each child points to. Throws for a child
 * without a parent, since intake sets those aside. The same columns are given the same rows again: they must not be changed.
 */
export function parentRows(keys: TextColumn, references: TextColumn): Int32Array {
  const known = found.get(references);
  if (known?.keys === keys) return known.rows;
  const rows = findParents(keys, references);
  found.set(references, { keys, rows });
  return rows;
}

function findParents(keys: TextColumn, references: TextColumn): Int32Array {
  const parents = parentByCode(keys, references.dictionary);
  const { codes } = references;
  const rows = new Int32Array(codes.length);
  for (let row = 0; row < rows.length; row++) {
    const parent = parents[codes[row]!]!;
    if (parent === none)
      throw new Error(`row ${row} points to "${references.dictionary[codes[row]!]}", which is not kept`);
    rows[row] = parent;
  }
  return rows;
}
