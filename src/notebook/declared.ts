import { functionNamed } from '../formula/functions/functions.js';
import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import type { Cell, FormulaRow, InputRow, NotebookDocument, SelectionRow, SheetDeclaration } from './document.js';

/** Something in a notebook that has a name, as written. */
export type Declared =
  | { readonly kind: 'input'; readonly name: Cell; readonly input: InputRow }
  | { readonly kind: 'selection'; readonly name: Cell; readonly selection: SelectionRow }
  | { readonly kind: 'figure'; readonly name: Cell; readonly figure: FormulaRow }
  | { readonly kind: 'sheet'; readonly name: Cell; readonly sheet: SheetDeclaration };

/** Everything a document declares, in its order; a name that is taken is a problem, and its first bearer keeps it. */
export function declaredIn(document: NotebookDocument, book: Book, problems: Problem[]): ReadonlyMap<string, Declared> {
  const declared = new Map<string, Declared>();
  for (const item of document.parts.flatMap(itemsOf)) {
    const { text, line, column } = item.name;
    const taken = declared.get(text);
    const holder =
      taken !== undefined
        ? `a name of its own: "${text}" is the ${taken.kind} of line ${taken.name.line}`
        : book.tables.has(text)
          ? `a name of its own: "${text}" is a table of records`
          : functionNamed(text) !== null
            ? `a name of its own: "${text}" is a function`
            : null;
    if (holder === null) declared.set(text, item);
    else {
      const place = inDocument(document.file, line, column);
      problems.push({
        code: 'name-taken',
        severity: 'sets aside',
        place,
        seen: text,
        wanted: holder,
        remedy: 'Choose another name.',
      });
    }
  }
  return declared;
}

function itemsOf(part: NotebookDocument['parts'][number]): readonly Declared[] {
  switch (part.kind) {
    case 'inputs':
      return part.rows.map((input) => ({ kind: 'input', name: input.name, input }));
    case 'selections':
      return part.rows.map((selection) => ({ kind: 'selection', name: selection.name, selection }));
    case 'figures':
      return part.rows.map((figure) => ({ kind: 'figure', name: figure.name, figure }));
    case 'sheet':
      return [{ kind: 'sheet', name: part.sheet.name, sheet: part.sheet }];
    default:
      return [];
  }
}
