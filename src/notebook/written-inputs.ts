import type { InputRow, NotebookDocument } from './document.js';

/** The rows of all tables of inputs in a notebook. */
export function inputRows(document: NotebookDocument): readonly InputRow[] {
  return document.parts.flatMap((part) => (part.kind === 'inputs' ? part.rows : []));
}

/** The inputs of a notebook as they are written in it, by name. */
export function writtenInputs(document: NotebookDocument): ReadonlyMap<string, string> {
  return new Map(inputRows(document).map(({ name, value }) => [name.text, value.text]));
}
