import type { NotebookDocument, Part } from './document.js';

/** What a document declares under some names, with all its inputs and without prose and charts; places stay what they were. */
export function subsetDocument(document: NotebookDocument, names: ReadonlySet<string>): NotebookDocument {
  const parts = document.parts.flatMap((part): Part[] => {
    switch (part.kind) {
      case 'inputs':
        return [part];
      case 'selections':
        return [{ ...part, rows: part.rows.filter(({ name }) => names.has(name.text)) }];
      case 'figures':
        return [{ ...part, rows: part.rows.filter(({ name }) => names.has(name.text)) }];
      case 'sheet':
        return names.has(part.sheet.name.text) ? [part] : [];
      default:
        return [];
    }
  });
  return { ...document, parts, proseValues: [] };
}
