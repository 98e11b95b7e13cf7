import type { Node } from 'yaml';
import type { Preparation } from './prepare-cell.js';
import { readWithin, type WithinPattern } from './within.js';
import type { YamlDocument } from './yaml-document.js';

function readPattern(yaml: YamlDocument, node: Node): WithinPattern | null {
  const text = yaml.text(node, 'a pattern');
  if (text === null) return null;
  const pattern = readWithin(text);
  if (typeof pattern !== 'string') return pattern;
  const wanted = 'a pattern such as *temp {number} F*';
  yaml.complain('bad-pattern', node, text, wanted, `Mend the pattern: ${pattern}.`);
  return null;
}

function readSeveral(yaml: YamlDocument, node: Node): Preparation['several'] {
  const settings = yaml.settings(node, 'several', ['between', 'take'], ['between', 'take']);
  const takes = ['first', 'last', 'only'] as const;
  const betweenNode = settings.get('between');
  const takeNode = settings.get('take');
  const between = betweenNode === undefined ? null : yaml.text(betweenNode, 'what stands between the values');
  const word = takeNode === undefined ? null : yaml.word(takeNode, 'which value is taken', takes);
  const take = takes.find((entry) => entry === word);
  if (between === '') yaml.complain('wrong-value', betweenNode!, '', 'a sign between values', 'Write between: ";".');
  return between === null || between === '' || take === undefined ? null : { between, take };
}

/** What is done with a column's texts before they are read, from the settings `within` and `several`; null for nothing. */
export function readPreparation(yaml: YamlDocument, settings: ReadonlyMap<string, Node>): Preparation | null {
  const withinNode = settings.get('within');
  const severalNode = settings.get('several');
  if (withinNode === undefined && severalNode === undefined) return null;
  let within: WithinPattern | null = null;
  let orMissing = false;
  if (withinNode !== undefined && yaml.isMap(withinNode)) {
    const parts = yaml.settings(withinNode, 'within', ['text', 'otherwise'], ['text']);
    const textNode = parts.get('text');
    const otherwiseNode = parts.get('otherwise');
    if (textNode !== undefined) within = readPattern(yaml, textNode);
    if (otherwiseNode !== undefined) {
      orMissing = yaml.word(otherwiseNode, 'what a text without it is', ['missing', 'a problem']) === 'missing';
    }
  } else if (withinNode !== undefined) within = readPattern(yaml, withinNode);
  return { within, orMissing, several: severalNode === undefined ? null : readSeveral(yaml, severalNode) };
}
