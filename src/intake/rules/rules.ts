import { cellRules } from './cell-rules.js';
import { crosswalkRules } from './crosswalk-rules.js';
import { fileRules } from './file-rules.js';
import { linkRules } from './link-rules.js';
import { mendingRules } from './mending-rules.js';
import type { Rule } from './rule.js';
import { senseRules } from './sense-rules.js';
import { storeRules } from './store-rules.js';

/** Every kind of problem that an import can find, in the order in which it is met: the one source of what is said of them. */
export const rules: readonly Rule[] = [
  ...crosswalkRules,
  ...fileRules,
  ...cellRules,
  ...linkRules,
  ...senseRules,
  ...mendingRules,
  ...storeRules,
];

const byCode = new Map(rules.map((rule) => [rule.code, rule]));

/** The rule of that code, or null. */
export function ruleOf(code: string): Rule | null {
  return byCode.get(code) ?? null;
}
