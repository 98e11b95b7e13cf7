import type { Choice } from '../../finding/book/restricted-book.js';
import { groupRows } from '../../finding/group-rows.js';
import { labelOf } from '../../notebook/key-cell.js';
import type { Book, BookTable } from '../../record/book.js';
import { everyRowOf } from '../../record/every-row.js';

/** The word that stands for a value that was not recorded, in addresses and on the command line. */
export const notRecorded = 'not recorded';

/** A value that a reader may choose: as addresses write it, as it is shown, and as records have it. */
export interface OfferedValue {
  readonly value: string;
  readonly label: string;
  readonly recorded: string | number | null;
}

/** A field that a reader may choose by, with the values that occur among the records, in showing order. */
export interface FilterOffer {
  readonly field: string;
  readonly label: string;
  readonly values: readonly OfferedValue[];
}

/** What a page offers for each field; a field that no table has offers nothing and is left out. */
export function filterOffers(book: Book, fields: readonly string[]): readonly FilterOffer[] {
  return fields.flatMap((field) => {
    const table = tableWith(book, field);
    if (table === null) return [];
    const values = groupRows(table, everyRowOf(table.rowCount), [field]).map(({ key }): OfferedValue => {
      const [value] = key;
      if (value === null || value === undefined) return { value: notRecorded, label: notRecorded, recorded: null };
      const label = table.fields.get(field)!.labels?.get(String(value)) ?? String(value);
      return { value: String(value), label, recorded: value };
    });
    return [{ field, label: labelOf(field), values }];
  });
}

/** The choice that values as addresses write them stand for; a value of no field that is offered is left out. */
export function choiceOf(offers: readonly FilterOffer[], written: ReadonlyMap<string, string>): Choice {
  const choice = new Map<string, string | number | null>();
  for (const { field, values } of offers) {
    const found = values.find(({ value }) => value === written.get(field));
    if (found !== undefined) choice.set(field, found.recorded);
  }
  return choice;
}

/** The seasons of the inspections, ascending, as a reader may choose them for an input that is a year. */
export function seasonsIn(book: Book): readonly string[] {
  const [offer] = filterOffers(book, ['season']);
  return (offer?.values ?? []).map(({ value }) => value).filter((value) => value !== notRecorded);
}

function tableWith(book: Book, field: string): BookTable | null {
  const inspections = book.tables.get('inspections');
  if (inspections?.fields.has(field)) return inspections;
  return [...book.tables.values()].find((table) => table.fields.has(field)) ?? null;
}
