import type { Node } from 'yaml';
import type { Field } from '../record/field.js';
import type { CodeMeaning, SeasonalCode } from './crosswalk.js';
import type { YamlDocument } from './yaml-document.js';

/** A code that a cell may stand for; a problem where a field's code list does not hold it. */
export function readTarget(yaml: YamlDocument, node: Node, field: Field): string | null {
  if (yaml.isNothing(node)) return null;
  const code = yaml.text(node, `a code of ${field.name}`);
  if (code !== null && field.type === 'integer' && !/^-?\d+$/u.test(code)) {
    yaml.complain(
      'wrong-value',
      node,
      code,
      'the whole number that the text stands for',
      'Write it in digits: FY25: 2025.',
    );
    return null;
  }
  if (code === null || field.type !== 'code') return code;
  const known = field.codes.codes.map((entry) => entry.code);
  if (!known.includes(code)) {
    yaml.complainOfName('unknown-code', node, code, `a code of the list "${field.codes.name}"`, known);
    return null;
  }
  return code;
}

function readSeasons(text: string): readonly [number, number] | null {
  const range = /^(\d{4})?(-)?(\d{4})?$/u.exec(text);
  if (range === null || (range[1] === undefined && range[3] === undefined)) return null;
  if (range[2] === undefined) return range[3] === undefined ? [Number(range[1]), Number(range[1])] : null;
  const from = range[1] === undefined ? 0 : Number(range[1]);
  const to = range[3] === undefined ? 9999 : Number(range[3]);
  return from <= to ? [from, to] : null;
}

function readSeasonal(yaml: YamlDocument, node: Node, field: Field): readonly SeasonalCode[] {
  const held: SeasonalCode[] = [];
  for (const { key, keyNode, value } of yaml.entries(node, 'codes by season')) {
    const seasons = readSeasons(key);
    const overlapping = seasons !== null && held.some(({ from, to }) => seasons[0] <= to && seasons[1] >= from);
    if (seasons === null || overlapping) {
      const wanted = overlapping ? 'seasons that do not overlap' : 'a season or a range of seasons';
      yaml.complain('wrong-value', keyNode, key, wanted, 'Write 2025, 2023-2024, 2025- or -2024.');
      continue;
    }
    held.push({ from: seasons[0], to: seasons[1], code: readTarget(yaml, value, field) });
  }
  return held;
}

/**
 * What a column's texts stand for: text → code, missing (an empty value), or codes by season. Where the texts are prefixes of
 * registrations, one stands for the same region in every season: codes by season are a problem there.
 */
export function readCodeMap(
  yaml: YamlDocument,
  node: Node,
  field: Field,
  isPrefix = false,
): ReadonlyMap<string, CodeMeaning> {
  const meanings = new Map<string, CodeMeaning>();
  for (const { key, keyNode, value } of yaml.entries(node, `the codes of ${field.name}`)) {
    const text = key.trim();
    if (!yaml.isMap(value) || field.type === 'integer') meanings.set(text, readTarget(yaml, value, field));
    else if (!isPrefix) meanings.set(text, readSeasonal(yaml, value, field));
    else {
      const wanted = 'one region for every season, as region_from reads prefixes';
      yaml.complain('useless-setting', keyNode, text, wanted, `Write ${text}: REGION, without seasons.`);
    }
  }
  return meanings;
}
