import type { Node } from 'yaml';
import { fieldOf, type TableDefinition } from '../record/field.js';
import { tables } from '../record/tables.js';
import type { Fold, FoldColumn } from './crosswalk.js';
import { readTarget } from './read-code-map.js';
import { type ReadSaid, readFoldLists } from './read-fold-lists.js';
import { readFoldNames } from './read-fold-names.js';
import { readPart } from './read-part.js';
import type { YamlDocument } from './yaml-document.js';

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
    const read = readPart(yaml, value, `the column ${key}`);
    if (read === null) continue;
    const part = `${read.component}, ${read.side}`;
    const earlier = taken.get(part);
    if (earlier !== undefined) {
      yaml.complain('twice', keyNode, key, `one column for ${part}`, `The column ${earlier} records it already.`);
      continue;
    }
    taken.set(part, key);
    columns.push({ ...read, column: key.trim(), isOptional: false, list: null });
  }
  return columns;
}

/** Reads what a mark says of a part, as fields of the folded record. */
function saidReader(yaml: YamlDocument, table: TableDefinition): ReadSaid {
  const said = table.fields.filter(({ name, type }) => type === 'code' && name !== 'component' && name !== 'side');
  const names = said.map(({ name }) => name);
  return (node, what) => {
    const fields = new Map<string, string>();
    for (const [name, target] of yaml.settings(node, what, names, ['state'])) {
      const code = readTarget(yaml, target, fieldOf(table, name)!);
      if (code !== null) fields.set(name, code);
    }
    return fields;
  };
}

function complainOfParts(yaml: YamlDocument, node: Node, columns: readonly FoldColumn[]): void {
  const taken = new Map<string, FoldColumn>();
  for (const column of columns) {
    const part = `${column.component}, ${column.side}`;
    const earlier = taken.get(part);
    // Of columns that a file may lack, only one may be there; that is seen at its header.
    if (earlier !== undefined && earlier.column !== column.column && !earlier.isOptional && !column.isOptional) {
      yaml.complain('twice', node, column.column, `one column for ${part}`, `${earlier.column} records it already.`);
    }
    taken.set(part, column);
  }
}

const known = ['table', 'columns', 'names', 'components', 'sides', 'lists', 'values'];

/** A key that no cell can hold. */
const absentKey = '\0absent';

/**
 * How a wide checklist is folded into records of another table; null where its table cannot be one.
 * @param asAbsent whether parts that the craft cannot carry are read as absent where they are called clean
 */
export function readFold(yaml: YamlDocument, node: Node, parent: TableDefinition, asAbsent: boolean): Fold | null {
  const settings = yaml.settings(node, 'fold', known, ['table']);
  const foldable = foldableTables(parent);
  const tableNode = settings.get('table');
  const name = tableNode === undefined ? null : yaml.text(tableNode, 'a table');
  const table = foldable.find((entry) => entry.name === name) ?? null;
  if (tableNode !== undefined && name !== null && table === null) {
    const known = foldable.map((entry) => entry.name);
    yaml.complainOfName('unknown-table', tableNode, name, `a checklist that belongs to ${parent.name}`, known);
  }
  const columnsNode = settings.get('columns');
  const listsNode = settings.get('lists');
  const valuesNode = settings.get('values');
  const hasMarks = columnsNode !== undefined || settings.has('names');
  if (!hasMarks && listsNode === undefined) {
    yaml.complain('missing-setting', node, '', 'columns, names or lists of fold', 'Say which columns hold the parts.');
  }
  if (hasMarks && valuesNode === undefined) {
    yaml.complain('missing-setting', node, '', 'the setting values of fold', 'Say what each mark means.');
  }
  if (table === null) return null;
  const readSaid = saidReader(yaml, table);
  const values = new Map<string, ReadonlyMap<string, string>>();
  for (const { key, value } of valuesNode === undefined
    ? []
    : yaml.entries(valuesNode, 'the values of the folded cells')) {
    values.set(key.trim(), readSaid(value, `the value "${key}"`));
  }
  const lists = listsNode === undefined ? null : readFoldLists(yaml, listsNode, readSaid);
  const columns = [
    ...(columnsNode === undefined ? [] : readColumns(yaml, columnsNode)),
    ...readFoldNames(yaml, settings),
    ...(lists?.columns ?? []),
  ];
  complainOfParts(yaml, node, columns);
  const absent = asAbsent ? absentKey : null;
  if (asAbsent) values.set(absentKey, new Map([['state', 'absent']]));
  return { table, columns, values: new Map([...values, ...(lists?.values ?? [])]), absent };
}
