import { type Checking, refuse, suggest } from './checking.js';
import { dayOf } from './day.js';
import { describeKind, type FormulaKind, truthKind } from './kind.js';
import type { Span } from './place.js';
import { isWrittenNumber, type Node } from './tree.js';
import { conversion } from './unit/convert.js';
import { unitsDiffer } from './unit/sum.js';

/** One side of a comparison. */
export interface Side {
  readonly node: Node;
  readonly kind: FormulaKind;
}

/** Whether a kind can be compared at all; tells why not. */
function comparable({ node, kind }: Side, checking: Checking): boolean {
  if (kind.kind === 'wait') {
    refuse(checking, node, {
      code: 'wrong-kind',
      wanted: 'a value that is known row by row; some waits are still open',
      remedy: 'Ask for share_within(wait of rows, limit) or median(wait of rows).',
    });
    return false;
  }
  if (kind.kind === 'rows' || kind.kind === 'truth' || kind.kind === 'list' || kind.kind === 'sheet') {
    const wanted = `a value to compare, not ${describeKind(kind)}`;
    const remedy = {
      rows: 'Compare count(…) of the rows.',
      sheet: 'Compare count(…) of its rows, or look one of its columns up.',
      list: 'Ask whether something is `in` the list.',
      truth: 'A condition stands alone: write it or `not` before it.',
    }[kind.kind];
    refuse(checking, node, { code: 'wrong-kind', wanted, remedy });
    return false;
  }
  return true;
}

/** Whether a text that is known can be a value of a coded field. */
function checkCode(codes: readonly string[], side: Side, checking: Checking): void {
  const { kind, node } = side;
  if (kind.kind !== 'text' || kind.text === null || kind.codes !== null || codes.includes(kind.text)) return;
  const some = codes.slice(0, 8).join(', ');
  refuse(checking, node, {
    code: 'unknown-code',
    wanted: `one of the values that the field may have${codes.length > 8 ? ', such as' : ':'} ${some}`,
    remedy: suggest(
      kind.text,
      codes,
      node.kind === 'name'
        ? `Give \`${node.name}\` one of these values: it is “${kind.text}”.`
        : 'Write one of the field’s values, in double quotes.',
    ),
  });
}

function checkDate({ kind, node }: Side, checking: Checking): void {
  if (kind.kind === 'text' && kind.text !== null && dayOf(kind.text) !== null) return;
  if (kind.kind === 'text' && kind.text === null) {
    refuse(checking, node, { code: 'wrong-kind', wanted: 'a date', remedy: 'Compare dates with dates.' });
    return;
  }
  const remedy = 'Write year, month and day: "2025-05-01".';
  refuse(checking, node, { code: 'not-a-date', wanted: 'a date that the calendar has', remedy });
}

/** Checks that two sides can be compared, by order or only for being the same; the operator is where units differ. */
export function checkComparison(
  left: Side,
  right: Side,
  operatorAt: Span,
  ordered: boolean,
  checking: Checking,
): FormulaKind {
  const sound = [left, right].map((side) => comparable(side, checking));
  if (sound.includes(false) || left.kind.kind === 'unknown' || right.kind.kind === 'unknown') return truthKind;
  const [one, other] = [left.kind, right.kind];
  if (one.kind === 'number' && other.kind === 'number') {
    const written = isWrittenNumber(left.node) || isWrittenNumber(right.node);
    if (!written && conversion(one.unit, other.unit) === null) {
      refuse(checking, operatorAt, unitsDiffer(one.unit, other.unit));
    }
    return truthKind;
  }
  if (one.kind === 'date' && other.kind === 'text') checkDate(right, checking);
  else if (one.kind === 'text' && other.kind === 'date') checkDate(left, checking);
  else if (one.kind === 'text' && other.kind === 'text') {
    if (ordered) {
      const remedy = 'Texts can only be compared with `is`, `is not` and `in`.';
      refuse(checking, operatorAt, { code: 'wrong-kind', wanted: 'numbers or dates, which have an order', remedy });
    }
    if (one.codes !== null) checkCode(one.codes, right, checking);
    if (other.codes !== null) checkCode(other.codes, left, checking);
  } else if (one.kind !== other.kind) {
    refuse(checking, right.node, {
      code: 'wrong-kind',
      wanted: `${describeKind(one)}, because that is what it is compared with`,
      remedy: one.kind === 'text' ? 'Put texts in double quotes.' : 'Compare like with like.',
    });
  }
  return truthKind;
}
