import { yes } from '../missing.js';
import type { ComparisonNode, Node } from '../tree.js';
import { conversion, convert } from '../unit/convert.js';
import type { DrawnRows } from '../value/account.js';
import { answersOf, type ValuesOf } from './condition.js';

/** How the values of a part of a condition are found for some rows. */
export type ValuesFor = (rows: Uint32Array) => ValuesOf;

/** The same comparison said from its other side. */
const turned: Readonly<Partial<Record<ComparisonNode['operator'], DrawnRows['operator']>>> = {
  '<': '>',
  '<=': '>=',
  '>': '<',
  '>=': '<=',
};

/** The parts of a condition that must all hold. */
function conjuncts(condition: Node): readonly Node[] {
  if (condition.kind !== 'logic' || condition.operator !== 'and') return [condition];
  return [...conjuncts(condition.left), ...conjuncts(condition.right)];
}

/**
 * How a condition decides some rows in every resample, where all that comes from records itself in it is one number that can
 * be resampled and that a number of each row must be above or below; null where it is anything else. `isDeciding` tells
 * whether a part of the condition holds something that comes from records itself.
 */
export function drawnBy(
  condition: Node,
  rows: Uint32Array,
  valuesFor: ValuesFor,
  isDeciding: (part: Node) => boolean,
): DrawnRows | null {
  const parts = conjuncts(condition);
  const [deciding, ...more] = parts.filter(isDeciding);
  if (deciding?.kind !== 'comparison' || more.length > 0) return null;
  const others = parts.filter((part) => part !== deciding);
  const answers = others.map((part) => answersOf(part, valuesFor(rows), rows.length));
  const kept = rows.filter((_, at) => answers.every((own) => own[at] === yes));
  return heldAgainst(deciding, kept, valuesFor(kept));
}

function heldAgainst(
  { operator, left, right }: ComparisonNode,
  rows: Uint32Array,
  valuesOf: ValuesOf,
): DrawnRows | null {
  const [one, other] = [valuesOf(left), valuesOf(right)];
  const isFirst = one.kind === 'number';
  const [own, limit] = isFirst ? [one, other] : [other, one];
  const flipped = turned[operator];
  if (own.kind !== 'number' || limit.kind !== 'constant' || limit.value.kind !== 'number') return null;
  const { draws, barred, fewest, clusters, unit } = limit.value;
  const step = conversion(unit, own.unit);
  if (flipped === undefined || draws === null || barred !== null || step === null) return null;
  const asIs = turned[flipped]!;
  return {
    rows,
    values: own.values,
    operator: isFirst ? asIs : flipped,
    thresholds: () => draws().map((draw) => convert(draw, step)),
    fewest,
    clusters,
  };
}
