import type { EvaluatedNotebook, EvaluatedSheet } from '../notebook/evaluated.js';

/** What a sheet says of its method that an earlier sheet of the page says in the same words. */
export interface SaidEarlier {
  readonly sheet: EvaluatedSheet;
  readonly notes: ReadonlySet<string>;
}

/** So many notes must be the same before a reader is led to the earlier sheet: fewer are shorter than the way there. */
const enough = 3;

/** The first sheet above this one that says the same of its method, with what both say; null where none does. */
export function saidEarlier({ name, notes }: EvaluatedSheet, notebook: EvaluatedNotebook): SaidEarlier | null {
  for (const block of notebook.blocks) {
    if (block.kind !== 'sheet') continue;
    if (block.name === name) return null;
    const earlier = notebook.sheets.get(block.name);
    const same = notes.filter((note) => earlier?.notes.includes(note));
    if (earlier !== undefined && same.length >= enough) return { sheet: earlier, notes: new Set(same) };
  }
  return null;
}
