import type { Node } from 'yaml';
import type { FoldColumn } from './crosswalk.js';
import { readComponent, sides } from './read-part.js';
import type { YamlDocument } from './yaml-document.js';

function readNames(yaml: YamlDocument, node: Node | undefined, read: (value: Node) => string | null) {
  const names = new Map<string, string>();
  if (node === undefined) return names;
  for (const { key, value } of yaml.entries(node, 'names')) {
    const code = read(value);
    if (code !== null) names.set(key.trim(), code);
  }
  return names;
}

/**
 * The columns that patterns such as `{component}_{side}` name, with every name of a component and a side put in; which of
 * them a file has is seen at its header. A pattern without `{side}` names parts that have none.
 */
export function readFoldNames(yaml: YamlDocument, settings: ReadonlyMap<string, Node>): readonly FoldColumn[] {
  const node = settings.get('names');
  if (node === undefined) return [];
  if (!settings.has('components')) {
    yaml.complain('missing-setting', node, '', 'components beside names', 'Add components: { NAME: part }.');
  }
  const components = readNames(yaml, settings.get('components'), (value) => readComponent(yaml, value));
  const sideNames = readNames(yaml, settings.get('sides'), (value) => yaml.word(value, 'a side', sides));
  const columns = new Map<string, FoldColumn>();
  for (const pattern of yaml.texts(node, 'a pattern of names')) {
    const hasSide = pattern.includes('{side}');
    if (!pattern.includes('{component}') || (hasSide && sideNames.size === 0)) {
      const wanted = hasSide ? 'sides beside names' : 'a pattern that holds {component}';
      yaml.complain(
        'bad-pattern',
        node,
        pattern,
        wanted,
        'Write it as in {component}_{side}, with sides: { p: port }.',
      );
      continue;
    }
    for (const [name, component] of components) {
      for (const [sideName, side] of hasSide ? sideNames : [['', 'none'] as const]) {
        const column = pattern.replace('{component}', name).replace('{side}', sideName).trim();
        const earlier = columns.get(column);
        if (earlier === undefined) columns.set(column, { column, component, side, isOptional: true, list: null });
        else if (earlier.component !== component || earlier.side !== side) {
          const remedy = `It is ${earlier.component}, ${earlier.side} already.`;
          yaml.complain('twice', node, column, 'one part for each column', remedy);
        }
      }
    }
  }
  return [...columns.values()];
}
