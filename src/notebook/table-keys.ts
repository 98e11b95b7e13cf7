import type { Book } from '../record/book.js';

/**
 * A text for each table of a book that stays the same while nothing that its values depend on changes. Tables of station-days
 * borrow fields from one another and are drawn together, so they stand or fall as one; others stand on themselves and on the
 * stations and waters that they may name. A table without a fingerprint depends on the whole import.
 */
export function tableKeys(book: Book, fingerprints: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  const imported = (name: string): string => JSON.stringify(['import', name, book.sum.fingerprint]);
  // Nothing is asked of the tables unless it is needed: their station-days are made on first use.
  if (fingerprints.size === 0) return new Map([...book.tables.keys()].map((name) => [name, imported(name)]));
  const asOf = String(book.sum.asOf);
  const places = ['stations', 'waterbodies'];
  const ofStationDays = [...book.tables.values()].filter(({ clusterOf }) => clusterOf !== null).map(({ name }) => name);
  const keyOf = (names: readonly string[]): string => {
    const known = [...new Set([...names, ...places])].sort().map((name) => `${name} ${fingerprints.get(name) ?? ''}`);
    return JSON.stringify(['table', asOf, ...known]);
  };
  const together = keyOf(ofStationDays);
  return new Map(
    [...book.tables.values()].map(({ name, clusterOf }) => {
      if (!fingerprints.has(name)) return [name, imported(name)];
      return [name, `${name} ${clusterOf === null ? keyOf([name]) : together}`];
    }),
  );
}
