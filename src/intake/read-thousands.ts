import type { Node } from 'yaml';
import { type ThousandsMark, thousandsMarks } from './number-marks.js';
import type { YamlDocument } from './yaml-document.js';

const words = Object.keys(thousandsMarks) as readonly ThousandsMark[];

/** What stands between groups of three digits; it cannot be the decimal mark. */
export function readThousands(
  yaml: YamlDocument,
  node: Node | undefined,
  decimal: string | null,
): ThousandsMark | null {
  if (node === undefined) return null;
  const word = yaml.word(node, 'what stands between thousands', words);
  if (word !== null && word === decimal) {
    yaml.complain('wrong-value', node, word, 'another mark than the decimal one', 'Mend decimal or thousands.');
  }
  return words.find((entry) => entry === word) ?? null;
}
