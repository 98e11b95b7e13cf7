import type { Cell } from './cell.js';
import type { FieldRule } from './crosswalk.js';
import type { Draft } from './draft.js';
import type { Header } from './header.js';
import { makeCell } from './make-cell.js';
import type { RowRequest } from './read-rows.js';
import type { ZoneClock } from './time-zone.js';

/** A column of the file, the field it gives and the cell that reads it. */
export interface CellReading {
  readonly rule: FieldRule;
  readonly cell: Cell;
  /** Where its columns stand in the header. */
  readonly positions: readonly number[];
}

/** How each field of a file is read into a draft, times by the clock where there is one. */
export function cellReadings(
  { rule, texts, key }: RowRequest,
  clock: ZoneClock | null,
  header: Header,
  draft: Draft,
): readonly CellReading[] {
  return rule.fields.map((fieldRule): CellReading => {
    const cell = makeCell(fieldRule, rule, draft.columnOf(fieldRule.field, texts), clock, key);
    return { rule: fieldRule, cell, positions: fieldRule.columns.map((name) => header.get(name)!) };
  });
}
