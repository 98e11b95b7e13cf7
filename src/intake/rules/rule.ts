import type { Severity } from '../../problem/problem.js';

/**
 * What a crosswalk may make of a rule. One that is not checked says so on the page, since not checked is not clean. A part
 * that reads as absent is no look and is noted, its row kept; where something was found on it, it sets its row aside.
 */
export type Consequence = 'sets aside' | 'notes' | 'not checked' | 'reads as absent';

/** What a rule is held against. */
export type RuleScope = 'crosswalk' | 'files' | 'rows and cells' | 'links and keys' | 'sense' | 'mending' | 'store';

/** A kind of problem that an import can find: what it means, what follows unless a crosswalk says otherwise, and the remedy. */
export interface Rule {
  /** The code by which ledgers and pages name it. */
  readonly code: string;
  readonly scope: RuleScope;
  readonly severity: Severity;
  /** What a crosswalk may set instead, with a reason; empty where the row cannot be kept or the file not be read. */
  readonly instead: readonly Consequence[];
  /** What is wrong, as a clause without a capital. */
  readonly meaning: string;
  readonly remedy: string;
}
