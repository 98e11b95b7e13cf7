import type { Node } from 'yaml';
import type { Field, TableDefinition } from '../record/field.js';
import type { FileRule } from './crosswalk.js';
import { readField } from './read-field-rule.js';
import type { YamlDocument } from './yaml-document.js';

/** The fields of a table that a node names: one, or a list. */
export function fieldsNamed(yaml: YamlDocument, node: Node | undefined, table: TableDefinition): readonly Field[] {
  if (node === undefined) return [];
  const items = yaml.isList(node) ? yaml.items(node, 'fields') : [node];
  return items.flatMap((item) => readField(yaml, item, table) ?? []);
}

/** The fields by which double entries are known, as a list, or with the word that says which is kept. */
export function readDuplicates(
  yaml: YamlDocument,
  node: Node | undefined,
  table: TableDefinition,
): Pick<FileRule, 'duplicates' | 'keep'> {
  if (node === undefined || !yaml.isMap(node)) {
    return { duplicates: fieldsNamed(yaml, node, table).map(({ name }) => name), keep: 'first' };
  }
  const settings = yaml.settings(node, 'duplicates', ['alike', 'keep'], ['alike', 'keep']);
  const keeps = ['first', 'last', 'neither', 'both'] as const;
  const keepNode = settings.get('keep');
  const word = keepNode === undefined ? null : yaml.word(keepNode, 'which entry is kept', keeps);
  const duplicates = fieldsNamed(yaml, settings.get('alike'), table).map(({ name }) => name);
  return { duplicates, keep: keeps.find((keep) => keep === word) ?? 'first' };
}
