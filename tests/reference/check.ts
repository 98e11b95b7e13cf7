import type { Case } from './cases.js';
import { agrees, entryOf } from './compare.js';
import { Inputs } from './inputs.js';
import { methods } from './methods.js';

/** One value that is not what was expected. */
export interface Difference {
  readonly id: string;
  readonly key: string;
  readonly expected: unknown;
  readonly got: unknown;
}

/** What became of one case: everything agreed, something differed, or no method of ours answers to its name. */
export type Outcome =
  | { readonly kind: 'held' }
  | { readonly kind: 'not covered' }
  | { readonly kind: 'differs'; readonly differences: readonly Difference[] };

/** Runs one case and compares every expected and every published value. */
export function check(one: Case): Outcome {
  const method = methods[one.method];
  if (method === undefined) return { kind: 'not covered' };
  let values: Readonly<Record<string, unknown>>;
  try {
    values = method(new Inputs(one.inputs));
  } catch (error) {
    const got = error instanceof Error ? error.message : String(error);
    return { kind: 'differs', differences: [{ id: one.id, key: '(the whole case)', expected: 'a result', got }] };
  }
  const differences: Difference[] = [];
  const compare = (key: string, expected: unknown, relative: number, absolute: number) => {
    const got = entryOf(values, key);
    if (!agrees(got, expected, { relative, absolute })) differences.push({ id: one.id, key, expected, got });
  };
  for (const [key, expected] of Object.entries(one.expected)) compare(key, expected, one.rel_tol, 1e-12);
  for (const { key, value, tol } of one.published) compare(key, value, 0, tol);
  return differences.length === 0 ? { kind: 'held' } : { kind: 'differs', differences };
}
