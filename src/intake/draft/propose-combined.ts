import type { TableDefinition } from '../../record/field.js';
import { timeOfDayIn } from './date-order.js';
import type { KnownColumn } from './field-fit.js';
import { phrasesOf } from './field-words.js';
import { likeness, wordsOf } from './heading.js';
import type { CombineProposal } from './proposal.js';

const dayWords = ['day', 'date', 'inspection date', 'calendar date'].map(wordsOf);

/**
 * Times of day beside one column of dates, each joined with it to a moment of the table; none where no date column is
 * called a day or date, or the table's moments are given already.
 */
export function proposeCombined(
  table: TableDefinition,
  columns: readonly KnownColumn[],
  given: ReadonlySet<string>,
): readonly CombineProposal[] {
  const dayLikeness = ({ profile }: KnownColumn) =>
    Math.max(...dayWords.map((phrase) => likeness(wordsOf(profile.heading), phrase)));
  const date = columns
    .filter(({ order }) => order !== null && !order.hasTime)
    .sort((a, b) => dayLikeness(b) - dayLikeness(a))[0];
  if (date === undefined || dayLikeness(date) < 0.5) return [];
  const moments = table.fields.filter(({ name, type }) => type === 'instant' && !given.has(name));
  const taken = new Set<string>();
  const { pattern, rival } = date.order!;
  const questions = rival === null ? [] : [`Are these dates ${pattern} or ${rival}? No row of the sample tells.`];
  return columns.flatMap(({ profile }): readonly CombineProposal[] => {
    const time = timeOfDayIn(profile);
    if (time === null) return [];
    const words = wordsOf(profile.heading);
    const rated = moments
      .filter(({ name }) => !taken.has(name))
      .map(({ name }) => ({
        name,
        rate: Math.max(...phrasesOf(table.name, name).map((phrase) => likeness(words, phrase))),
      }))
      .sort((a, b) => b.rate - a.rate)[0];
    if (rated === undefined || rated.rate < 0.5) return [];
    taken.add(rated.name);
    return [
      {
        field: rated.name,
        columns: [date.profile.heading, profile.heading],
        pattern: `${pattern} ${time}`,
        sureness: rated.rate >= 0.8 ? 'sure' : 'likely',
        why: `times of day as ${time}, and ${date.profile.heading} tells the day`,
        questions,
      },
    ];
  });
}
