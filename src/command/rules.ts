import type { Rule } from '../intake/rules/rule.js';
import { rules } from '../intake/rules/rules.js';
import { nearestName } from '../problem/nearest.js';
import { exitCodes } from './exit-codes.js';
import { say, sayJson } from './terminal.js';

/** The words of `rampbook rules`. */
export interface RulesWords {
  readonly codes: readonly string[];
  readonly json?: boolean;
}

function sayRule({ code, severity, instead, meaning, remedy }: Rule): void {
  say(code);
  say(`  ${meaning}.`);
  const choices = instead.length === 0 ? '' : `; a crosswalk may set: ${instead.join(', ')}`;
  const follows = { stops: 'stops the import', 'sets aside': 'sets the row aside', notes: 'is noted, the row kept' };
  say(`  It ${follows[severity]}${choices}.`);
  say(`  ${remedy}`);
}

/** Prints every kind of problem that an import can find, or those asked for: what it means, what follows, the remedy. */
export function rulesCommand({ codes, json }: RulesWords): number {
  const unknown = codes.filter((code) => !rules.some((rule) => rule.code === code));
  for (const code of unknown) {
    const near = nearestName(
      code,
      rules.map((rule) => rule.code),
    );
    const guess = near === null ? 'See them all with rampbook rules.' : `Did you mean "${near}"?`;
    process.stderr.write(`no rule has the code "${code}". ${guess}\n`);
  }
  if (unknown.length > 0) return exitCodes.problems;
  const asked = codes.length === 0 ? rules : rules.filter(({ code }) => codes.includes(code));
  if (json === true) {
    sayJson(asked);
    return exitCodes.fine;
  }
  let scope = '';
  for (const rule of asked) {
    if (rule.scope !== scope) {
      if (scope !== '') say();
      say(`${rule.scope.toUpperCase()}`);
    }
    scope = rule.scope;
    sayRule(rule);
  }
  return exitCodes.fine;
}
