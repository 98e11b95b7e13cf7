import type { FileRule } from './crosswalk.js';
import type { Header } from './header.js';
import type { RecordScanner } from './record-scanner.js';
import { matchesText, type TextPattern } from './text-pattern.js';

/** Which rows of a file are no records and are left out by rule. */
export type LeaveOutCondition =
  | { readonly kind: 'last rows'; readonly count: number }
  | { readonly kind: 'first cell'; readonly like: TextPattern }
  | { readonly kind: 'column'; readonly column: string; readonly is: ReadonlySet<string>; readonly isNot: boolean };

/** A rule by which rows are left out, with the reason that its crosswalk gives. */
export interface LeaveOutRule {
  readonly because: string;
  readonly condition: LeaveOutCondition;
}

/** A row that was left out by rule: it is counted, and its line kept. */
export interface LeftOutRow {
  readonly line: number;
  readonly because: string;
}

/** Tells the rows of one file that are left out by rule. */
export class LeftOutRows {
  readonly rows: LeftOutRow[] = [];
  readonly #scanner: RecordScanner;
  readonly #rules: readonly { readonly rule: LeaveOutRule; readonly position: number }[];
  readonly #lastFrom: number;

  /** @param lastFrom where in the text the last rows begin that a rule leaves out; infinity for none */
  constructor(scanner: RecordScanner, { leaveOut }: FileRule, header: Header, lastFrom: number) {
    this.#scanner = scanner;
    this.#lastFrom = lastFrom;
    this.#rules = leaveOut.map((rule) => {
      const { condition } = rule;
      return { rule, position: condition.kind === 'column' ? header.get(condition.column)! : 0 };
    });
  }

  /** Whether the scanner's row is left out; if so, it is taken down. */
  takes(): boolean {
    for (const { rule, position } of this.#rules) {
      if (!this.#holds(rule.condition, position)) continue;
      this.rows.push({ line: this.#scanner.line, because: rule.because });
      return true;
    }
    return false;
  }

  #holds(condition: LeaveOutCondition, position: number): boolean {
    const { base, recordStart, count } = this.#scanner;
    if (condition.kind === 'last rows') return base + recordStart >= this.#lastFrom;
    if (position >= count) return false;
    const text = this.#scanner.cellText(position).trim();
    return condition.kind === 'first cell'
      ? matchesText(condition.like, text)
      : condition.is.has(text) !== condition.isNot;
  }
}

/** How many of the last rows a file's rules leave out. */
export function lastRowsLeftOut({ leaveOut }: FileRule): number {
  return leaveOut.reduce(
    (most, { condition }) => (condition.kind === 'last rows' ? Math.max(most, condition.count) : most),
    0,
  );
}
