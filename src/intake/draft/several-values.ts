import { profilesOf } from './column-profile.js';
import type { Sample } from './sample.js';

const separators = [';', '|', '/', ','];

/** A good part of the cells hold one value, and nearly all values that stand with others are met alone too. */
const leastAlone = 0.2;
const leastKnown = 0.9;

const partsOf = (text: string, separator: string): readonly string[] =>
  text
    .split(separator)
    .map((part) => part.trim())
    .filter((part) => part !== '');

function separatorOf(values: readonly (readonly [string, number])[], filled: number): string | null {
  // Two letters in a row: days, times and decimal numbers are no lists.
  const isWord = (text: string) => /\p{L}{2}/u.test(text);
  return (
    separators.find((separator) => {
      const alone = values.filter(([text]) => !text.includes(separator));
      const known = new Set(alone.map(([text]) => text));
      const parts = values.flatMap(([text, times]) =>
        known.has(text) ? [] : partsOf(text, separator).map((part) => [part, times] as const),
      );
      const sum = (pairs: readonly (readonly [string, number])[]) => pairs.reduce((all, [, times]) => all + times, 0);
      const isKnown = sum(parts.filter(([part]) => isWord(part) && known.has(part))) >= sum(parts) * leastKnown;
      return parts.length > 0 && isKnown && sum(alone) >= filled * leastAlone;
    }) ?? null
  );
}

/** What stands between several values in the cells of a column, by its heading; columns of one value are left out. */
export function separatorsIn(samples: readonly Sample[]): ReadonlyMap<string, string> {
  const rows = samples.flatMap((sample) => sample.rows);
  return new Map(
    profilesOf(samples[0]!.headings, rows).flatMap(({ heading, values, filled }) => {
      const separator = separatorOf(values, filled);
      return separator === null ? [] : [[heading, separator] as const];
    }),
  );
}

/** The same samples with the first value alone in cells that hold several. */
export function firstValues(samples: readonly Sample[], between: ReadonlyMap<string, string>): readonly Sample[] {
  if (between.size === 0) return samples;
  return samples.map((sample) => {
    const marks = sample.headings.map((heading) => between.get(heading));
    const first = (text: string, mark: string | undefined) =>
      mark === undefined ? text : (partsOf(text, mark)[0] ?? '');
    return { ...sample, rows: sample.rows.map((row) => row.map((text, place) => first(text, marks[place]))) };
  });
}
