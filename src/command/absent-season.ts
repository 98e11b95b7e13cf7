import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import { inDocument, type Problem } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import { seasonsIn } from '../report/choice/filter-offers.js';

/**
 * Seasons that a notebook asks about by its inputs and no inspection among the records chosen is of: everything counted of
 * them is empty, which is no mistake of the notebook, but seldom what was meant. They are told and make no exit code.
 */
export function absentSeasons({ file, inputs }: EvaluatedNotebook, records: Book): readonly Problem[] {
  const seasons = seasonsIn(records);
  if (seasons.length === 0) return [];
  return [...inputs.values()].flatMap(({ name, unit, value, line }): readonly Problem[] => {
    const isSeason = unit === 'year' && name.split('_').includes('season') && value.kind === 'number';
    if (!isSeason || value.value === null || seasons.includes(String(value.value))) return [];
    return [
      {
        code: 'no-such-season',
        severity: 'notes',
        place: inDocument(file, line, 1),
        seen: `${name}, ${value.value}`,
        wanted: `a season of the records counted: ${seasons.join(', ')}`,
        remedy: `Change ${name} there, or give --with ${name}=${seasons.at(-1)!}; else what is counted of it stays empty.`,
      },
    ];
  });
}
