import type { PageResults } from '../results/page-results.js';
import { type Cause, type ChangedDefinition, type ChangedInput, causes, type Why } from './comparison.js';

/** Tells of a name why it may differ between two renderings; `resampled` names have limits or values from resampling. */
export type WhyOf = (name: string, resampled: boolean) => Why;

/**
 * What may have moved a name: records it stands on, a definition or an input at or under it, the choice that the page was made
 * for, how its limits were resampled, and the program. Where several differ the pages cannot tell how much each did, so all of
 * them are named; where none of them is known to reach it, the differences of the records and of the program are named.
 */
export function whyOf(
  before: PageResults,
  after: PageResults,
  inputs: readonly ChangedInput[],
  definitions: readonly ChangedDefinition[],
): WhyOf {
  const needs = needsOfBoth(before, after);
  const countsRecords = namesOnRecords(before, after);
  const differs: Readonly<Record<Exclude<Cause, 'formula' | 'input'>, boolean>> = {
    data: before.records !== after.records,
    choice: before.chosen.join('\n') !== after.chosen.join('\n'),
    resampling: before.seed !== after.seed || before.resamples !== after.resamples,
    program: before.program.fingerprint !== after.program.fingerprint,
  };
  return (name, resampled) => {
    const under = namesUnder(name, needs);
    const changed = (names: readonly { readonly name: string }[]) =>
      names.map((one) => one.name).filter((one) => under.has(one));
    const [movedBy, defined] = [changed(inputs), changed(definitions)];
    const onRecords = [...under].some((one) => countsRecords.has(one));
    const reached = new Set<Cause>([
      ...(differs.data && onRecords ? (['data'] as const) : []),
      ...(defined.length > 0 ? (['formula'] as const) : []),
      ...(movedBy.length > 0 ? (['input'] as const) : []),
      ...(differs.choice && onRecords ? (['choice'] as const) : []),
      ...(differs.resampling && resampled ? (['resampling'] as const) : []),
      ...(differs.program ? (['program'] as const) : []),
    ]);
    if (reached.size === 0) {
      for (const cause of ['data', 'choice', 'resampling'] as const) if (differs[cause]) reached.add(cause);
    }
    return { causes: causes.filter((cause) => reached.has(cause)), inputs: movedBy, formulas: defined };
  };
}

function needsOfBoth(...pages: readonly PageResults[]): ReadonlyMap<string, readonly string[]> {
  const needs = new Map<string, readonly string[]>();
  for (const { figures, selections, sheets } of pages) {
    for (const one of [...figures, ...selections, ...sheets]) {
      needs.set(one.name, [...(needs.get(one.name) ?? []), ...one.needs]);
    }
  }
  return needs;
}

/** Selections and sheets are made of records; figures are where records were counted for them. */
function namesOnRecords(...pages: readonly PageResults[]): ReadonlySet<string> {
  return new Set(
    pages.flatMap(({ figures, selections, sheets }) =>
      [...figures.filter(({ records }) => records.length > 0), ...selections, ...sheets].map(({ name }) => name),
    ),
  );
}

function namesUnder(name: string, needs: ReadonlyMap<string, readonly string[]>): ReadonlySet<string> {
  const under = new Set([name]);
  for (const one of under) for (const need of needs.get(one) ?? []) under.add(need);
  return under;
}
