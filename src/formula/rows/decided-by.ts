import type { BookTable } from '../../record/book.js';
import type { Evaluation } from '../context.js';
import { functionNamed } from '../functions/functions.js';
import { type Node, parts } from '../tree.js';
import type { Evaluated, NumberValue } from '../value/evaluated.js';

function couldBeOtherwise({ draws, standing }: NumberValue): boolean {
  return draws !== null || standing === 'estimate';
}

/** Whether other records could have made a value otherwise. */
function isFromRecords(value: Evaluated | undefined): boolean {
  if (value?.kind === 'number') return couldBeOtherwise(value);
  if (value?.kind === 'text' || value?.kind === 'date') return value.basis?.some(couldBeOtherwise) === true;
  return false;
}

/**
 * What a condition on the rows of a table compares them with that comes from records itself, each part as it is written: a
 * figure, a cell of a sheet, a function of other rows. Its uncertainty does not reach what is counted.
 */
export function decidedBy(condition: Node, table: BookTable, evaluation: Evaluation): readonly string[] {
  const { environment, formula, single } = evaluation;
  const written = (node: Node): string => formula.text.slice(node.offset, node.end);
  const found = new Set<string>();
  const visit = (node: Node): void => {
    if (node.kind === 'name') {
      if (!table.fields.has(node.name) && isFromRecords(environment.known.get(node.name))) found.add(node.name);
      return;
    }
    const isWhole =
      node.kind === 'lookup' ||
      node.kind === 'with' ||
      (node.kind === 'call' && functionNamed(node.name)?.works === 'on the whole');
    if (!isWhole) for (const part of parts(node)) visit(part);
    else if (isFromRecords(single(node))) found.add(written(node));
  };
  visit(condition);
  return [...found];
}
