import type { Node } from 'yaml';
import { side } from '../record/codes.js';
import { components } from '../record/components.js';
import { fieldOf, type TableDefinition } from '../record/field.js';
import { tables } from '../record/tables.js';
import type { Fold, FoldColumn } from './crosswalk.js';
import { readTarget } from './read-code-map.js';
import type { YamlDocument } from './yaml-document.js';

const sides = side.codes.map(({ code }) => code);
const componentNames = components.map(({ component }) => component);

function foldableTables(parent: TableDefinition): readonly TableDefinition[] {
  return tables.filter((table) => {
    const [owner, component, sideField] = table.key.map((name) => fieldOf(table, name));
    return (
      owner?.type === 'reference' &&
      owner.to === parent.name &&
      component?.name === 'component' &&
      sideField?.name === 'side'
    );
  });
}

function readColumns(yaml: YamlDocument, node: Node): readonly FoldColumn[] {
  const columns: FoldColumn[] = [];
  const taken = new Map<string, string>();
  for (const { key, keyNode, value } of yaml.entries(node, 'the folded columns')) {
    const settings = yaml.settings(value, `the column ${key}`, ['component', 'side'], ['component']);
    const componentNode = settings.get('component');
    const component = componentNode === undefined ? null : yaml.text(componentNode, 'a component');
    const sideNode = settings.get('side');
    const sideName = sideNode === undefined ? 'none' : yaml.word(sideNode, 'a side', sides);
    if (component === null || sideName === null) continue;
    if (!componentNames.includes(component)) {
      yaml.complainOfName('unknown-code', componentNode!, component, 'a part of the catalogue', componentNames);
      continue;
    }
    const part = `${component}, ${sideName}`;
    const earlier = taken.get(part);
    if (earlier !== undefined) {
      yaml.complain('twice', keyNode, key, `one column for ${part}`, `The column ${earlier} records it already.`);
      continue;
    }
    taken.set(part, key);
    columns.push({ column: key, component, side: sideName });
  }
  return columns;
}

function readValues(yaml: YamlDocument, node: Node, table: TableDefinition): Fold['values'] {
  const said = table.fields.filter(({ name, type }) => type === 'code' && name !== 'component' && name !== 'side');
  const names = said.map(({ name }) => name);
  const values = new Map<string, ReadonlyMap<string, string>>();
  for (const { key, value } of yaml.entries(node, 'the values of the folded cells')) {
    const fields = new Map<string, string>();
    for (const [name, target] of yaml.settings(value, `the value "${key}"`, names, ['state'])) {
      const code = readTarget(yaml, target, fieldOf(table, name)!);
      if (code !== null) fields.set(name, code);
    }
    values.set(key.trim(), fields);
  }
  return values;
}

/** How a wide checklist is folded into records of another table; null where its table cannot be one. */
export function readFold(yaml: YamlDocument, node: Node, parent: TableDefinition): Fold | null {
  const settings = yaml.settings(node, 'fold', ['table', 'columns', 'values'], ['table', 'columns', 'values']);
  const foldable = foldableTables(parent);
  const tableNode = settings.get('table');
  const name = tableNode === undefined ? null : yaml.text(tableNode, 'a table');
  const table = foldable.find((entry) => entry.name === name) ?? null;
  if (tableNode !== undefined && name !== null && table === null) {
    const known = foldable.map((entry) => entry.name);
    yaml.complainOfName('unknown-table', tableNode, name, `a checklist that belongs to ${parent.name}`, known);
  }
  const columnsNode = settings.get('columns');
  const columns = columnsNode === undefined ? [] : readColumns(yaml, columnsNode);
  const valuesNode = settings.get('values');
  if (table === null || valuesNode === undefined) return null;
  return { table, columns, values: readValues(yaml, valuesNode, table) };
}
