import type { Evaluation } from './context.js';
import { dayOf } from './day.js';
import { reachedBy } from './definitions.js';
import { isWrittenNumber, type Node, type WithNode } from './tree.js';
import type { CountedRecords } from './value/account.js';
import { scaledTo } from './value/apply-each.js';
import type { Evaluated } from './value/evaluated.js';
import { numberFrom } from './value/number.js';

/** A value as an input takes it: in the input's unit, and a date where it is one. */
function asInput(value: Evaluated, node: Node, input: Evaluated, { environment }: Evaluation): Evaluated {
  if (value.kind === 'number' && input.kind === 'number') {
    if (isWrittenNumber(node)) return { ...value, unit: input.unit };
    return scaledTo(value, input.unit, environment);
  }
  if (value.kind === 'text' && input.kind === 'date') {
    return { kind: 'date', day: value.text === null ? null : dayOf(value.text), accounts: value.accounts };
  }
  return value;
}

/** The same value, each of its counts saying with which inputs it was made. */
function saying(value: Evaluated, inputs: string, { environment }: Evaluation): Evaluated {
  const said = (accounts: readonly CountedRecords[]) =>
    accounts.map((account) => ({ ...account, description: `${account.description}, ${inputs}` }));
  if (value.kind === 'number') return numberFrom({ ...value, accounts: said(value.accounts) }, environment);
  if (value.kind === 'rows' || value.kind === 'problem') return value;
  return { ...value, accounts: said(value.accounts) };
}

/** A figure as it would be if some inputs had other values: all that they reach is computed again, over the same resamples. */
export function withInputs(node: WithNode, evaluation: Evaluation): Evaluated {
  const { environment, single, formula } = evaluation;
  const { definitions } = environment;
  if (definitions === undefined) throw new Error('a figure with other inputs was not checked');
  const known = new Map(definitions.values);
  for (const { input, value } of node.changes) {
    known.set(input.name, asInput(single(value), value, known.get(input.name)!, evaluation));
  }
  const changed = { ...environment, known, group: null };
  for (const name of reachedBy(new Set(node.changes.map(({ input }) => input.name)), node.figure.name, definitions)) {
    known.set(name, evaluation.evaluate(definitions.made.get(name)!.formula!, changed));
  }
  const first = node.changes[0]!.input.offset;
  return saying(known.get(node.figure.name)!, `with ${formula.text.slice(first, node.end)}`, evaluation);
}
