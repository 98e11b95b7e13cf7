import { readFileSync } from 'node:fs';
import type { FileRule } from '../../../src/intake/crosswalk.js';
import { draftCrosswalk } from '../../../src/intake/draft/draft-crosswalk.js';
import type { FileProposal } from '../../../src/intake/draft/proposal.js';
import { readCrosswalk } from '../../../src/intake/read-crosswalk.js';

/** How much of a crosswalk that people wrote a draft proposes: of its columns, its date patterns and its codes. */
export interface Agreement {
  readonly columns: number;
  readonly right: number;
  /** Columns that are proposed as something else; those left open are not among them. */
  readonly wrong: readonly string[];
  readonly patterns: readonly [right: number, all: number];
  /** Codes told alike, told otherwise, and left open. */
  readonly codes: readonly [right: number, wrong: number, open: number];
}

function useIn(rule: FileRule, column: string): string {
  const part = rule.fold?.columns.find((one) => one.column === column);
  if (part !== undefined) return `fold: ${part.component}, ${part.side}`;
  const fields = rule.fields.filter(({ columns }) => columns.includes(column));
  if (fields.length > 0)
    return fields.map(({ field, hashed }) => `${field.name}${hashed ? ' hashed' : ''}`).join(' and ');
  return rule.privateColumns.has(column) ? 'drop' : 'ignore';
}

function useProposed(file: FileProposal, column: string): string {
  const part = file.fold?.columns.find((one) => one.column === column);
  if (part !== undefined) return `fold: ${part.component}, ${part.side}`;
  const joined = file.combined.filter(({ columns }) => columns.includes(column));
  if (joined.length > 0) return joined.map(({ field }) => field).join(' and ');
  const use = file.columns.find((one) => one.column === column)?.use;
  if (use?.kind === 'field') return `${use.field}${use.hashed ? ' hashed' : ''}`;
  return use?.kind ?? 'undecided';
}

function patternsOf(file: FileProposal): ReadonlyMap<string, string> {
  const named = file.columns.flatMap(({ use, pattern }) =>
    use.kind === 'field' && pattern !== null ? [[use.field, pattern] as const] : [],
  );
  return new Map([...named, ...file.combined.map(({ field, pattern }) => [field, pattern] as const)]);
}

/** Holds a draft of files against the crosswalk that reads them. */
export async function compareDraft(from: string, crosswalkFile: string, paths: readonly string[]): Promise<Agreement> {
  const { crosswalk } = readCrosswalk(crosswalkFile, readFileSync(crosswalkFile, 'utf8'));
  const drafted = await draftCrosswalk(from, paths, 'drafted');
  if (crosswalk === null || 'problems' in drafted) throw new Error('neither can be read');
  const sum = { columns: 0, right: 0, patterns: 0, patternsRight: 0, codesRight: 0, codesWrong: 0, codesOpen: 0 };
  const wrong: string[] = [];
  for (const rule of crosswalk.files) {
    const file = drafted.files.find(({ patterns }) => patterns.some((pattern) => rule.patterns.includes(pattern)));
    if (file === undefined) throw new Error(`nothing was drafted for ${rule.patterns.join(', ')}`);
    for (const column of rule.columns) {
      const [wanted, proposed] = [useIn(rule, column), useProposed(file, column)];
      sum.columns++;
      if (wanted === proposed && file.table === rule.table) sum.right++;
      else if (proposed !== 'undecided') wrong.push(`${rule.table.name}.${column}: ${proposed}, not ${wanted}`);
    }
    const patterns = patternsOf(file);
    for (const { field, pattern, codes, columns } of rule.fields) {
      if (pattern !== null) {
        sum.patterns++;
        if (patterns.get(field.name) === pattern.text) sum.patternsRight++;
      }
      const proposed = file.columns.find(({ column }) => columns.includes(column))?.codes ?? null;
      for (const [text, meaning] of field.type === 'code' ? (codes ?? []) : []) {
        if (Array.isArray(meaning)) continue;
        const said = proposed?.get(text) ?? null;
        sum[said === null ? 'codesOpen' : said === meaning ? 'codesRight' : 'codesWrong']++;
      }
    }
  }
  return {
    columns: sum.columns,
    right: sum.right,
    wrong,
    patterns: [sum.patternsRight, sum.patterns],
    codes: [sum.codesRight, sum.codesWrong, sum.codesOpen],
  };
}
