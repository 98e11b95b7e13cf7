import type { BookTable } from '../record/book.js';
import { once } from './book/once.js';
import { type CountedGroup, counting, sharing } from './counted-rows.js';
import { type CraftParts, part } from './craft-parts.js';
import { fouledCraft } from './fouled-craft.js';
import { lookTests } from './look-tests.js';

/** The looks behind each number of a part, by the part's place: a part with sides has two looks and counts once a craft. */
export function looksAt(table: BookTable, rows: Uint32Array, parts: CraftParts): (place: number) => CountedGroup {
  const { components, marks } = parts;
  const tests = lookTests(table, rows, parts);
  const { craftAt, craftOf, isCarried, isLooked, anywhere } = tests;
  const { partsOf } = fouledCraft(parts);
  const groupAt = (place: number): CountedGroup => {
    const name = components[place]!;
    const within = (): Uint32Array => tests.looksAt(place);
    const finds = once(() => tests.findsOn(new Set([place])));
    const seen = (row: number): number => marks[craftAt(row) * components.length + place]!;
    const carried = { words: `checks of ${name} that do not call it absent`, holds: isCarried, within };
    const looked = { words: `looks at ${name}`, holds: isLooked, within };
    const onIt = { words: `looks that found mussels on ${name}`, within: finds };
    const missed = {
      words: `checks of ${name} that were skipped on every side`,
      holds: (row: number) => isCarried(row) && (seen(row) & part.looked) === 0,
      within,
    };
    const alone = {
      words: `looks that found mussels on ${name} and on no other part`,
      holds: (row: number) => partsOf[craftAt(row)] === 1,
      within: finds,
    };
    return {
      rows,
      craftOf,
      rules: {
        carrying: counting(carried),
        looked: counting(looked),
        fouled: counting(onIt),
        fouled_craft: counting(anywhere),
        share_of_fouled: sharing(onIt, anywhere),
        fouled_rate: sharing(onIt, looked),
        skipped: counting(missed),
        skipped_share: sharing(missed, carried),
        sole: counting(alone),
        sole_share: sharing(alone, onIt),
      },
    };
  };
  const groups = new Map<number, CountedGroup>();
  return (place) => {
    const group = groups.get(place) ?? groupAt(place);
    groups.set(place, group);
    return group;
  };
}
