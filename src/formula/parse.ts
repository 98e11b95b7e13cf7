import type { Problem } from '../problem/problem.js';
import { problemAt, type TextPlace } from './place.js';
import { formulaBounds, Reader } from './reader.js';
import type { Formula } from './tree.js';

/**
 * Reads a formula into a tree, or says everything that keeps it from being one. Any text gives one or the other.
 *
 * ```
 * formula    = [ either "of" ] rows  or  either
 * rows       = ( table, selection or nothing ) [ "here" ] [ "where" either ]
 * either     = both { "or" both }
 * both       = negation { "and" negation }
 * negation   = [ "not" ] comparison
 * comparison = sum [ "is" [ "not" ] ( sum or "missing" )
 *                  , or [ "not" ] "in" "(" either { "," either } ")"
 *                  , or [ "not" ] "between" sum "and" sum
 *                  , or ( "<" "<=" ">" ">=" ) sum ]
 * sum        = product { ( "+" "-" ) product }
 * product    = signed { ( "*" "×" "/" "÷" ) signed }
 * signed     = [ "-" ] primary
 * primary    = number, "text", name, name "(" [ formula { "," formula } ] ")", or "(" either ")"
 * ```
 */
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
