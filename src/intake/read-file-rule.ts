import type { Node } from 'yaml';
import type { TableDefinition, TableName } from '../record/field.js';
import { fieldOf } from '../record/field.js';
import { isTableName, tableOf, tables } from '../record/tables.js';
import type { FileRule } from './crosswalk.js';
import { readsAsAbsent } from './impossible-part.js';
import { type Gathered, readColumns, readCombined } from './read-columns.js';
import { readConstants } from './read-constants.js';
import { plainDialect, readDialect } from './read-dialect.js';
import { fieldsNamed, readDuplicates } from './read-duplicates.js';
import { readMissing, readMissingWhy } from './read-field-rule.js';
import { readFold } from './read-fold.js';
import { readLeaveOut } from './read-leave-out.js';
import { readThousands } from './read-thousands.js';
import type { RuleChoices } from './rules/rule-choices.js';
import { isTimeZone } from './time-zone.js';
import type { Alias } from './waters/alias.js';
import type { YamlDocument } from './yaml-document.js';

/** The settings of a kind of file that tell what its rows are. */
export const rowSettings = [
  'table',
  'time_zone',
  'time_zone_of',
  'repeated',
  'decimal',
  'missing',
  'thousands',
  'season_of',
  'columns',
  'combine',
  'constants',
  'fold',
  'duplicates',
  'leave_out',
  'completes',
] as const;

function readZone(yaml: YamlDocument, node: Node): string | null {
  const zone = yaml.text(node, 'a time zone');
  if (zone === null || isTimeZone(zone)) return zone;
  yaml.complain('wrong-value', node, zone, 'an IANA time zone', 'Write it as in America/Denver.');
  return null;
}

/** Tables whose rows nothing refers to, and that several files commonly tell of. */
const completed: readonly TableName[] = ['station_days', 'decontaminations'];

function readCompletes(yaml: YamlDocument, node: Node | undefined, table: TableDefinition, hasFold: boolean): boolean {
  if (node === undefined) return false;
  const word = yaml.word(node, 'whose rows it completes', ['other files']);
  if (completed.includes(table.name) && !hasFold) return word !== null;
  const wanted = `a file of ${completed.join(' or ')}, without a checklist`;
  yaml.complain('useless-setting', node, 'completes', wanted, 'Remove it.');
  return false;
}

function complainOfAbsent(
  yaml: YamlDocument,
  node: Node,
  table: TableDefinition,
  given: ReadonlySet<string>,
  completes: boolean,
): void {
  for (const field of table.fields) {
    const isNeeded = completes ? table.key.includes(field.name) : field.required;
    if (!isNeeded || given.has(field.name)) continue;
    const remedy = `Name the column that holds it, or a constant: ${field.meaning}`;
    yaml.complain('missing-field', node, '', `the field ${field.name}, without which no row is kept`, remedy);
  }
}

/** Where the settings of one kind of rows stand, and what the whole crosswalk says beside them. */
export interface RowSettings {
  readonly settings: ReadonlyMap<string, Node>;
  readonly choices: RuleChoices;
  readonly aliases: readonly Alias[];
}

/** How the rows of one kind of file are read; null where not even their table is known. */
export function readFileRule(yaml: YamlDocument, { settings, choices, aliases }: RowSettings): FileRule | null {
  const tableNode = settings.get('table');
  const name = tableNode === undefined ? null : yaml.text(tableNode, 'a table');
  if (tableNode === undefined || name === null) return null;
  if (!isTableName(name)) {
    const names = tables.map((entry) => entry.name);
    yaml.complainOfName('unknown-table', tableNode, name, 'a canonical table', names);
    return null;
  }
  const table = tableOf(name);
  const gathered: Gathered = { columns: [], privateColumns: new Set(), fields: [], waters: [] };
  const at = (setting: string) => settings.get(setting);
  const columnsNode = at('columns');
  if (columnsNode !== undefined) readColumns(yaml, columnsNode, table, gathered);
  for (const { columns } of gathered.fields) {
    for (const column of columns) if (!gathered.columns.includes(column)) gathered.columns.push(column);
  }
  const combineNode = at('combine');
  if (combineNode !== undefined) readCombined(yaml, combineNode, table, gathered);
  const constantsNode = at('constants');
  const constants =
    constantsNode === undefined ? new Map<string, string | number>() : readConstants(yaml, constantsNode, table);
  const foldNode = at('fold');
  const fold = foldNode === undefined ? null : readFold(yaml, foldNode, table, readsAsAbsent(choices));
  for (const column of new Set(fold?.columns.map((entry) => entry.column))) {
    if (!gathered.columns.includes(column)) gathered.columns.push(column);
    else yaml.complain('twice', foldNode!, column, 'one use for each column', 'Name it under columns or under fold.');
  }
  const given = new Set([...gathered.fields.map(({ field }) => field.name), ...constants.keys()]);
  const completes = readCompletes(yaml, at('completes'), table, fold !== null);
  complainOfAbsent(yaml, tableNode, table, given, completes);

  const zoneNode = at('time_zone');
  const zoneOfNode = at('time_zone_of');
  if (zoneOfNode !== undefined) yaml.word(zoneOfNode, 'the field that tells the zone', ['station']);
  if (zoneOfNode !== undefined && fieldOf(table, 'station')?.required !== true) {
    const remedy = 'Name the zone itself: time_zone: America/Denver or alike.';
    yaml.complain(
      'wrong-value',
      zoneOfNode,
      'station',
      `a table whose every row has a station; ${name} has none`,
      remedy,
    );
  }
  if (zoneOfNode !== undefined && zoneNode !== undefined) {
    yaml.complain('useless-setting', zoneNode, 'time_zone', 'either time_zone or time_zone_of', 'Remove one.');
  }
  const timeZone = zoneNode === undefined ? null : readZone(yaml, zoneNode);
  const needsZone = gathered.fields.some(
    ({ field, pattern }) =>
      field.type === 'instant' && pattern !== null && [pattern, ...pattern.others].some(({ hasOffset }) => !hasOffset),
  );
  if (needsZone && zoneNode === undefined && zoneOfNode === undefined) {
    yaml.complain(
      'missing-setting',
      tableNode,
      '',
      'a time zone for its times',
      'Add time_zone: America/Denver or alike.',
    );
  }
  const seasonOf = fieldsNamed(yaml, at('season_of'), table)[0] ?? null;
  const dated = gathered.fields.some(({ field, pattern }) => field.name === seasonOf?.name && pattern !== null);
  if (seasonOf !== null && !dated) {
    yaml.complain('wrong-value', at('season_of')!, seasonOf.name, 'a date or time read from a column', 'Name another.');
  }
  const bySeason = gathered.fields.some(({ codes }) => codes !== null && [...codes.values()].some(Array.isArray));
  if (bySeason && at('season_of') === undefined) {
    yaml.complain('missing-setting', columnsNode ?? null, '', 'season_of, since codes change by season', 'Add it.');
  }
  const repeatedNode = at('repeated');
  const repeated = repeatedNode === undefined ? null : yaml.word(repeatedNode, 'which of two', ['first', 'second']);
  const decimalNode = at('decimal');
  const decimal = decimalNode === undefined ? 'point' : yaml.word(decimalNode, 'a decimal mark', ['point', 'comma']);
  const missingNode = at('missing');
  const dialectNode = at('dialect');
  const filesNode = at('files');
  const leaveOutNode = at('leave_out');
  return {
    patterns: filesNode === undefined ? [] : yaml.texts(filesNode, 'a path below the folder of exports'),
    place: yaml.placeOf(filesNode ?? tableNode),
    table,
    dialect: dialectNode === undefined ? plainDialect : readDialect(yaml, dialectNode),
    timeZone: zoneOfNode === undefined ? timeZone : null,
    repeated: repeated === 'first' || repeated === 'second' ? repeated : null,
    decimalByte: decimal === 'comma' ? 44 : 46,
    thousands: readThousands(yaml, at('thousands'), decimal),
    missing: missingNode === undefined ? [''] : readMissing(yaml, missingNode),
    missingWhy: missingNode === undefined ? new Map() : readMissingWhy(yaml, missingNode),
    seasonOf: seasonOf?.name ?? null,
    columns: gathered.columns,
    optional: new Set(fold?.columns.filter(({ isOptional }) => isOptional).map(({ column }) => column)),
    privateColumns: gathered.privateColumns,
    fields: gathered.fields,
    constants,
    fold,
    completes,
    leaveOut: leaveOutNode === undefined ? [] : readLeaveOut(yaml, leaveOutNode, gathered.columns),
    ...readDuplicates(yaml, at('duplicates'), table),
    choices,
    waters: gathered.waters,
    aliases,
  };
}
