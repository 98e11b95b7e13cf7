import type { Problem } from '../problem/problem.js';
import { problemAt, type TextPlace } from './place.js';
import { formulaBounds, Reader } from './reader.js';
import type { Formula } from './tree.js';

/** Reads a formula by the rules of `grammar` into a tree, or says everything that keeps it from being one. Any text gives one or the other. */
export function parseFormula(
  text: string,
  at: TextPlace,
): { readonly tree: Formula } | { readonly problems: readonly Problem[] } {
  const placed = { text, at };
  const span = { offset: 0, end: text.length };
  if (text.length > formulaBounds.characters) {
    const wanted = `at most ${formulaBounds.characters} characters`;
    return {
      problems: [problemAt(placed, span, { code: 'too-long', wanted, remedy: 'Split it into several figures.' })],
    };
  }
  if (text.trim() === '') {
    const mistake = { code: 'no-formula', wanted: 'a formula', remedy: 'Write one, such as count(inspections).' };
    return { problems: [problemAt(placed, span, mistake)] };
  }
  const reader = new Reader(placed);
  const body = reader.formula();
  if (reader.problems.length > 0) {
    return { problems: reader.problems.toSorted((one, other) => place(one) - place(other)) };
  }
  return { tree: { text, at, body } };
}

function place(problem: Problem): number {
  return problem.place.line * 1e6 + (problem.place.column ?? 0);
}
