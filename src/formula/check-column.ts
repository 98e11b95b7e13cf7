import { kindOfColumn } from './check-lookup.js';
import { checkRows } from './check-rows.js';
import { type Checking, refuse } from './checking.js';
import type { FunctionDeclaration, Takes } from './functions/declaration.js';
import { type FormulaKind, type SheetKind, unknownKind } from './kind.js';
import type { Span } from './place.js';
import type { RowsReading } from './rows/rows-reading.js';
import { type Node, parts } from './tree.js';

function names(node: Node | null): readonly string[] {
  if (node === null) return [];
  return node.kind === 'name' ? [node.name] : parts(node).flatMap(names);
}

/** Whether a condition asks about a column that has a problem of its own; then nothing more is said. */
function standsOnFailure(where: Node | null, { columns }: SheetKind): boolean {
  return names(where).some((name) => columns.get(name)?.kind === 'unknown');
}

function checkOwn(reading: RowsReading, span: Span, sheet: SheetKind, checking: Checking): boolean {
  const own = checking.scope.sheet?.name === sheet.name;
  if (own && reading.where === null && !reading.here) return true;
  const wanted = own
    ? 'the whole sheet, without `where` or `here`'
    : 'a column of the sheet that the formula stands in';
  const remedy = own
    ? 'Take the condition out.'
    : `A place among rows belongs to a row: make it a column of ${sheet.name}, and look that up.`;
  refuse(checking, span, { code: 'not-this-sheet', wanted, remedy });
  return false;
}

/**
 * The kind of a sheet's column that a function works on, or of the sheet's rows where it takes rows; unknown where something
 * is wrong, which is told.
 */
export function kindOfColumnGiven(
  declaration: FunctionDeclaration,
  takes: Takes,
  reading: RowsReading,
  span: Span,
  sheet: SheetKind,
  checking: Checking,
): FormulaKind {
  const { example } = declaration;
  if (declaration.works !== 'on the whole' || declaration.overSheet === undefined) {
    const wanted = `records: ${declaration.name} does not work on the rows of a sheet`;
    return refuse(checking, span, { code: 'wrong-kind', wanted, remedy: `An example: ${example}.` });
  }
  if (takes === 'sheet column' && !checkOwn(reading, span, sheet, checking)) return unknownKind;
  if (standsOnFailure(reading.where, sheet)) return unknownKind;
  if (checkRows(reading, span, checking) === null) return unknownKind;
  const { field } = reading;
  if (takes === 'rows') return { kind: 'rows', table: sheet.name };
  if (field?.kind !== 'name') {
    const wanted = `the name of a column of ${sheet.name} before \`of\``;
    return refuse(checking, field ?? span, {
      code: 'wrong-kind',
      wanted,
      remedy: 'Make the calculation a column of its own.',
    });
  }
  return kindOfColumn(field, sheet, checking);
}
