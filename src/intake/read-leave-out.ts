import type { Node } from 'yaml';
import type { LeaveOutCondition, LeaveOutRule } from './leave-out.js';
import { textPattern } from './text-pattern.js';
import type { YamlDocument } from './yaml-document.js';

const kinds = ['last_rows', 'first_cell', 'column'] as const;
const known = [...kinds, 'is', 'is_not', 'because'];

function readCondition(
  yaml: YamlDocument,
  item: Node,
  settings: ReadonlyMap<string, Node>,
  columns: readonly string[],
): LeaveOutCondition | null {
  const given = kinds.filter((kind) => settings.has(kind));
  const [kind] = given;
  if (kind === undefined || given.length > 1) {
    const remedy = 'Write last_rows, first_cell, or column with is or is_not; one rule for each.';
    yaml.complain('wrong-shape', item, given.join(' and '), `one of ${kinds.join(', ')}`, remedy);
    return null;
  }
  const text = yaml.text(settings.get(kind)!, kind);
  if (text === null) return null;
  if (kind === 'last_rows') {
    if (/^[1-9]\d?$/u.test(text)) return { kind: 'last rows', count: Number(text) };
    yaml.complain('wrong-value', settings.get(kind)!, text, 'a number of rows up to 99', 'Count the rows at the foot.');
    return null;
  }
  if (kind === 'first_cell') return { kind: 'first cell', like: textPattern(text) };
  const column = text.trim();
  if (!columns.includes(column)) {
    yaml.complainOfName('unknown-column', settings.get(kind)!, column, 'a column of the file', columns);
    return null;
  }
  const isNot = settings.has('is_not');
  const textsNode = settings.get(isNot ? 'is_not' : 'is');
  if (textsNode === undefined) {
    yaml.complain('missing-setting', item, '', 'is or is_not beside column', 'Add is: [TEST].');
    return null;
  }
  const is = new Set(yaml.texts(textsNode, 'texts of cells').map((entry) => entry.trim()));
  return { kind: 'column', column, is, isNot };
}

/** The rules by which rows of a file are left out, each with its reason. */
export function readLeaveOut(yaml: YamlDocument, node: Node, columns: readonly string[]): readonly LeaveOutRule[] {
  return yaml.items(node, 'leave_out').flatMap((item) => {
    const settings = yaml.settings(item, 'a rule that leaves rows out', known, ['because']);
    const becauseNode = settings.get('because');
    const because = becauseNode === undefined ? null : yaml.text(becauseNode, 'a reason');
    const condition = readCondition(yaml, item, settings, columns);
    return condition === null || because === null ? [] : [{ because, condition }];
  });
}
