import { checkComparison } from './check-comparison.js';
import { type Checking, refuse, suggest } from './checking.js';
import { type Definitions, reachedBy } from './definitions.js';
import { describeKind, type FormulaKind, unknownKind } from './kind.js';
import { isWrittenNumber, type NameNode, type Node, parts, type WithNode } from './tree.js';
import { conversion } from './unit/convert.js';
import { unitsDiffer } from './unit/sum.js';

function holdsWith(node: Node): boolean {
  return node.kind === 'with' || parts(node).some(holdsWith);
}

function checkFigure(figure: NameNode, kind: FormulaKind, definitions: Definitions, checking: Checking): boolean {
  if (kind.kind === 'unknown') return false;
  const made = definitions.made.get(figure.name);
  if (made?.formula != null && kind.kind !== 'rows' && kind.kind !== 'sheet') return true;
  const figures = [...definitions.made].filter(([, { formula }]) => formula !== null).map(([name]) => name);
  const remedy =
    made === undefined
      ? suggest(figure.name, figures, 'Make the formula a figure and name that.')
      : 'Count or sum its rows in a figure, and name that.';
  refuse(checking, figure, { code: 'not-a-figure', wanted: 'a figure of this notebook before `with`', remedy });
  return false;
}

function checkInput(input: NameNode, definitions: Definitions, checking: Checking): FormulaKind {
  const kind = checking.scope.known.get(input.name);
  if (kind !== undefined && definitions.inputs.has(input.name)) return kind;
  const remedy = suggest(input.name, definitions.inputs, 'Declare it in a table of inputs.');
  return refuse(checking, input, { code: 'not-an-input', wanted: 'an input after `with`', remedy });
}

function checkValue(value: Node, input: NameNode, wanted: FormulaKind, checking: Checking): void {
  const kind = checking.kindOf(value, { ...checking, row: null });
  if (kind.kind === 'unknown' || wanted.kind === 'unknown') return;
  if (kind.kind === 'number' && wanted.kind === 'number') {
    if (isWrittenNumber(value) || conversion(kind.unit, wanted.unit) !== null) return;
    refuse(checking, value, unitsDiffer(wanted.unit, kind.unit));
    return;
  }
  if (wanted.kind === 'date')
    checkComparison({ node: input, kind: wanted }, { node: value, kind }, value, false, checking);
  else if (kind.kind !== wanted.kind) {
    const remedy = 'Give the input the same kind of value as it has.';
    refuse(checking, value, {
      code: 'wrong-kind',
      wanted: `${describeKind(wanted)}, not ${describeKind(kind)}`,
      remedy,
    });
  }
}

/** What keeps a figure from being asked for with other inputs, although each part of the asking is sound. */
function checkReach(node: WithNode, definitions: Definitions, checking: Checking): boolean {
  const { name } = node.figure;
  for (const { input } of node.changes) {
    if (reachedBy(new Set([input.name]), name, definitions).includes(name)) continue;
    const remedy = `Leave it out: ${name} is the same whatever ${input.name} is.`;
    refuse(checking, input, { code: 'no-effect', wanted: `an input that ${name} stands on`, remedy });
    return false;
  }
  const reached = reachedBy(new Set(node.changes.map(({ input }) => input.name)), name, definitions);
  for (const other of reached) {
    const formula = definitions.made.get(other)?.formula ?? null;
    if (formula !== null && !holdsWith(formula.body)) continue;
    const wanted =
      formula === null
        ? `a figure that stands on no sheet: ${other} is filled once`
        : `a figure that is made without \`with\`, unlike ${other}`;
    refuse(checking, node.figure, { code: 'not-again', wanted, remedy: 'Write its formula without it.' });
    return false;
  }
  return true;
}

/** The kind of a figure with other inputs: its own. */
export function kindOfWith(node: WithNode, checking: Checking): FormulaKind {
  const definitions = checking.scope.definitions ?? { inputs: new Set<string>(), made: new Map(), values: new Map() };
  const kind = checking.kindOf(node.figure, { ...checking, row: null });
  const sound = checkFigure(node.figure, kind, definitions, checking);
  const inputs = node.changes.map(({ input, value }) => {
    const wanted = checkInput(input, definitions, checking);
    checkValue(value, input, wanted, checking);
    return wanted;
  });
  if (!sound || inputs.some((input) => input.kind === 'unknown')) return unknownKind;
  return checkReach(node, definitions, checking) ? kind : unknownKind;
}
