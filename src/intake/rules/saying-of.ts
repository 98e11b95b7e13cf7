import type { Saying } from '../remark.js';
import { ruleOf } from './rules.js';

/** What a ledger says of a rule: its own meaning and remedy, or a reason that names the case. */
export function sayingOf(code: string, reason?: string): Saying {
  const rule = ruleOf(code);
  if (rule === null) throw new Error(`no rule has the code ${code}`);
  return { code, reason: reason ?? rule.meaning, remedy: rule.remedy };
}
