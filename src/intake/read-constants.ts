import type { Node } from 'yaml';
import { type Field, formOf, type TableDefinition } from '../record/field.js';
import { readDatePattern } from './date-pattern.js';
import { DateReader } from './date-reader.js';
import { fault } from './fault.js';
import { readTarget } from './read-code-map.js';
import { readField } from './read-field-rule.js';
import type { YamlDocument } from './yaml-document.js';

function readConstant(yaml: YamlDocument, node: Node, field: Field): string | number | null {
  if (field.type === 'code' || field.type === 'reference' || field.type === 'text') {
    const target = readTarget(yaml, node, field);
    const form = formOf(field);
    if (target === null || form === null || form.test(target)) return target;
    yaml.complain('wrong-value', node, target, `a text as ${field.name} is written`, `Mend it: ${field.meaning}`);
    return null;
  }
  const text = yaml.text(node, `a value of ${field.name}`);
  if (text === null) return null;
  const number = readPlainValue(text, field);
  if (number === null) {
    const wanted =
      field.type === 'date'
        ? 'a date as yyyy-MM-dd'
        : 'least' in field
          ? `a number between ${field.least} and ${field.most}`
          : 'a field that a constant may fill';
    yaml.complain('wrong-value', node, text, wanted, 'Mend it, or take the field from a column.');
  }
  return number;
}

/** A number or a day number as a crosswalk writes it; null for anything else, and for fields that no constant can fill. */
function readPlainValue(text: string, field: Field): number | null {
  if (field.type === 'number' || field.type === 'integer') {
    const number = /^-?\d+(?:\.\d+)?$/u.test(text) ? Number(text) : Number.NaN;
    const isWhole = field.type === 'number' || Number.isInteger(number);
    return number >= field.least && number <= field.most && isWhole ? number : null;
  }
  if (field.type !== 'date') return null;
  const pattern = readDatePattern('yyyy-MM-dd', 'date');
  if (typeof pattern === 'string') throw new Error(pattern);
  const reader = new DateReader(pattern, false);
  const bytes = Buffer.from(text, 'utf8');
  return reader.read(bytes, 0, bytes.length) === fault.none ? reader.day : null;
}

/** Fields that are the same in every row of a file, held to what the field can hold. */
export function readConstants(
  yaml: YamlDocument,
  node: Node,
  table: TableDefinition,
): ReadonlyMap<string, string | number> {
  const constants = new Map<string, string | number>();
  for (const { keyNode, value } of yaml.entries(node, 'constants')) {
    const field = readField(yaml, keyNode, table);
    const constant = field === null ? null : readConstant(yaml, value, field);
    if (field !== null && constant !== null) constants.set(field.name, constant);
  }
  return constants;
}
