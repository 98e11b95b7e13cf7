import type { Node } from 'yaml';
import type { Field, TableDefinition } from '../record/field.js';
import type { FieldRule } from './crosswalk.js';
import { readField, readFieldRule } from './read-field-rule.js';
import type { WaterRule } from './waters/alias.js';
import { readWaterRule, waterSettings } from './waters/read-water-rule.js';
import type { YamlDocument } from './yaml-document.js';

/** The settings that say how a field is read from its column. */
export const fieldSettings = ['codes', 'pattern', 'unit', 'private', 'region_from'].concat([
  'spelt',
  'case',
  'within',
  'several',
  'prefix',
  'missing',
]);

/** What is gathered about the columns of one kind of file. */
export interface Gathered {
  readonly columns: string[];
  readonly privateColumns: Set<string>;
  readonly fields: FieldRule[];
  readonly waters: WaterRule[];
}

function take(yaml: YamlDocument, node: Node, rule: FieldRule, gathered: Gathered): void {
  const earlier = gathered.fields.find(({ field }) => field.name === rule.field.name);
  if (earlier === undefined) gathered.fields.push(rule);
  else {
    const remedy = `${rule.field.name} is already read from ${earlier.columns.join(' and ')}.`;
    yaml.complain('twice', node, rule.columns.join(' and '), 'one source for each field', remedy);
  }
}

function takeWater(
  yaml: YamlDocument,
  node: Node,
  field: Field,
  column: string,
  settings: ReadonlyMap<string, Node>,
  gathered: Gathered,
): void {
  const read = readWaterRule(yaml, node, field, column, settings);
  if (read === null) return;
  gathered.waters.push(read.rule);
  for (const rule of read.held) take(yaml, node, rule, gathered);
}

/** Reads the setting `columns`: what each column of the file holds. */
export function readColumns(yaml: YamlDocument, node: Node, table: TableDefinition, gathered: Gathered): void {
  for (const { key, keyNode, value } of yaml.entries(node, 'the columns')) {
    const column = key.trim();
    gathered.columns.push(column);
    const settings = yaml.settings(
      value,
      `the column ${column}`,
      ['field', 'ignore', ...fieldSettings, ...waterSettings],
      [],
    );
    const fieldNode = settings.get('field');
    const privateNode = settings.get('private');
    // A registration number names a craft, and with it an owner.
    if (privateNode !== undefined || settings.has('region_from')) gathered.privateColumns.add(column);
    if (fieldNode !== undefined) {
      const field = readField(yaml, fieldNode, table);
      if (field !== null && settings.has('match')) takeWater(yaml, keyNode, field, column, settings, gathered);
      else if (field !== null) take(yaml, keyNode, readFieldRule(yaml, keyNode, field, [column], settings), gathered);
      if (settings.has('ignore')) {
        yaml.complain('useless-setting', settings.get('ignore')!, 'ignore', 'either a field or ignore', 'Remove one.');
      }
    } else if (privateNode !== undefined) yaml.word(privateNode, 'what becomes of a column without a field', ['drop']);
    else if (!settings.has('ignore') && yaml.isMap(value)) {
      yaml.complain('missing-setting', keyNode, column, 'a field, private: drop or ignore', 'Say what it holds.');
    }
  }
}

/** Reads the setting `combine`: fields that several columns give together, or one column beside its own. */
export function readCombined(yaml: YamlDocument, node: Node, table: TableDefinition, gathered: Gathered): void {
  for (const { keyNode, value } of yaml.entries(node, 'combine')) {
    const field = readField(yaml, keyNode, table);
    const known = ['columns', 'next_day_if_before', 'partly_blank', 'minus', ...fieldSettings];
    const settings = yaml.settings(value, 'a combined field', known, ['columns']);
    const columnsNode = settings.get('columns');
    if (field === null || columnsNode === undefined) continue;
    const columns = yaml.texts(columnsNode, 'column names').map((name) => name.trim());
    if (columns.length === 0) {
      yaml.complain('wrong-value', columnsNode, '', `the columns that give ${field.name}`, 'Name one at least.');
      continue;
    }
    for (const column of columns) {
      if (!gathered.columns.includes(column)) gathered.columns.push(column);
      if (settings.has('private') || settings.has('region_from')) gathered.privateColumns.add(column);
    }
    const rule = readFieldRule(yaml, keyNode, field, columns, settings);
    const before = readNextDay(yaml, settings.get('next_day_if_before'), rule, table);
    const isMissing = readPartlyBlank(yaml, settings.get('partly_blank'), rule);
    const joined = { ...(before === null ? {} : { nextDayIfBefore: before }), partlyBlankIsMissing: isMissing };
    const minus = readMinus(yaml, keyNode, settings.get('minus'), rule);
    take(yaml, keyNode, { ...rule, ...joined, ...(minus === null ? {} : { minus }) }, gathered);
  }
}

/** The earlier moment of the same table that a time of day over midnight is told by; null where none is named. */
function readNextDay(
  yaml: YamlDocument,
  node: Node | undefined,
  { field, columns }: FieldRule,
  table: TableDefinition,
): string | null {
  if (node === undefined) return null;
  const moments = table.fields.filter(({ type }) => type === 'instant');
  const earlier = moments.slice(0, Math.max(0, moments.indexOf(field))).map(({ name }) => name);
  if (earlier.length > 0 && columns.length > 1) return yaml.word(node, 'an earlier moment of the row', earlier);
  const wanted = 'a moment joined from a date and a time of day, which follows another';
  yaml.complain('useless-setting', node, 'next_day_if_before', wanted, 'Remove it.');
  return null;
}

/** Whether the field is missing where only some of its cells are filled in. */
function readPartlyBlank(yaml: YamlDocument, node: Node | undefined, { field, columns }: FieldRule): boolean {
  if (node === undefined) return false;
  const word = yaml.word(node, 'what a field is whose cells are only partly filled in', ['missing', 'a problem']);
  if (columns.length > 1 && !(word === 'missing' && field.required === true)) return word === 'missing';
  const wanted = 'a field of several columns that a row can do without';
  yaml.complain('useless-setting', node, 'partly_blank', wanted, 'Remove it.');
  return false;
}

/** Which of the columns of a number hold what is taken away, as a ledger's credits are; null for a field that is no number. */
function readMinus(
  yaml: YamlDocument,
  keyNode: Node,
  node: Node | undefined,
  { field, columns }: FieldRule,
): ReadonlySet<number> | null {
  const isNumber = (field.type === 'number' || field.type === 'integer') && columns.length > 1;
  if (node === undefined) {
    if (isNumber) {
      const remedy = 'Add minus: [Credit] or alike, or minus: [] where every column adds.';
      yaml.complain('missing-setting', keyNode, '', 'which of the columns is taken away', remedy);
    }
    return null;
  }
  const names = yaml.texts(node, 'column names').map((name) => name.trim());
  if (!isNumber) yaml.complain('useless-setting', node, 'minus', 'a number of several columns', 'Remove it.');
  for (const name of names) {
    if (!columns.includes(name)) yaml.complainOfName('unknown-column', node, name, 'one of its columns', columns);
  }
  return isNumber ? new Set(names.map((name) => columns.indexOf(name))) : null;
}
