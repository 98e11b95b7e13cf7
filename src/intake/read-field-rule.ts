import type { Node } from 'yaml';
import type { Field, TableDefinition } from '../record/field.js';
import { fieldOf } from '../record/field.js';
import type { FieldRule } from './crosswalk.js';
import { type DatePattern, patternLetters, readDatePatterns } from './date-pattern.js';
import { readCodeMap } from './read-code-map.js';
import { readPreparation } from './read-preparation.js';
import { readSpellings } from './read-spellings.js';
import { conversionTo, unitsFor } from './units.js';
import type { YamlDocument } from './yaml-document.js';

/** A canonical field by name; a problem and null where the table has none of that name. */
export function readField(yaml: YamlDocument, node: Node, table: TableDefinition): Field | null {
  const name = yaml.text(node, `a field of ${table.name}`);
  if (name === null) return null;
  const field = fieldOf(table, name);
  if (field === null) {
    const known = table.fields.map((entry) => entry.name);
    yaml.complainOfName('unknown-field', node, name, `a field of the table ${table.name}`, known);
  }
  return field;
}

function readPattern(yaml: YamlDocument, node: Node, kind: 'date' | 'instant'): DatePattern | null {
  const texts = yaml.texts(node, 'a date pattern');
  if (texts.length === 0) return null;
  const pattern = readDatePatterns(texts, kind);
  if (typeof pattern !== 'string') return pattern;
  yaml.complain(
    'bad-pattern',
    node,
    texts.join(' or '),
    `a pattern of ${patternLetters}`,
    `Mend the pattern: ${pattern}.`,
  );
  return null;
}

/** The unit of a file's numbers; `written` where each is written with its own, `written or feet` where some are not. */
function readUnit(yaml: YamlDocument, node: Node, fieldUnit: string): Pick<FieldRule, 'unit' | 'isWritten'> {
  const units = unitsFor(fieldUnit);
  const known = [...units, 'written', ...units.map((unit) => `written or ${unit}`)];
  const word = yaml.word(node, 'a unit', known);
  if (word === null || !word.startsWith('written')) return { unit: word, isWritten: false };
  return { unit: word === 'written' ? null : word.slice('written or '.length), isWritten: true };
}

/** What texts that stand for missing mean, where a map says so. */
export function readMissingWhy(yaml: YamlDocument, node: Node): ReadonlyMap<string, string> {
  if (!yaml.isMap(node)) return new Map();
  const entries = yaml.entries(node, 'texts that stand for missing');
  return new Map(entries.map(({ key, value }) => [key.trim(), yaml.text(value, 'a reason') ?? '']));
}

/** Texts that stand for missing, as a list, or as a map that says of each why. */
export function readMissing(yaml: YamlDocument, node: Node): readonly string[] {
  const what = 'texts that stand for missing';
  return yaml.isMap(node) ? yaml.entries(node, what).map(({ key }) => key) : yaml.texts(node, what);
}

/**
 * How a field is read from its settings; a setting that the field's type has no use for is a problem, as is a name or a time
 * that lacks the setting it needs.
 */
export function readFieldRule(
  yaml: YamlDocument,
  node: Node,
  field: Field,
  columns: readonly string[],
  settings: ReadonlyMap<string, Node>,
): FieldRule {
  const useless = (setting: string) =>
    yaml.complain(
      'useless-setting',
      settings.get(setting)!,
      setting,
      `a setting that ${field.name} can use`,
      'Remove it.',
    );
  const codesNode = settings.get('codes');
  const takesCodes = field.type === 'code' || field.type === 'reference' || field.type === 'text';
  // Whole numbers may be written as texts, such as FY25 for a year.
  const mapsTexts = takesCodes || field.type === 'integer';
  if (codesNode !== undefined && !mapsTexts) useless('codes');
  const speltNode = settings.get('spelt');
  if (speltNode !== undefined && !takesCodes) useless('spelt');
  const given =
    codesNode !== undefined && mapsTexts ? readCodeMap(yaml, codesNode, field, settings.has('region_from')) : null;
  const spelt = speltNode !== undefined && takesCodes ? readSpellings(yaml, speltNode, field) : null;
  const codes = given === null && spelt === null ? null : new Map([...(spelt ?? []), ...(given ?? [])]);
  const caseNode = settings.get('case');
  if (caseNode !== undefined && (codes === null || !takesCodes)) useless('case');
  const isPlain = speltNode !== undefined && !yaml.isMap(speltNode);
  const anyCase = isPlain || (caseNode !== undefined && yaml.word(caseNode, 'a case', ['any', 'as written']) === 'any');

  const patternNode = settings.get('pattern');
  const isDated = field.type === 'date' || field.type === 'instant';
  let pattern: DatePattern | null = null;
  if (isDated && patternNode !== undefined) pattern = readPattern(yaml, patternNode, field.type);
  else if (patternNode !== undefined) useless('pattern');
  else if (isDated) {
    const example = field.type === 'date' ? 'pattern: yyyy-MM-dd' : "pattern: yyyy-MM-dd'T'HH:mm";
    yaml.complain(
      'missing-setting',
      node,
      '',
      `a pattern for ${field.name}`,
      `Say how it is written, such as ${example}.`,
    );
  }

  const unitNode = settings.get('unit');
  const isNumber = field.type === 'number' || field.type === 'integer';
  if (unitNode !== undefined && !isNumber) useless('unit');
  const { unit, isWritten } =
    unitNode !== undefined && isNumber ? readUnit(yaml, unitNode, field.unit) : { unit: null, isWritten: false };
  const conversion = unit === null || !isNumber || unit === field.unit ? null : conversionTo(field.unit, unit);

  const privateNode = settings.get('private');
  const isHashable = field.type === 'pseudonym' || field.type === 'text' || field.type === 'reference';
  if (privateNode !== undefined && !isHashable) useless('private');
  const hashed =
    privateNode !== undefined && isHashable && yaml.word(privateNode, 'what becomes of it', ['hash']) === 'hash';
  if (field.type === 'pseudonym' && privateNode === undefined) {
    yaml.complain('missing-setting', node, '', `private: hash for ${field.name}`, 'Add private: hash.');
  }
  const regionNode = settings.get('region_from');
  if (regionNode !== undefined && field.type !== 'text') useless('region_from');
  const fromRegistration =
    regionNode !== undefined && yaml.word(regionNode, 'what tells the region', ['registration']) !== null;
  const missingNode = settings.get('missing');
  const missing = missingNode === undefined ? null : readMissing(yaml, missingNode);
  const preparation = readPreparation(yaml, field, settings);
  return {
    field,
    columns,
    codes,
    pattern,
    conversion,
    unit,
    hashed,
    fromRegistration,
    isWritten,
    preparation,
    missing,
    missingWhy: missingNode === undefined ? null : readMissingWhy(yaml, missingNode),
    anyCase,
  };
}
