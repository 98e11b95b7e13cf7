import type { FindingTable, RowsBehind, ToldRows } from './finding.js';

/** Which rows a number counts, and in which words that is told. */
export interface RowRule {
  readonly words: string;
  /** Which of them they are; all where left out. */
  readonly holds?: (row: number) => boolean;
  /** The only rows for which it can hold, found when somebody asks; those of the group where left out. */
  readonly within?: () => Uint32Array;
  /** The table of those rows; that of the finding where left out. */
  readonly table?: string;
  /** The field whose numbers are added up; each row, or each craft, counts once where left out. */
  readonly adds?: string;
}

/** What one column counts and among which rows, what else it is made of, and by which model where it counts no rows. */
export interface NumberRule {
  readonly counted: RowRule | null;
  readonly among: RowRule | null;
  readonly uses: readonly RowRule[];
  readonly model: string | null;
}

/** The rule of each column that says which rows stand behind it. */
export type NumberRules = Readonly<Record<string, NumberRule>>;

/** What stands behind a row of an answer: the rows of its group, and the rule of each of its numbers. */
export interface CountedGroup {
  readonly rows: Uint32Array;
  readonly rules: NumberRules;
  /** The craft that several rows may be of, which are then counted once; left out where each row counts. */
  readonly craftOf?: (row: number) => number;
}

/** The rule of a number of rows. */
export function counting(counted: RowRule): NumberRule {
  return { counted, among: null, uses: [], model: null };
}

/** The rule of a share of rows. */
export function sharing(counted: RowRule, among: RowRule): NumberRule {
  return { counted, among, uses: [], model: null };
}

/** The rule of a number that a model makes of rows; `sides` are those that it shows itself as what it counts, and among what. */
export function modelled(
  model: string,
  uses: readonly RowRule[],
  sides: Partial<Pick<NumberRule, 'counted' | 'among'>> = {},
): NumberRule {
  return { counted: null, among: null, ...sides, uses, model };
}

/** The rows behind the numbers of an answer, found when somebody asks; `groupOf` is asked with a row of the answer. */
export function countedBy(groupOf: (row: number) => CountedGroup | null): NonNullable<FindingTable['counted']> {
  // Several numbers count by one rule: its rows are looked up once, whatever group asks where the rule names them itself.
  const told = new WeakMap<object, WeakMap<RowRule, ToldRows>>();
  const toldOnce = (group: CountedGroup, rule: RowRule): ToldRows => {
    const asked = rule.within ?? group.rows;
    const ofGroup = told.get(asked) ?? new WeakMap<RowRule, ToldRows>();
    told.set(asked, ofGroup);
    const known = ofGroup.get(rule) ?? toldRows(group, rule);
    ofGroup.set(rule, known);
    return known;
  };
  return (row, column): RowsBehind | null => {
    const group = groupOf(row);
    const rule = group?.rules[column];
    if (group === null || rule === undefined) return null;
    const side = (own: RowRule | null): ToldRows | null => (own === null ? null : toldOnce(group, own));
    return {
      numerator: side(rule.counted),
      denominator: side(rule.among),
      uses: rule.uses.map((own) => toldOnce(group, own)),
      model: rule.model,
      counts: group.craftOf === undefined ? 'rows' : 'craft',
    };
  };
}

function toldRows({ rows, craftOf }: CountedGroup, { words, holds, within, table, adds }: RowRule): ToldRows {
  const all = within?.() ?? rows;
  const held = holds === undefined ? all : all.filter(holds);
  const where = { rows: held, ...(table === undefined ? {} : { table }), ...(adds === undefined ? {} : { adds }) };
  if (craftOf === undefined || table !== undefined || adds !== undefined) return { words, ...where };
  return { words: `${words}, of ${distinct(held, craftOf)} craft`, ...where };
}

function distinct(rows: Uint32Array, craftOf: (row: number) => number): number {
  const found = new Set<number>();
  // Looks at one craft mostly stand together, and need not be looked up again.
  let last = -1;
  for (const row of rows) {
    const craft = craftOf(row);
    if (craft !== last) found.add(craft);
    last = craft;
  }
  return found.size;
}
