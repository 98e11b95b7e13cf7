import type { Node } from 'yaml';
import type { Field } from '../record/field.js';
import type { CodeMeaning } from './crosswalk.js';
import type { YamlDocument } from './yaml-document.js';

/** The spellings of yes and no that `spelt: plainly` stands for, whatever their case. */
export const plainSpellings: Readonly<Record<string, readonly string[]>> = {
  yes: ['yes', 'y', 'true', 't', '1', 'x', '✓'],
  no: ['no', 'n', 'false', 'f', '0'],
};

/** The texts of several spellings, by the code that each stands for: `spelt: { yes: [Y, Yes, X], no: [N] }`. */
export function readSpellings(yaml: YamlDocument, node: Node, field: Field): ReadonlyMap<string, CodeMeaning> {
  const meanings = new Map<string, CodeMeaning>();
  if (!yaml.isMap(node)) {
    const isYesNo = field.type === 'code' && field.codes.codes.every(({ code }) => code in plainSpellings);
    if (!isYesNo) {
      const remedy = 'Write spelt: { CODE: [text, text] }.';
      yaml.complain('wrong-value', node, 'plainly', `a map of the codes of ${field.name}`, remedy);
    } else if (yaml.word(node, 'how it is spelt', ['plainly']) !== null) {
      for (const [code, texts] of Object.entries(plainSpellings)) for (const text of texts) meanings.set(text, code);
    }
    return meanings;
  }
  for (const { key, keyNode, value } of yaml.entries(node, `the spellings of ${field.name}`)) {
    const known = field.type === 'code' ? field.codes.codes.map(({ code }) => code) : [key];
    if (!known.includes(key)) {
      yaml.complainOfName('unknown-code', keyNode, key, `a code of ${field.name}`, known);
      continue;
    }
    for (const text of yaml.texts(value, 'spellings').map((entry) => entry.trim())) {
      const earlier = meanings.get(text);
      if (earlier === undefined) meanings.set(text, key);
      else
        yaml.complain('twice', value, text, 'one code for each text', `It is spelt so for ${String(earlier)} already.`);
    }
  }
  return meanings;
}
