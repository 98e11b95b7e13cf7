import { checkComparison } from './check-comparison.js';
import { type Checking, refuse, suggest } from './checking.js';
import { describeKind, type FormulaKind, fieldKind, type SheetKind, unknownKind } from './kind.js';
import type { LookupNode, NameNode } from './tree.js';

/** The sheet of that name, or null where the name is another thing's. */
export function sheetNamed(name: string, { scope }: Checking): SheetKind | null {
  const kind = scope.known.get(name);
  return kind?.kind === 'sheet' ? kind : null;
}

/** What a sheet's column gives; a name that is none of its columns is told. */
export function kindOfColumn(column: NameNode, sheet: SheetKind, checking: Checking): FormulaKind {
  const kind = sheet.columns.get(column.name);
  if (kind !== undefined) return kind;
  const names = [...sheet.columns.keys()];
  const remedy = suggest(column.name, names, `Its columns are ${names.join(', ') || 'not known'}.`);
  return refuse(checking, column, { code: 'unknown-column', wanted: `a column of the sheet ${sheet.name}`, remedy });
}

function sheetAsked({ sheet }: LookupNode, checking: Checking): SheetKind | null {
  const found = sheetNamed(sheet.name, checking);
  if (found !== null) return found;
  const { known } = checking.scope;
  const kind = known.get(sheet.name);
  if (kind?.kind === 'unknown') return null;
  const sheets = [...known].filter(([, other]) => other.kind === 'sheet').map(([name]) => name);
  const wanted = kind === undefined ? 'a sheet before `for`' : `a sheet before \`for\`, not ${describeKind(kind)}`;
  const advice = sheets.length === 0 ? 'Declare the sheet with a sentence.' : `The sheets are ${sheets.join(', ')}.`;
  refuse(checking, sheet, { code: 'unknown-sheet', wanted, remedy: suggest(sheet.name, sheets, advice) });
  return null;
}

/** The kind of what a sheet's column holds in the row of some keys. */
export function kindOfLookup(node: LookupNode, checking: Checking): FormulaKind {
  const sheet = sheetAsked(node, checking);
  const outside = { ...checking, row: null };
  const keys = node.keys.map((key) => ({ node: key, kind: checking.kindOf(key, outside) }));
  if (sheet === null) return unknownKind;
  if (keys.length !== sheet.keys.length) {
    const wanted = `a value for each key of ${sheet.name}: ${sheet.keys.join(', ')}`;
    const remedy = `Write ${node.column.name} of ${sheet.name} for ${sheet.keys.length === 1 ? sheet.keys[0] : `(${sheet.keys.join(', ')})`}.`;
    return refuse(checking, node, { code: 'wrong-arguments', wanted, remedy });
  }
  sheet.keys.forEach((name, at) => {
    const field = sheet.table.fields.get(name)!;
    const side = { node: node.sheet, kind: fieldKind(field) };
    checkComparison(side, keys[at]!, keys[at]!.node, false, outside);
  });
  return kindOfColumn(node.column, sheet, checking);
}
