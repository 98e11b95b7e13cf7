import { type Checking, refuse, suggest } from './checking.js';
import { functionNames } from './functions/functions.js';
import { type FormulaKind, fieldKind } from './kind.js';
import { meaningOf, namesOfScope } from './scope.js';
import type { NameNode } from './tree.js';

/** The kind of a bare name; inside `where` and `of` the row's fields come first. */
export function kindOfName(node: NameNode, checking: Checking): FormulaKind {
  const { scope, row } = checking;
  const { name } = node;
  const field = row?.fields.get(name);
  if (field !== undefined) return fieldKind(field);
  const meaning = meaningOf(name, scope);
  if (meaning?.means === 'known') return meaning.kind;
  if (meaning?.means === 'key') return fieldKind(scope.book.tables.get(meaning.table)!.fields.get(name)!);
  if (meaning?.means === 'table') return { kind: 'rows', table: meaning.table };
  if (row !== null) {
    const known = [...row.fields.keys(), ...namesOfScope(scope)];
    const advice = 'Put a text in double quotes, or name one of the fields.';
    const wanted = `a field of ${row.name}, an input or a figure`;
    return refuse(checking, node, { code: 'unknown-field', wanted, remedy: suggest(name, known, advice) });
  }
  const inSheet = scope.sheet === null ? undefined : scope.book.tables.get(scope.sheet.table)?.fields.get(name);
  if (inSheet !== undefined) {
    const remedy = `A field has a value a row: write what is wanted of the group, such as sum(${name}).`;
    return refuse(checking, node, { code: 'field-alone', wanted: 'one value for the group', remedy });
  }
  const known = [...namesOfScope(scope), ...functionNames()];
  const remedy = suggest(name, known, 'Declare it as an input or a figure, or put a text in double quotes.');
  const wanted =
    scope.sheet === null ? 'an input, figure, selection or table' : 'a column, key, input, figure or table';
  return refuse(checking, node, { code: 'unknown-name', wanted, remedy });
}
