import type { Node } from 'yaml';
import type { Field } from '../record/field.js';
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

/** What stands before each value of a name or number; a field of another kind, and one that codes give, takes none. */
function readPrefix(yaml: YamlDocument, node: Node, field: Field, settings: ReadonlyMap<string, Node>): string {
  const isName = (field.type === 'text' && field.pattern === undefined) || field.type === 'reference';
  const others = ['codes', 'spelt', 'private', 'region_from', 'match'].filter((name) => settings.has(name));
  const text = yaml.text(node, 'what stands before each value') ?? '';
  if (isName && others.length === 0) return text;
  const wanted = isName ? `a column without ${others.join(', ')}` : 'a field that holds names or numbers of forms';
  yaml.complain('useless-setting', node, text, wanted, 'Remove it.');
  return '';
}

/**
 * What is done with a column's texts before they are read, from the settings `within`, `several` and `prefix`; null for
 * nothing.
 */
export function readPreparation(
  yaml: YamlDocument,
  field: Field,
  settings: ReadonlyMap<string, Node>,
): Preparation | null {
  const withinNode = settings.get('within');
  const severalNode = settings.get('several');
  const prefixNode = settings.get('prefix');
  if (withinNode === undefined && severalNode === undefined && prefixNode === undefined) return null;
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
  return {
    within,
    orMissing,
    several: severalNode === undefined ? null : readSeveral(yaml, severalNode),
    prefix: prefixNode === undefined ? '' : readPrefix(yaml, prefixNode, field, settings),
  };
}
