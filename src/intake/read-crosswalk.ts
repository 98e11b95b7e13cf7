import { createHash } from 'node:crypto';
import type { Node } from 'yaml';
import type { Problem } from '../problem/problem.js';
import type { DefinitionChange } from '../record/file-sum.js';
import { isTableName, tableOf, tables } from '../record/tables.js';
import type { Crosswalk } from './crosswalk.js';
import { readDatePattern } from './date-pattern.js';
import { DateReader } from './date-reader.js';
import { fault } from './fault.js';
import { readField } from './read-field-rule.js';
import { readFileRules } from './read-file-rules.js';
import { readRuleChoices } from './rules/read-rule-choices.js';
import { plainChoices } from './rules/rule-choices.js';
import { isTimeZone, ZoneClock } from './time-zone.js';
import { readAliases } from './waters/read-aliases.js';
import { YamlDocument } from './yaml-document.js';

const known = [
  'crosswalk',
  'about',
  'data_as_of',
  'data_time_zone',
  'pseudonyms',
  'definition_changes',
  'rules',
  'aliases',
  'files',
];

function readAsOf(yaml: YamlDocument, node: Node, zoneNode: Node | undefined): number | null {
  const text = yaml.text(node, 'a moment such as 2025-11-30 18:00');
  const zone = zoneNode === undefined ? null : yaml.text(zoneNode, 'a time zone');
  if (zoneNode === undefined) {
    yaml.complain(
      'missing-setting',
      node,
      '',
      'data_time_zone beside data_as_of',
      'Add data_time_zone: America/Denver.',
    );
  } else if (zone !== null && !isTimeZone(zone)) {
    yaml.complain('wrong-value', zoneNode, zone, 'an IANA time zone', 'Write it as in America/Denver.');
    return null;
  }
  if (text === null || zone === null) return null;
  const pattern = readDatePattern('yyyy-MM-dd HH:mm', 'instant');
  if (typeof pattern === 'string') throw new Error(pattern);
  const reader = new DateReader(pattern, true);
  const bytes = Buffer.from(text, 'utf8');
  if (reader.read(bytes, 0, bytes.length) !== fault.none) {
    yaml.complain('wrong-value', node, text, 'a moment as yyyy-MM-dd HH:mm', 'Write it as in 2025-11-30 18:00.');
    return null;
  }
  return new ZoneClock(zone).momentOf(reader.wall, 'first');
}

function readChanges(yaml: YamlDocument, node: Node): readonly DefinitionChange[] {
  const settings = ['table', 'field', 'season', 'was', 'is'];
  return yaml.items(node, 'definition_changes').flatMap((item) => {
    const change = yaml.settings(item, 'a definition change', settings, settings);
    if (settings.some((name) => !change.has(name))) return [];
    const [tableName, , season, was, is] = settings.map((name) => yaml.text(change.get(name)!, `the ${name}`));
    if (tableName === null || tableName === undefined || !isTableName(tableName)) {
      const names = tables.map(({ name }) => name);
      yaml.complainOfName('unknown-table', change.get('table')!, tableName ?? '', 'a canonical table', names);
      return [];
    }
    const field = readField(yaml, change.get('field')!, tableOf(tableName));
    if (!/^\d{4}$/u.test(season ?? '')) {
      yaml.complain(
        'wrong-value',
        change.get('season')!,
        season ?? '',
        'a year',
        'Write the first season of the new meaning.',
      );
      return [];
    }
    return field === null
      ? []
      : [{ table: tableName, field: field.name, season: Number(season), was: was ?? '', is: is ?? '' }];
  });
}

/**
 * A crosswalk from the text of its file, with every mistake found in it at line and column; null beside problems, since
 * nothing is read by half a crosswalk.
 */
export function readCrosswalk(
  file: string,
  text: string,
): { readonly crosswalk: Crosswalk | null; readonly problems: readonly Problem[] } {
  const yaml = new YamlDocument(file, text);
  if (yaml.problems.length > 0) return { crosswalk: null, problems: yaml.problems };
  const settings = yaml.settings(yaml.root, 'a crosswalk', known, ['crosswalk', 'files']);
  const textOf = (name: string): string => {
    const node = settings.get(name);
    return node === undefined ? '' : (yaml.text(node, `the ${name}`) ?? '');
  };
  const name = textOf('crosswalk');
  const about = textOf('about');
  const pseudonymsNode = settings.get('pseudonyms');
  if (pseudonymsNode !== undefined) yaml.word(pseudonymsNode, 'whose pseudonyms', ['shared']);
  const asOfNode = settings.get('data_as_of');
  const asOf = asOfNode === undefined ? null : readAsOf(yaml, asOfNode, settings.get('data_time_zone'));
  const asOfWords = asOf === null ? '' : `${textOf('data_as_of')}, ${textOf('data_time_zone')}`;
  const changesNode = settings.get('definition_changes');
  const definitionChanges = changesNode === undefined ? [] : readChanges(yaml, changesNode);
  const rulesNode = settings.get('rules');
  const choices = rulesNode === undefined ? plainChoices : readRuleChoices(yaml, rulesNode);
  const aliasesNode = settings.get('aliases');
  const aliases = aliasesNode === undefined ? { aliases: [], file: null } : readAliases(yaml, aliasesNode);
  const filesNode = settings.get('files');
  const files =
    filesNode === undefined
      ? []
      : yaml.items(filesNode, 'files').flatMap((item) => readFileRules(yaml, item, choices, aliases.aliases));
  if (yaml.problems.length > 0) {
    // What else is wrong with a draft mostly follows from what is not decided yet.
    const open = yaml.problems.filter(({ code }) => code === 'crosswalk-open-question');
    return { crosswalk: null, problems: open.length > 0 ? open : yaml.problems };
  }
  const fingerprint = createHash('sha256').update(text, 'utf8').digest('hex');
  return {
    crosswalk: {
      name,
      about,
      asOf,
      asOfWords,
      definitionChanges,
      choices,
      aliasFile: aliases.file,
      files,
      fingerprint,
      text,
    },
    problems: [],
  };
}
