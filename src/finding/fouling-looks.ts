import type { BookTable } from '../record/book.js';
import type { CountedGroup, CountRule, RowRule } from './counted-rows.js';
import { type CraftParts, fouledParts, part } from './craft-parts.js';
import { groupRows } from './group-rows.js';
import { bookText, isValue } from './row-tests.js';

/** The looks behind each number of a part, by the part's place: a part with sides has two looks and counts once a craft. */
export function looksAt(table: BookTable, rows: Uint32Array, parts: CraftParts): (place: number) => CountedGroup {
  const { components, marks, firstRows } = parts;
  const component = bookText(table, 'component');
  const inspection = bookText(table, 'inspection').codes;
  const craftOf = new Uint32Array(bookText(table, 'inspection').dictionary.length);
  firstRows.forEach((row, craft) => {
    craftOf[inspection[row]!] = craft;
  });
  const fouledOn = fouledParts(parts);
  const state = bookText(table, 'state').codes;
  const [absent, skipped] = [isValue(table, 'state', 'absent'), isValue(table, 'state', 'not checked')];
  const [fouled, mussels] = [isValue(table, 'state', 'fouled'), isValue(table, 'finding', 'mussels')];
  const found = (row: number): boolean => fouled(row) && mussels(row);
  const plain = (counted: RowRule): CountRule => ({ counted, among: null });
  const anywhere = { words: 'looks that found mussels on any part', holds: found };
  const rowsOf = new Map(groupRows(table, rows, ['component']).map(({ key, rows: own }) => [key[0], own]));
  const groupAt = (place: number): CountedGroup => {
    const name = components[place]!;
    const within = rowsOf.get(name) ?? new Uint32Array();
    const code = component.dictionary.indexOf(name, 1);
    const seen = (row: number): number => marks[craftOf[inspection[row]!]! * components.length + place]!;
    const isCarried = (row: number): boolean => component.codes[row] === code && state[row] !== 0 && !absent(row);
    const isFound = (row: number): boolean => component.codes[row] === code && found(row);
    const carried = { words: `checks of ${name} that do not call it absent`, holds: isCarried, within };
    const looked = { words: `looks at ${name}`, holds: (row: number) => isCarried(row) && !skipped(row), within };
    const onIt = { words: `looks that found mussels on ${name}`, holds: isFound, within };
    const missed = {
      words: `checks of ${name} that were skipped on every side`,
      holds: (row: number) => isCarried(row) && (seen(row) & part.looked) === 0,
      within,
    };
    const alone = {
      words: `looks that found mussels on ${name} and on no other part`,
      holds: (row: number) => isFound(row) && fouledOn[craftOf[inspection[row]!]!] === 1,
      within,
    };
    return {
      rows,
      craftOf: (row) => inspection[row]!,
      rules: {
        carrying: plain(carried),
        looked: plain(looked),
        fouled: plain(onIt),
        fouled_craft: plain(anywhere),
        share_of_fouled: { counted: onIt, among: anywhere },
        fouled_rate: { counted: onIt, among: looked },
        skipped: plain(missed),
        skipped_share: { counted: missed, among: carried },
        sole: plain(alone),
        sole_share: { counted: alone, among: onIt },
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
