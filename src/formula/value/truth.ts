import type { Environment } from '../environment.js';
import { truthOf, unknown } from '../missing.js';
import { answersOf } from '../rows/condition.js';
import type { RowValues } from '../rows/row-values.js';
import { type Node, parts } from '../tree.js';
import { mergeAccounts } from './account.js';
import { accountOf, type Evaluated, type TruthValue } from './evaluated.js';
import { basisOf } from './plain-value.js';

const conditions: ReadonlySet<Node['kind']> = new Set(['comparison', 'missing', 'among', 'between', 'not', 'logic']);

/** Whether a part of a formula asks something, rather than being a value that is asked about. */
export function isCondition(node: Node): boolean {
  return conditions.has(node.kind);
}

/** The values that a condition asks about. */
function askedAbout(node: Node): readonly Node[] {
  return isCondition(node) ? parts(node).flatMap(askedAbout) : [node];
}

function drawnValues(value: Evaluated): RowValues {
  if (value.kind === 'number' && value.draws !== null) {
    return { kind: 'number', values: value.draws(), unit: value.unit };
  }
  if (value.kind === 'truth' && value.draws !== null) {
    const answers = Uint8Array.from(value.draws(), (draw) => (Number.isNaN(draw) ? unknown : draw));
    return { kind: 'truth', answers };
  }
  return { kind: 'constant', value };
}

/** Whether a condition outside `where` is true, and in which resamples it would be. */
export function truthFrom(node: Node, single: (node: Node) => Evaluated, environment: Environment): TruthValue {
  const asked = askedAbout(node).map(single);
  const basis = basisOf(asked);
  const changes = asked.some((value) => (value.kind === 'number' || value.kind === 'truth') && value.draws !== null);
  const [answer] = answersOf(node, (part) => ({ kind: 'constant', value: single(part) }), 1);
  const draws = () =>
    Float64Array.from(
      answersOf(node, (part) => drawnValues(single(part)), environment.resamples.count),
      (one) => (one === unknown ? Number.NaN : one),
    );
  const accounts = mergeAccounts(asked.map(accountOf));
  return { kind: 'truth', truth: truthOf(answer!), draws: changes ? draws : null, basis, accounts };
}
