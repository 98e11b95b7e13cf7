import type { TextColumn } from '../../record/column.js';
import type { Fold } from '../crosswalk.js';
import type { Draft } from '../draft.js';
import type { Slice } from './recall-columns.js';

/** Puts the cells of a wide checklist back from the records folded out of them, which stand row by row. */
export function recallFold(draft: Draft, fold: Fold, slice: Slice, places: Uint32Array): void {
  const { table, start, end } = slice;
  const said = [...fold.values.values()];
  const fields = table.definition.fields.filter(({ name }) => said.some((value) => value.has(name)));
  const columns = fields.map(({ name }) => table.columns.get(name) as TextColumn);
  const sizes = columns.map(({ dictionary }) => dictionary.length);
  // The texts of one record as one number: each field's code, in a place of its own.
  const placeOf = new Map<number, number>([[0, 0]]);
  for (const [index, value] of said.entries()) {
    const texts = fields.map(({ name }) => value.get(name) ?? '');
    const codes = columns.map(({ dictionary }, at) => dictionary.indexOf(texts[at]!));
    if (codes.includes(-1)) continue;
    const number = codes.reduce((sum, code, at) => sum * sizes[at]! + code, 0);
    if (!placeOf.has(number)) placeOf.set(number, index + 1);
  }
  const width = fold.columns.length;
  for (let row = start; row < end; row++) {
    let number = 0;
    for (const [at, { codes }] of columns.entries()) number = number * sizes[at]! + codes[row]!;
    const offset = row - start;
    const place = placeOf.get(number);
    if (place === undefined) throw new Error(`${fold.table.name} hold what no mark of the checklist says`);
    draft.folded[places[Math.floor(offset / width)]! * width + (offset % width)] = place;
  }
}
