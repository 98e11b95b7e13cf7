import { type ReadNotebook, readDocument } from '../read-document.js';
import type { DocumentEdit, Edited } from './document-edit.js';
import { editCell } from './edit-cell.js';
import { addPart, editLines, movePart, takePart } from './edit-parts.js';
import { addRow, moveRow, takeRow } from './edit-rows.js';

/** A notebook's text after one edit, changed in as few lines as it can be; or why the edit can not be made. */
export function editDocument(text: string, edit: DocumentEdit, read: ReadNotebook = readDocument('', text)): Edited {
  switch (edit.change) {
    case 'cell':
      return editCell(text, edit.line, edit.column, edit.was, edit.now);
    case 'lines':
      return editLines(text, edit.first, edit.last, edit.was, edit.now);
    case 'add row':
      return addRow(text, read.written, edit.below, namesIn(read));
    case 'take row':
      return takeRow(text, read.written, edit.line);
    case 'move row':
      return moveRow(text, read.written, edit.line, edit.down);
    case 'add part':
      return addPart(text, read, edit.below, edit.part, namesIn(read));
    case 'take part':
      return takePart(text, read, edit.first, edit.last);
    case 'move part':
      return movePart(text, read, edit.first, edit.down);
  }
}

/** Every name that stands in the first cell of a table, or before the colon of a sheet. */
function namesIn({ document, written }: ReadNotebook): ReadonlySet<string> {
  const inTables = written.flatMap(({ table }) => (table ?? []).map((row) => row[0]?.text ?? ''));
  const sheets = document.parts.flatMap((part) => (part.kind === 'sheet' ? [part.sheet.name.text] : []));
  return new Set([...inTables, ...sheets]);
}
