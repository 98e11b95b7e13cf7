import type { Node } from 'yaml';
import type { FileRule } from './crosswalk.js';
import { readFileRule, rowSettings } from './read-file-rule.js';
import type { RuleChoices } from './rules/rule-choices.js';
import type { Alias } from './waters/alias.js';
import type { YamlDocument } from './yaml-document.js';

/** Settings of a file that also hold for the further records of its rows, unless they set them otherwise. */
const inherited = ['files', 'dialect', 'time_zone', 'time_zone_of', 'decimal', 'thousands', 'missing', 'repeated'];

/** A rule for further records of the same rows, of which those without one are left out. */
function besides(rule: FileRule, first: FileRule, where: string): FileRule {
  const isBlank = { kind: 'column', column: where, is: new Set(['', ...rule.missing]), isNot: false } as const;
  const because = `no ${rule.table.name.replaceAll('_', ' ')} in the row`;
  return {
    ...rule,
    optional: new Set([...first.optional, ...rule.optional]),
    leaveOut: [...first.leaveOut, ...rule.leaveOut, { because, condition: isBlank }],
  };
}

/**
 * How the files of one kind are read: a rule for their rows, and one for each further record that a row gives, named under
 * `also`. Such a record is there where the column `where` is filled in; other rows are left out by that rule.
 */
export function readFileRules(
  yaml: YamlDocument,
  node: Node,
  choices: RuleChoices,
  aliases: readonly Alias[],
): readonly FileRule[] {
  const known = ['files', 'dialect', ...rowSettings, 'also'];
  const settings = yaml.settings(node, 'a kind of file', known, ['files', 'table', 'columns']);
  const first = readFileRule(yaml, { settings, choices, aliases });
  if (first === null) return [];
  const alsoNode = settings.get('also');
  const further = (alsoNode === undefined ? [] : yaml.items(alsoNode, 'also')).flatMap((item) => {
    const own = yaml.settings(item, 'a further record', [...rowSettings, 'where'], ['table', 'where', 'columns']);
    const setsZone = own.has('time_zone') || own.has('time_zone_of');
    const taken = inherited.filter((name) => !own.has(name) && !(setsZone && name.startsWith('time_zone')));
    const all = new Map([
      ...taken.flatMap((name) => (settings.has(name) ? [[name, settings.get(name)!] as const] : [])),
      ...own,
    ]);
    const rule = readFileRule(yaml, { settings: all, choices, aliases });
    const whereNode = own.get('where');
    const where = whereNode === undefined ? null : (yaml.text(whereNode, 'a column')?.trim() ?? null);
    return rule === null || where === null ? [] : [{ rule, where, whereNode: whereNode! }];
  });
  // A column that only a further record reads is still one of the file's.
  const read = [first, ...further.map(({ rule }) => rule)];
  const columns = [...new Set(read.flatMap((rule) => rule.columns))];
  const privateColumns = new Set(read.flatMap((rule) => [...rule.privateColumns]));
  if (further.length === 0) return [first];
  const besidesFirst = further.map(({ rule, where, whereNode }) => {
    if (!columns.includes(where)) {
      yaml.complainOfName('unknown-column', whereNode, where, 'a column of the file', columns);
    }
    return besides(rule, first, where);
  });
  return [first, ...besidesFirst].map((rule) => ({ ...rule, columns, privateColumns }));
}
