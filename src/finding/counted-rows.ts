import type { CountedRows, FindingTable, ToldRows } from './finding.js';

/** Which rows of a group a number counts, and in which words that is told. */
export interface RowRule {
  readonly words: string;
  readonly holds: (row: number) => boolean;
  /** The only rows of the group for which it can hold; left out where it can hold for any. */
  readonly within?: Uint32Array;
}

/** What one column counts, and among which rows it counts it; null where it is a plain count. */
export interface CountRule {
  readonly counted: RowRule;
  readonly among: RowRule | null;
}

/** What stands behind a row of an answer: the rows of its group, and the rule of each column that counts rows. */
export interface CountedGroup {
  readonly rows: Uint32Array;
  readonly rules: Readonly<Record<string, CountRule>>;
  /** The craft that several rows may be of, which are then counted once; left out where each row counts. */
  readonly craftOf?: (row: number) => number;
}

/** The rows behind the numbers of an answer, found when somebody asks; `groupOf` is asked with a row of the answer. */
export function countedBy(groupOf: (row: number) => CountedGroup | null): NonNullable<FindingTable['counted']> {
  // Several numbers count by one rule: its rows are looked up once.
  const told = new WeakMap<Uint32Array, WeakMap<RowRule, ToldRows>>();
  const toldOnce = (group: CountedGroup, rule: RowRule): ToldRows => {
    const ofGroup = told.get(group.rows) ?? new WeakMap<RowRule, ToldRows>();
    told.set(group.rows, ofGroup);
    const known = ofGroup.get(rule) ?? toldRows(group, rule);
    ofGroup.set(rule, known);
    return known;
  };
  return (row, column): CountedRows | null => {
    const group = groupOf(row);
    const rule = group?.rules[column];
    if (group === null || rule === undefined) return null;
    return {
      numerator: toldOnce(group, rule.counted),
      denominator: rule.among === null ? null : toldOnce(group, rule.among),
      counts: group.craftOf === undefined ? 'rows' : 'craft',
    };
  };
}

function toldRows({ rows, craftOf }: CountedGroup, { words, holds, within = rows }: RowRule): ToldRows {
  const held = rowsThat(holds, within);
  if (craftOf === undefined) return { words, rows: held };
  return { words: `${words}, of ${distinctOf(held, craftOf)} craft`, rows: held };
}

function rowsThat(holds: (row: number) => boolean, rows: Uint32Array): Uint32Array {
  const held = new Uint32Array(rows.length);
  let count = 0;
  for (let at = 0; at < rows.length; at++) {
    held[count] = rows[at]!;
    if (holds(rows[at]!)) count++;
  }
  return held.slice(0, count);
}

/** How many different craft some rows are of; a mark for each craft is far quicker than a set of them. */
function distinctOf(rows: Uint32Array, craftOf: (row: number) => number): number {
  const craft = new Uint32Array(rows.length);
  let most = 0;
  for (let at = 0; at < rows.length; at++) {
    craft[at] = craftOf(rows[at]!);
    if (craft[at]! > most) most = craft[at]!;
  }
  const seen = new Uint8Array(most + 1);
  let count = 0;
  for (let at = 0; at < craft.length; at++) {
    if (seen[craft[at]!] === 1) continue;
    seen[craft[at]!] = 1;
    count++;
  }
  return count;
}
