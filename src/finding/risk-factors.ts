import type { BookTable } from '../record/book.js';
import { bookText } from './row-tests.js';

/** Something that may raise or lower the chance of an interception, with the level others are compared with. */
export interface RiskFactor {
  /** The field of inspections that holds its level. */
  readonly field: string;
  readonly label: string;
  readonly reference: string;
}

/** The factors that the trade asks about; which level is the reference: common practice, no source. */
export const riskFactors: readonly RiskFactor[] = [
  { field: 'last_status', label: 'last water’s status', reference: 'negative' },
  { field: 'days_class', label: 'days since on water', reference: 'over 30 days' },
  { field: 'hauled_by', label: 'hauled by', reference: 'owner' },
  { field: 'watercraft_type', label: 'watercraft type', reference: 'open motorboat' },
  { field: 'standing_water', label: 'standing water', reference: 'no' },
  { field: 'vegetation', label: 'vegetation', reference: 'no' },
];

/** Where and which way a craft went: what is held constant while factors are compared. */
export const heldConstant: readonly RiskFactor[] = [
  { field: 'direction', label: 'direction', reference: 'arriving' },
  { field: 'setting', label: 'setting', reference: 'launch' },
];

/** A factor's levels among some rows, in showing order, and each row's level. */
export interface FactorLevels {
  readonly factor: RiskFactor;
  readonly levels: readonly string[];
  /** The place of a row's level among them; −1 where it was not recorded. */
  readonly levelOf: (row: number) => number;
}

/** A factor as some rows hold it; levels that no row has are left away. */
export function levelsOf(table: BookTable, factor: RiskFactor, rows: Uint32Array): FactorLevels {
  const { codes, dictionary } = bookText(table, factor.field);
  const seen = new Uint8Array(dictionary.length);
  for (const row of rows) seen[codes[row]!] = 1;
  const order = table.fields.get(factor.field)?.codes ?? [];
  const present = order.filter((code) => seen[dictionary.indexOf(code, 1)] === 1);
  const place = dictionary.map((text) => present.indexOf(text));
  return { factor, levels: present, levelOf: (row) => place[codes[row]!]! };
}
