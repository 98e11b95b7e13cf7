import type { Node } from 'yaml';
import type { YamlDocument } from '../yaml-document.js';
import type { Consequence, Rule } from './rule.js';
import { plainChoices, type RuleChoice, type RuleChoices } from './rule-choices.js';
import { ruleOf, rules } from './rules.js';

const limitNames = ['inspection_hours', 'wash_stage_days'];
const choosable = rules.filter(({ instead }) => instead.length > 0);

function readLimit(yaml: YamlDocument, node: Node | undefined, most: number): number | null {
  if (node === undefined) return null;
  const text = yaml.text(node, 'a number');
  if (text === null) return null;
  const limit = /^\d+(?:\.\d+)?$/u.test(text) ? Number(text) : Number.NaN;
  if (limit > 0 && limit <= most) return limit;
  yaml.complain('wrong-value', node, text, `a number above 0, at most ${most}`, 'Write the number alone.');
  return null;
}

function readConsequence(yaml: YamlDocument, node: Node | undefined, rule: Rule): Consequence | null {
  const usual: Consequence = rule.severity === 'notes' ? 'notes' : 'sets aside';
  if (node === undefined) return usual;
  const word = yaml.word(node, `what follows from ${rule.code}`, [usual, ...rule.instead]);
  return [usual, ...rule.instead].find((consequence) => consequence === word) ?? null;
}

function complainOfFixed(yaml: YamlDocument, node: Node, code: string): void {
  const remedy = `It stays as it is. Rules that can be set: ${choosable.map((rule) => rule.code).join(', ')}.`;
  if (ruleOf(code) !== null) yaml.complain('wrong-value', node, code, 'a rule that can be set', remedy);
  else {
    const known = choosable.map((rule) => rule.code);
    yaml.complainOfName('unknown-rule', node, code, 'a rule that can be set', known);
  }
}

/** What a crosswalk makes of the rules, from its section `rules`: each with the reason that the page of records shows. */
export function readRuleChoices(yaml: YamlDocument, node: Node): RuleChoices {
  const made = new Map<string, RuleChoice>();
  let { inspectionHours, washStageDays } = plainChoices;
  for (const { key, keyNode, value } of yaml.entries(node, 'rules')) {
    const rule = choosable.find(({ code }) => code === key);
    if (rule === undefined) {
      complainOfFixed(yaml, keyNode, key);
      continue;
    }
    const own = key === 'over-long' ? limitNames : [];
    const settings = yaml.settings(value, `the rule ${key}`, ['severity', 'because', ...own], ['because']);
    const consequence = readConsequence(yaml, settings.get('severity'), rule);
    const becauseNode = settings.get('because');
    const because = becauseNode === undefined ? '' : (yaml.text(becauseNode, 'the reason') ?? '').trim();
    if (becauseNode !== undefined && because === '') {
      yaml.complain('missing-setting', becauseNode, '', 'the reason', 'Say why in a sentence: every report shows it.');
    }
    const hours = readLimit(yaml, settings.get('inspection_hours'), 24 * 365);
    const days = readLimit(yaml, settings.get('wash_stage_days'), 3650);
    inspectionHours = hours ?? inspectionHours;
    washStageDays = days ?? washStageDays;
    const limits = [
      ...(hours === null ? [] : [`an inspection at most ${hours} hours`]),
      ...(days === null ? [] : [`a stage of a wash at most ${days} days`]),
    ].join(', ');
    if (consequence !== null) made.set(key, { code: key, consequence, limits, because });
  }
  return { made, inspectionHours, washStageDays };
}
