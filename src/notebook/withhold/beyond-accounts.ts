import type { Formula, Node, RowsNode } from '../../formula/tree.js';
import { parts } from '../../formula/tree.js';
import type { NotebookWorkings } from '../workings.js';
import { type Beyond, columnKey, joinBeyond, nothingBeyond } from './beyond.js';
import { tellsApart } from './craft-records.js';

/** Functions that give what one record of many has. */
const ofOne = new Set(['lowest', 'highest', 'earliest', 'latest']);
/** Functions that tell where a row stands among the others. */
const ofPlace = new Set(['rank_from_highest', 'rank_from_lowest', 'running_sum']);

/** What each name of a notebook, and each column of its sheets, tells beyond the records that its value is counted from. */
export interface BeyondAccounts {
  readonly ofName: (name: string) => Beyond;
  readonly ofColumn: (sheet: string, column: string) => Beyond;
}

/** Reads it from the formulas; `unknown` are the sheets whose findings do not say which records they count. */
export function beyondAccounts(
  { names, sheets, document }: NotebookWorkings,
  unknown: ReadonlySet<string>,
): BeyondAccounts {
  const known = new Map<string, Beyond>();
  const orders = new Map(
    document.parts.flatMap((part) => (part.kind === 'sheet' ? [[part.sheet.name.text, part.sheet.order]] : [])),
  );
  const remembered = (key: string, formula: Formula | undefined, sheet: string | null): Beyond => {
    const before = known.get(key);
    if (before !== undefined) return before;
    known.set(key, nothingBeyond);
    const found = formula === undefined ? nothingBeyond : visit(formula.body, sheet);
    known.set(key, found);
    return found;
  };
  const ofName = (name: string): Beyond => remembered(name, names.get(name)?.formula, null);
  const ofColumn = (sheet: string, column: string): Beyond =>
    joinBeyond([
      remembered(columnKey(sheet, column), sheets.get(sheet)?.formulas.get(column), sheet),
      ...(sheets.get(sheet)?.ofRows ?? []).map(ofName),
      ...(unknown.has(sheet) ? [{ ...nothingBeyond, isUnknown: true }] : []),
    ]);

  function visit(node: Node, own: string | null): Beyond {
    const inside = parts(node).map((part) => visit(part, own));
    switch (node.kind) {
      case 'name':
        return joinBeyond([
          ofName(node.name),
          ...(own !== null && sheets.get(own)?.formulas.has(node.name) === true ? [ofColumn(own, node.name)] : []),
        ]);
      case 'lookup':
        return joinBeyond([...inside, ofColumn(node.sheet.name, node.column.name)]);
      case 'with':
        return joinBeyond([...inside, ofName(node.figure.name)]);
      case 'rows':
        return joinBeyond([...inside, askedOf(node)]);
      case 'call':
        return joinBeyond([...inside, calledOf(node.name, node.arguments)]);
      default:
        return joinBeyond(inside);
    }
  }

  function askedOf({ base, field, where }: RowsNode): Beyond {
    const sheet = base?.name ?? '';
    if (!sheets.has(sheet)) return nothingBeyond;
    const columns = (node: Node | null): ReadonlySet<string> =>
      new Set(node === null ? [] : namesOf(node).map((name) => columnKey(sheet, name)));
    const asked = [...columns(field), ...columns(where)].map((key) => {
      const [, column] = JSON.parse(key) as [string, string];
      return ofColumn(sheet, column);
    });
    return joinBeyond([...asked, { ...nothingBeyond, deciding: columns(where), added: columns(field) }]);
  }

  function calledOf(name: string, given: readonly Node[]): Beyond {
    const [first, second] = given;
    const sheet = first?.kind === 'rows' && sheets.has(first.base?.name ?? '') ? first.base!.name : null;
    if (sheet !== null) {
      if (!ofPlace.has(name) && !ofOne.has(name)) return nothingBeyond;
      const order = orders.get(sheet)?.column.text;
      const deciding = [
        ...(first!.kind === 'rows' && first.field !== null ? namesOf(first.field) : []),
        ...(order === undefined ? [] : [order]),
      ];
      return { ...nothingBeyond, deciding: new Set(deciding.map((column) => columnKey(sheet, column))) };
    }
    if (ofOne.has(name)) return { ...nothingBeyond, isOfOne: true };
    if (name === 'listed' && first !== undefined && namesOf(first).some(tellsApart))
      return { ...nothingBeyond, isOfOne: true };
    if (name === 'median') return { ...nothingBeyond, tail: 0.5 };
    if (name !== 'quantile') return nothingBeyond;
    const share = second?.kind === 'number' ? second.value : 0;
    return { ...nothingBeyond, tail: Math.max(0, Math.min(share, 1 - share)) };
  }

  return { ofName, ofColumn };
}

function namesOf(node: Node): readonly string[] {
  return node.kind === 'name' ? [node.name] : parts(node).flatMap(namesOf);
}
