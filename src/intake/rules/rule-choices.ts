import type { Follows } from '../remark.js';
import type { Consequence } from './rule.js';
import { ruleOf } from './rules.js';

/** What a crosswalk makes of one rule, and why. */
export interface RuleChoice {
  readonly code: string;
  readonly consequence: Consequence;
  /** The limits it declares, in words; empty where it leaves them as they are. */
  readonly limits: string;
  readonly because: string;
}

/** What a crosswalk makes of the rules: only what it sets otherwise is listed. */
export interface RuleChoices {
  readonly made: ReadonlyMap<string, RuleChoice>;
  /** The longest an inspection can take, in hours. */
  readonly inspectionHours: number;
  /** The longest a stage of a wash can take, in days. */
  readonly washStageDays: number;
}

/** The rules as they are where a crosswalk says nothing. */
export const plainChoices: RuleChoices = { made: new Map(), inspectionHours: 12, washStageDays: 30 };

/** What follows where a rule of that code is broken. */
export function consequenceOf(choices: RuleChoices, code: string): Consequence {
  const choice = choices.made.get(code);
  if (choice !== undefined) return choice.consequence;
  return ruleOf(code)?.severity === 'notes' ? 'notes' : 'sets aside';
}

/** What follows for the row itself; null where the rule is not checked. What cannot be read as absent sets its row aside. */
export function followsFrom(choices: RuleChoices, code: string): Follows | null {
  const consequence = consequenceOf(choices, code);
  if (consequence === 'not checked') return null;
  return consequence === 'notes' ? 'notes' : 'sets aside';
}
