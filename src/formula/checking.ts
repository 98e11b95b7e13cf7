import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import type { BookTable } from '../record/book.js';
import { type FormulaKind, unknownKind } from './kind.js';
import { type Mistake, problemAt, type Span } from './place.js';
import type { Scope } from './scope.js';
import type { Formula, Node } from './tree.js';

/** A formula being checked: where it stands, what its names mean, and the problems found so far. */
export interface Checking {
  readonly formula: Formula;
  readonly scope: Scope;
  /** The table whose fields are meant inside `where` and `of`; null outside. */
  readonly row: BookTable | null;
  readonly problems: Problem[];
  /** The kind of a part of the formula, in the same place or, with a table, inside its rows. */
  readonly kindOf: (node: Node, checking: Checking) => FormulaKind;
}

/** Notes a mistake; what carries it is of unknown kind, so that nothing built on it says more. */
export function refuse(checking: Checking, span: Span, mistake: Mistake): FormulaKind {
  checking.problems.push(problemAt(checking.formula, span, mistake));
  return unknownKind;
}

/** A remedy that suggests the nearest known name, or else gives some advice. */
export function suggest(name: string, known: Iterable<string>, otherwise: string): string {
  const nearest = nearestName(name, known);
  return nearest === null ? otherwise : `Did you mean \`${nearest}\`?`;
}
