import { inTable, type Problem } from '../problem/problem.js';
import type { FileRule } from './crosswalk.js';

/** A rule without the columns that a file may lack and does lack; the same rule where it has them all. */
export function fittedRule(rule: FileRule, has: (column: string) => boolean): FileRule {
  const { fold } = rule;
  if (fold === null || !fold.columns.some(({ isOptional }) => isOptional)) return rule;
  const columns = fold.columns.filter(({ column, isOptional }) => !isOptional || has(column));
  const lacking = new Set(fold.columns.filter((column) => !columns.includes(column)).map(({ column }) => column));
  return { ...rule, columns: rule.columns.filter((name) => !lacking.has(name)), fold: { ...fold, columns } };
}

/** What is wrong with the columns of a checklist in one file: that it has none, or two for one part. */
export function problemsOfFold({ fold }: FileRule, file: string, line: number): readonly Problem[] {
  if (fold === null) return [];
  const stop = (code: string, seen: string, wanted: string, remedy: string): Problem => {
    return { code, severity: 'stops', place: inTable(file, line, null, null), seen, wanted, remedy };
  };
  if (fold.columns.length === 0) {
    return [
      stop('missing-column', 'no column of a part', 'the checklist', 'Compare the headings with names under fold.'),
    ];
  }
  const taken = new Map<string, string>();
  return fold.columns.flatMap(({ column, component, side }) => {
    const part = `${component}, ${side}`;
    const earlier = taken.get(part);
    taken.set(part, column);
    if (earlier === undefined) return [];
    const remedy = `Take one of ${earlier} and ${column} out of names under fold.`;
    return [stop('repeated-column', column, `one column for ${part}`, remedy)];
  });
}
