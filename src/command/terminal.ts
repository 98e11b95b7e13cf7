import { sectionFor } from '../formula/language-sections.js';
import { describeProblem } from '../problem/describe.js';
import type { Problem } from '../problem/problem.js';

/** A text whose control characters are shown by their number: what stood in a cell never moves the cursor. */
export function inert(text: string): string {
  return text.replace(/\p{Cc}/gu, (letter) =>
    letter === '\n' || letter === '\t' ? letter : `\\x${letter.charCodeAt(0).toString(16).padStart(2, '0')}`,
  );
}

/** Prints a line of the answer. */
export function say(line = ''): void {
  process.stdout.write(`${inert(line)}\n`);
}

/** Prints the answer as JSON, indented by two. */
export function sayJson(answer: unknown): void {
  process.stdout.write(`${JSON.stringify(answer, null, 2)}\n`);
}

/** Prints problems where errors go, each with its remedy. */
export function sayProblems(problems: readonly Problem[]): void {
  for (const problem of problems) {
    const section = sectionFor(problem);
    const reference = section === null ? '' : `  See “${section.title}” in the reference of the language.\n`;
    process.stderr.write(inert(`${describeProblem(problem)}\n${reference}`));
  }
}

/** A whole number with its digits in groups of three. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
}

/** A table of text: the first column flush left, the others flush right. */
export function sayTable(rows: readonly (readonly string[])[]): void {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, at) => {
      widths[at] = Math.max(widths[at] ?? 0, cell.length);
    });
  }
  for (const row of rows) {
    say(
      row
        .map((cell, at) => (at === 0 ? cell.padEnd(widths[at]!) : cell.padStart(widths[at]!)))
        .join('  ')
        .trimEnd(),
    );
  }
}
