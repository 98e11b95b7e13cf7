import { kindOfColumnGiven } from './check-column.js';
import { sheetNamed } from './check-lookup.js';
import { checkRows, namesRows } from './check-rows.js';
import { type Checking, refuse, suggest } from './checking.js';
import { dayOf } from './day.js';
import type {
  ArgumentDeclaration,
  CheckedArgument,
  EachFunction,
  FunctionDeclaration,
  PlainFunction,
  Takes,
  WholeFunction,
} from './functions/declaration.js';
import { functionNamed, functionNames } from './functions/functions.js';
import { describeKind, type FormulaKind, unknownKind } from './kind.js';
import type { Mistake } from './place.js';
import { readAsRows } from './rows/rows-reading.js';
import { type CallNode, isWrittenNumber, type Node } from './tree.js';
import { conversion } from './unit/convert.js';
import { recordedUnit } from './unit/read-unit.js';
import { unitsDiffer } from './unit/sum.js';
import { plain } from './unit/unit.js';

const wantedFor: Readonly<Record<Takes, string>> = {
  rows: 'rows of a table',
  'number field': 'a number field of some rows',
  'number or wait field': 'a number or wait field of some rows',
  'wait field': 'a wait of some rows',
  'any field': 'a field of some rows',
  number: 'a number',
  truth: 'a condition',
  'date field': 'a date field of some rows',
  'sheet column': 'a column of this sheet',
  'sheet key': 'a key of this sheet',
  text: 'a text',
  date: 'a date',
  value: 'a number, a text or a date',
};

function fits(takes: Takes, { kind }: FormulaKind): boolean {
  if (kind === 'unknown' || takes === 'any field' || takes === 'rows') return true;
  if (takes === 'number' || takes === 'number field') return kind === 'number';
  if (takes === 'truth' || takes === 'text' || takes === 'date') return kind === takes;
  if (takes === 'value') return kind === 'number' || kind === 'text' || kind === 'date';
  if (takes === 'date field') return kind === 'date';
  if (takes === 'sheet column') return kind === 'number';
  return kind === 'wait' || (takes === 'number or wait field' && kind === 'number');
}

function writtenNumber(node: Node): number | null {
  if (node.kind === 'number') return node.value;
  return node.kind === 'negative' && node.of.kind === 'number' ? -node.of.value : null;
}

const unknownArgument: CheckedArgument = { kind: unknownKind, written: null, counted: plain };

function mismatch(declaration: FunctionDeclaration, takes: Takes, node: Node, kind: FormulaKind, checking: Checking) {
  refuse(checking, node, {
    code: 'wrong-kind',
    wanted: `${wantedFor[takes]}, not ${describeKind(kind)}`,
    remedy: `An example: ${declaration.example}.`,
  });
  return unknownArgument;
}

function checkArgument(
  { takes }: ArgumentDeclaration,
  node: Node | undefined,
  call: CallNode,
  declaration: FunctionDeclaration,
  checking: Checking,
): CheckedArgument {
  if (takes === 'number' || takes === 'truth') {
    const kind = checking.kindOf(node!, checking);
    if (!fits(takes, kind)) return mismatch(declaration, takes, node!, kind, checking);
    return { kind, written: writtenNumber(node!), counted: plain };
  }
  const reading = readAsRows(node, takes !== 'rows', namesRows(checking));
  const span = node ?? call;
  const sheet = reading?.base == null ? null : sheetNamed(reading.base.name, checking);
  if (reading !== null && sheet !== null) {
    const kind = kindOfColumnGiven(declaration, takes, reading, span, sheet, checking);
    if (!fits(takes, kind)) return mismatch(declaration, takes, reading.field ?? span, kind, checking);
    return { kind, written: null, counted: recordedUnit(sheet.table.counted) };
  }
  if (takes === 'sheet column') {
    const wanted = 'a column of this sheet, and the sheet’s name after `of`';
    refuse(checking, span, { code: 'wrong-kind', wanted, remedy: `An example: ${declaration.example}.` });
    return unknownArgument;
  }
  if (reading === null || (takes === 'rows' && reading.field !== null)) {
    const found = reading === null ? 'a value' : 'a field of rows';
    const remedy = `An example: ${declaration.example}.`;
    refuse(checking, span, { code: 'wrong-kind', wanted: `${wantedFor[takes]}, not ${found}`, remedy });
    return unknownArgument;
  }
  const table = checkRows(reading, span, checking);
  if (table === null) return unknownArgument;
  const counted = recordedUnit(table.counted);
  if (takes === 'rows') return { kind: { kind: 'rows', table: table.name }, written: null, counted };
  if (reading.field === null) {
    const remedy = `Name the field first: ${declaration.example}.`;
    refuse(checking, span, { code: 'wrong-kind', wanted: `${wantedFor[takes]}, not the rows themselves`, remedy });
    return unknownArgument;
  }
  const kind = checking.kindOf(reading.field, { ...checking, row: table });
  if (!fits(takes, kind)) return mismatch(declaration, takes, reading.field, kind, checking);
  return { kind, written: null, counted };
}

/** A key of the sheet that the formula stands in, named as such. */
function checkKey(node: Node, checking: Checking): CheckedArgument {
  const keys = checking.scope.sheet?.keys ?? [];
  if (node.kind === 'name' && keys.includes(node.name)) {
    return { kind: { kind: 'text', codes: null, text: null }, written: null, counted: plain };
  }
  const named = node.kind === 'name' ? node.name : '';
  const remedy = suggest(named, keys, keys.length === 0 ? 'Take it out.' : `Its keys are ${keys.join(', ')}.`);
  refuse(checking, node, { code: 'unknown-column', wanted: 'a key of the sheet that the formula stands in', remedy });
  return unknownArgument;
}

function kindOfWhole(declaration: WholeFunction, node: CallNode, checking: Checking): FormulaKind {
  // Its arguments speak of whole figures and rows, even where the call itself stands inside a condition.
  const outside = { ...checking, row: null };
  const taken = declaration.arguments.filter(({ takes }) => takes !== 'sheet key');
  const checked = taken.map((argument, place) =>
    checkArgument(argument, node.arguments[place], node, declaration, outside),
  );
  for (const key of node.arguments.slice(taken.length)) checked.push(checkKey(key, outside));
  if (checked.some(({ kind }) => kind.kind === 'unknown')) return unknownKind;
  const given = declaration.kindOf(checked);
  return 'argument' in given ? refuse(checking, node.arguments[given.argument] ?? node, given) : given;
}

function kindsGiven(declaration: EachFunction | PlainFunction, node: CallNode, checking: Checking): FormulaKind[] {
  const last = declaration.arguments.at(-1)!;
  return node.arguments.map((argument, place) => {
    const { takes } = declaration.arguments[place] ?? last;
    const kind = checking.kindOf(argument, checking);
    if (takes === 'date' && kind.kind === 'text' && kind.text !== null)
      return writtenDate(kind.text, argument, checking);
    return fits(takes, kind) ? kind : mismatch(declaration, takes, argument, kind, checking).kind;
  });
}

function writtenDate(text: string, argument: Node, checking: Checking): FormulaKind {
  if (dayOf(text) !== null) return { kind: 'date' };
  const remedy = 'Write year, month and day: "2025-05-01".';
  return refuse(checking, argument, { code: 'not-a-date', wanted: 'a date that the calendar has', remedy });
}

function unlike(first: FormulaKind, other: FormulaKind): Mistake {
  const wanted = `${describeKind(first)} like the first value, not ${describeKind(other)}`;
  return { code: 'wrong-kind', wanted, remedy: 'Give values of one kind.' };
}

/** The kind of a text or date chosen among several. */
function kindOfChoice(
  first: FormulaKind,
  kinds: readonly FormulaKind[],
  node: CallNode,
  checking: Checking,
): FormulaKind {
  let sound = true;
  kinds.forEach((kind, place) => {
    if (kind.kind === 'truth' || kind.kind === first.kind) return;
    refuse(checking, node.arguments[place]!, unlike(first, kind));
    sound = false;
  });
  if (!sound) return unknownKind;
  return first.kind === 'text' ? { kind: 'text', codes: null, text: null } : first;
}

function kindOfEach(declaration: EachFunction, node: CallNode, checking: Checking): FormulaKind {
  const kinds = kindsGiven(declaration, node, checking);
  if (kinds.some(({ kind }) => kind === 'unknown')) return unknownKind;
  const first = kinds.find(({ kind }) => kind !== 'truth')!;
  if (first.kind !== 'number') return kindOfChoice(first, kinds, node, checking);
  kinds.forEach((kind, place) => {
    const argument = node.arguments[place]!;
    if (kind.kind === 'truth' || isWrittenNumber(argument)) return;
    if (kind.kind !== 'number') refuse(checking, argument, unlike(first, kind));
    else if (conversion(kind.unit, first.unit) === null) refuse(checking, argument, unitsDiffer(first.unit, kind.unit));
  });
  return first;
}

/** Whether as many arguments are given as the function takes; rows of a sheet's group may be left out. */
function rightNumber(declaration: FunctionDeclaration, node: CallNode, checking: Checking): boolean {
  const wanted = declaration.arguments.length;
  const given = node.arguments.length;
  const groupMeant = declaration.arguments[0]!.takes === 'rows' && given === wanted - 1;
  const more = declaration.works !== 'on the whole' && declaration.more && given > wanted;
  const keys = declaration.arguments.at(-1)!.takes === 'sheet key' && given >= wanted - 1;
  if (given === wanted || groupMeant || more || keys) return true;
  const names = declaration.arguments.map(({ name }) => name).join(', ');
  refuse(checking, node, {
    code: 'wrong-arguments',
    wanted: `${wanted === 1 ? 'one argument' : `${wanted} arguments`} (${names}), not ${given}`,
    remedy: `An example: ${declaration.example}.`,
  });
  return false;
}

/** The kind of what a function gives, after its arguments have been checked. */
export function kindOfCall(node: CallNode, checking: Checking): FormulaKind {
  const declaration = functionNamed(node.name);
  if (declaration === null) {
    const names = functionNames();
    const remedy = suggest(node.name, names, `The functions are ${names.join(', ')}.`);
    return refuse(checking, node.named, { code: 'unknown-function', wanted: 'a function', remedy });
  }
  if (!rightNumber(declaration, node, checking)) return unknownKind;
  if (declaration.works === 'on values') {
    const unsound = kindsGiven(declaration, node, checking).some(({ kind }) => kind === 'unknown');
    return unsound ? unknownKind : declaration.result;
  }
  return declaration.works === 'on each'
    ? kindOfEach(declaration, node, checking)
    : kindOfWhole(declaration, node, checking);
}
