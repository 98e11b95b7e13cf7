import { carriedIn, carriedText } from '../results/carried-element.js';
import { shortFingerprint } from '../results/carried-sheet.js';
import type { PageResults } from '../results/page-results.js';
import { listOf, oneOf, shaped, text, truth } from '../results/shape.js';
import { saysTheSame } from './compare-pages.js';
import { type Cause, type Comparison, causes } from './comparison.js';
import { comparisonWords as words } from './comparison-words.js';

/** The form of what a page of changes carries. */
const changesForm = 'rampbook changes 1';

/** What a page of changes carries of one page, so that the folder's page can tell it. */
export interface PageChange {
  readonly name: string;
  /** The fingerprint of what the later rendering carries: the change is told only of that one. */
  readonly rendering: string;
  /** The moment up to which the earlier rendering's records tell. */
  readonly since: string;
  readonly same: boolean;
  readonly summary: string;
}

/** What a page of changes carries. */
export interface ChangesSummary {
  readonly form: typeof changesForm;
  readonly pages: readonly PageChange[];
}

/** The fingerprint of one rendering of a page, from what it carries. */
export function renderingOf(results: PageResults): string {
  return shortFingerprint(carriedText(results));
}

/** A comparison in one line: how many figures and sheets differ, how many beyond their former interval, and the causes. */
export function summaryOf(comparison: Comparison): string {
  if (saysTheSame(comparison)) return words.nothingShort;
  const { figures, sheets } = comparison;
  const beyond = figures.filter((figure) => figure.beyond === 'above' || figure.beyond === 'below').length;
  return words.summary(figures.length, beyond, sheets.length) + words.because(causesOf(comparison));
}

function causesOf({ figures, sheets }: Comparison): readonly string[] {
  const found = new Set<Cause>([...figures, ...sheets].flatMap((changed) => changed.causes));
  return causes.filter((cause) => found.has(cause)).map((cause) => words.causeOf[cause]);
}

/** What a page of these changes carries. */
export function changesSummary(comparisons: readonly Comparison[]): ChangesSummary {
  return {
    form: changesForm,
    pages: comparisons.map((comparison) => ({
      name: comparison.after.name,
      rendering: renderingOf(comparison.after),
      since: comparison.before.asOf,
      same: saysTheSame(comparison),
      summary: summaryOf(comparison),
    })),
  };
}

const shape = shaped({
  form: oneOf(changesForm),
  pages: listOf(shaped({ name: text, rendering: text, since: text, same: truth, summary: text })),
});

/** What a page of changes that this program wrote carries; null for any other page. */
export function readChanges(html: string): ChangesSummary | null {
  const carried = carriedIn(html, 'carried-changes');
  if (carried === null) return null;
  try {
    const value: unknown = JSON.parse(carried);
    return shape(value) ? (value as ChangesSummary) : null;
  } catch {
    return null;
  }
}

/** Whether a page tells changes, written by this program. */
export function listsChanges(html: string): boolean {
  return readChanges(html) !== null;
}
