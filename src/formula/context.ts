import type { Environment } from './environment.js';
import type { Formula, Node } from './tree.js';
import type { Evaluated } from './value/evaluated.js';

/** A formula being evaluated. `single` gives the value of a part that is the same for every row. */
export interface Evaluation {
  readonly environment: Environment;
  readonly formula: Formula;
  readonly single: (node: Node) => Evaluated;
  /** The value of another formula, in another environment. */
  readonly evaluate: (formula: Formula, environment: Environment) => Evaluated;
}
