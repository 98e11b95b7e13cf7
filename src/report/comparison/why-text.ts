import { inWords } from '../anchor.js';
import type { Cause, Why } from './comparison.js';
import { comparisonWords as words } from './comparison-words.js';

/** Why something differs, as a reader sees it: each cause with the names it comes from. */
export function whyText({ causes, inputs, formulas }: Why): string {
  if (causes.length === 0) return words.unexplained;
  const names: Partial<Record<Cause, readonly string[]>> = { input: inputs, formula: formulas };
  return causes.map((cause) => words.causeNames(words.causeOf[cause], (names[cause] ?? []).map(inWords))).join(', ');
}
