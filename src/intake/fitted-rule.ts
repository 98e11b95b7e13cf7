import { inTable, type Problem } from '../problem/problem.js';
import type { FileRule } from './crosswalk.js';

/** A rule without the columns that a file may lack and does lack; the same rule where it has them all. */
export function fittedRule(rule: FileRule, has: (column: string) => boolean): FileRule {
  const { fold, optional } = rule;
  if (optional.size === 0) return rule;
  const isThere = (column: string) => !optional.has(column) || has(column);
  const columns = rule.columns.filter(isThere);
  return { ...rule, columns, fold: fold && { ...fold, columns: fold.columns.filter(({ column }) => isThere(column)) } };
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
