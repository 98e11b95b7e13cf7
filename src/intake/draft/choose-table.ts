import type { TableDefinition } from '../../record/field.js';
import { tables } from '../../record/tables.js';
import { type Assignment, assignFields, worthOf } from './assign-fields.js';
import type { KnownColumn } from './field-fit.js';
import { fileWords } from './field-words.js';
import { likeness, wordsOf } from './heading.js';
import type { Sureness } from './proposal.js';

/** The table that a file's rows are taken for. */
export interface ChosenTable {
  readonly table: TableDefinition;
  readonly assignments: readonly Assignment[];
  readonly sureness: Sureness;
  readonly why: string;
}

function nameLikeness(file: string, table: TableDefinition): number {
  const words = wordsOf(
    file
      .split('/')
      .at(-1)!
      .replace(/\.[^.]*$/u, ''),
  ).filter((word) => !/^\d+$/u.test(word));
  return Math.max(0, ...fileWords[table.name].flatMap((word) => words.map((own) => likeness([own], [word]))));
}

/** The table whose fields the columns fit best, with the name of the file as a further sign. */
export function chooseTable(file: string, columns: readonly KnownColumn[]): ChosenTable {
  const rated = tables
    .map((table) => {
      const assignments = assignFields(table, columns);
      const given = new Set(assignments.map(({ field }) => field));
      const lacking = table.fields.filter((field) => field.required && !given.has(field)).length;
      const worth = assignments.reduce((sum, { fit }) => sum + worthOf(fit), 0);
      const named = nameLikeness(file, table);
      return { table, assignments, named, score: worth + named * 4 - lacking };
    })
    .sort((a, b) => b.score - a.score);
  const [best, next] = [rated[0]!, rated[1]!];
  const clear = best.score > next.score * 1.3;
  const sureness: Sureness = clear && best.named >= 0.8 ? 'sure' : clear || best.named >= 0.8 ? 'likely' : 'unsure';
  const count = `${best.assignments.length} of ${columns.length} columns fit ${best.table.name}`;
  const name = best.named >= 0.8 ? ', and so does the name of the file' : '';
  return { table: best.table, assignments: best.assignments, sureness, why: count + name };
}
