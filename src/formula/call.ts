import type { Evaluation } from './context.js';
import type { ArgumentDeclaration, EachFunction, GivenArgument, PlainFunction } from './functions/declaration.js';
import { functionNamed } from './functions/functions.js';
import { giveColumn } from './give-column.js';
import type { FormulaKind } from './kind.js';
import { conditionsOf, rowValuesOf } from './rows/evaluate-rows.js';
import { readAsRows } from './rows/rows-reading.js';
import { selectedRows } from './rows/select-rows.js';
import { spreadConstant } from './rows/spread-constant.js';
import { type CallNode, isWrittenNumber, type Node } from './tree.js';
import { applyEach } from './value/apply-each.js';
import type { Evaluated, NumberValue } from './value/evaluated.js';
import { numberFrom } from './value/number.js';
import { dressed, plainOf, plainResult } from './value/plain-value.js';
import { drawnAgain, notDrawnAgain, takenAsKnown } from './value/taken-as-known.js';

function namesRows({ environment }: Evaluation): (name: string) => boolean {
  const { known, book } = environment;
  return (name) => {
    const value = known.get(name);
    return value === undefined ? book.tables.has(name) : value.kind === 'rows';
  };
}

function give({ takes }: ArgumentDeclaration, node: Node | undefined, evaluation: Evaluation): GivenArgument {
  const { formula, environment, single } = evaluation;
  if (takes === 'number' || takes === 'truth') {
    const value = single(node!);
    if (value.kind !== 'number') throw new Error(`a number was not checked: ${value.kind}`);
    return { given: 'value', value, written: isWrittenNumber(node!) };
  }
  const reading = readAsRows(node, takes !== 'rows', namesRows(evaluation));
  if (reading === null) throw new Error('rows were not checked');
  const sheet = reading.base === null ? undefined : environment.known.get(reading.base.name);
  if (sheet?.kind === 'sheet') return { given: 'column', column: giveColumn(reading, sheet, evaluation) };
  const selected = selectedRows(reading, formula, environment, conditionsOf(evaluation));
  if (takes === 'rows') return { given: 'rows', selected };
  const { rows } = selected.account;
  const valuesOf = (some: Uint32Array) =>
    spreadConstant(rowValuesOf(reading.field!, { table: selected.table, rows: some }, evaluation), some.length);
  const { drawn } = selected.account;
  const drawnValues = drawn === undefined ? {} : { drawnValues: valuesOf(drawn.rows) };
  return { given: 'field', selected, values: valuesOf(rows), ...drawnValues };
}

/** An argument whose rows are taken as they are known, whatever decided them. */
function asKnown(given: GivenArgument): GivenArgument {
  if (given.given !== 'rows' && given.given !== 'field') return given;
  const { drawn: _, ...account } = given.selected.account;
  return { ...given, selected: { ...given.selected, account } };
}

/**
 * A value that says what decided its rows, where that comes from records. Where it was not drawn again with them the value
 * takes it as known, and so that its interval leaves nothing out, it has none.
 */
function withDeciding(value: Evaluated, given: readonly GivenArgument[], { environment }: Evaluation): Evaluated {
  if (value.kind !== 'number') return value;
  const said = value.accounts.flatMap(({ decidedBy = [], drawn }) =>
    decidedBy.map((name) => (drawn === undefined ? takenAsKnown(name) : drawnAgain(name))),
  );
  if (said.length === 0) return value;
  const known = given.flatMap((one) => {
    if (one.given !== 'rows' && one.given !== 'field') return [];
    const { decidedBy = [], drawn } = one.selected.account;
    return drawn === undefined ? decidedBy : [];
  });
  const cautions = [...new Set([...value.cautions, ...said])];
  if (known.length === 0) return numberFrom({ ...value, cautions }, environment);
  return numberFrom({ ...value, cautions, ...withoutOwn(value, notDrawnAgain(known)) }, environment);
}

/** What bars a value from an interval. */
function withoutOwn({ barred }: NumberValue, why: string): Pick<NumberValue, 'barred' | 'ownInterval'> {
  return { barred: barred ?? why, ownInterval: null };
}

/** A value from a sheet's rows, which has no interval where other records could have made them others. */
function withDecidingRows(value: Evaluated, { column }: ColumnArgument, { environment }: Evaluation): Evaluated {
  const { decidedBy, sheet } = column;
  if (value.kind !== 'number' || decidedBy.length === 0) return value;
  const why = notDrawnAgain(decidedBy, `rows of ${sheet.name} are taken`);
  return numberFrom({ ...value, ...withoutOwn(value, why) }, environment);
}

type ColumnArgument = Extract<GivenArgument, { readonly given: 'column' }>;

/** What a function of plain values gives; null for one that works on numbers with all that they stand on. */
function plainKind(declaration: EachFunction | PlainFunction, values: readonly Evaluated[]): FormulaKind | null {
  if (declaration.works === 'on values') return declaration.result;
  const chosen = values.at(-1)!.kind;
  if (chosen === 'date') return { kind: 'date' };
  return chosen === 'text' ? { kind: 'text', codes: null, text: null } : null;
}

/** What a function gives for its arguments. */
export function evaluateCall(node: CallNode, evaluation: Evaluation): Evaluated {
  const declaration = functionNamed(node.name);
  if (declaration === null) throw new Error(`there is no function ${node.name}`);
  if (declaration.works === 'on the whole') {
    const taken = declaration.arguments.filter(({ takes }) => takes !== 'sheet key');
    const given = taken.map((argument, place) => give(argument, node.arguments[place], evaluation));
    const [first] = given;
    if (first?.given === 'column') {
      const within = node.arguments.slice(taken.length).flatMap((key) => (key.kind === 'name' ? [key.name] : []));
      const value = declaration.overSheet!({ ...first.column, within }, evaluation.environment, given);
      return withDecidingRows(value, first, evaluation);
    }
    const decided = declaration.drawsRowsAgain === true ? given : given.map(asKnown);
    return withDeciding(declaration.evaluate(decided, evaluation), decided, evaluation);
  }
  const values = node.arguments.map((argument) => evaluation.single(argument));
  const kind = plainKind(declaration, values);
  if (kind !== null) {
    const last = declaration.arguments.at(-1)!;
    const plain = values.map((value, place) => plainOf(value, (declaration.arguments[place] ?? last).takes));
    return dressed(plainResult(declaration, plain), kind, values, evaluation.environment);
  }
  if (declaration.works === 'on values') throw new Error(`${node.name} gives nothing`);
  const given = values.map((value, place) => {
    const argument = node.arguments[place]!;
    if (value.kind !== 'number' && value.kind !== 'truth') throw new Error(`${value.kind} was not checked`);
    return { value, written: isWrittenNumber(argument) };
  });
  return applyEach(declaration, given, evaluation.environment);
}
