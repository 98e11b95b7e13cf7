import type { NotebookDocument } from './document.js';

/** The document with other values for some of its inputs, each as a person would write it; places stay what they were. */
export function withChangedInputs(document: NotebookDocument, values: ReadonlyMap<string, string>): NotebookDocument {
  if (values.size === 0) return document;
  const parts = document.parts.map((part) =>
    part.kind !== 'inputs'
      ? part
      : {
          ...part,
          rows: part.rows.map((row) => {
            const text = values.get(row.name.text);
            return text === undefined ? row : { ...row, value: { ...row.value, text } };
          }),
        },
  );
  return { ...document, parts };
}
