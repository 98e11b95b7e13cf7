import type { Evaluation } from './context.js';
import { dayOf } from './day.js';
import { type FormulaKind, fieldKind } from './kind.js';
import { cellOf, rowsOfKeys } from './sheet/sheet-value.js';
import { isWrittenNumber, type LookupNode, type Node } from './tree.js';
import { conversion, convertToCompare } from './unit/convert.js';
import type { Evaluated, SheetValue } from './value/evaluated.js';
import { givenNumber } from './value/number.js';

/** The sheet that a checked formula names. */
export function sheetIn(name: string, { environment }: Evaluation): SheetValue {
  const sheet = environment.known.get(name);
  if (sheet?.kind !== 'sheet') throw new Error(`the sheet ${name} was not checked`);
  return sheet;
}

/** A key as a sheet keeps it: in the unit of its field, unless it is written out; a date may be written as text. */
function keyOf(node: Node, value: Evaluated, kind: FormulaKind): string | number | null {
  if (value.kind === 'number') {
    if (value.value === null || kind.kind !== 'number' || isWrittenNumber(node)) return value.value;
    return convertToCompare(value.value, conversion(value.unit, kind.unit)!);
  }
  if (value.kind === 'date') return value.day;
  if (value.kind !== 'text') throw new Error(`${value.kind} is no key`);
  return kind.kind === 'date' && value.text !== null ? dayOf(value.text) : value.text;
}

function nothing(sheet: SheetValue, column: string, why: string): Evaluated {
  const kind = sheet.columns.get(column);
  if (kind?.kind === 'text') return { kind: 'text', text: null, accounts: [], why };
  if (kind?.kind === 'date') return { kind: 'date', day: null, accounts: [], why };
  return givenNumber(null, kind?.kind === 'number' ? kind.unit : [], why);
}

/** What a sheet's column holds in the row of some keys, with all that its interval stands on; missing where it has no such row. */
export function lookUp(node: LookupNode, evaluation: Evaluation): Evaluated {
  const sheet = sheetIn(node.sheet.name, evaluation);
  const keys = node.keys.map((key, at) =>
    keyOf(key, evaluation.single(key), fieldKind(sheet.table.fields.get(sheet.keys[at]!)!)),
  );
  const [row, ...more] = rowsOfKeys(sheet, keys);
  if (row !== undefined && more.length === 0) return cellOf(sheet, node.column.name, row);
  const wanted = keys.map((key) => (key === null ? 'a missing key' : String(key))).join(', ');
  const number = row === undefined ? 'no row' : `${more.length + 1} rows`;
  return nothing(sheet, node.column.name, `the sheet ${sheet.name} has ${number} for ${wanted}`);
}
