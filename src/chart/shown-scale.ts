import type { EvaluatedSheet } from '../notebook/evaluated.js';
import { shownTimes, unitInHead } from '../notebook/shown.js';
import { writtenNumber } from '../record/written-numbers.js';
import type { PlacedColumn } from './chart-kind.js';

/** How a column's values stand on an axis: multiplied by `times`, under `label`, which names the unit. */
export interface ShownScale {
  readonly times: number;
  readonly label: string;
}

/** The scale on which a column is shown to readers: shares in percent or per 1,000, times in minutes or hours. */
export function shownScale(sheet: EvaluatedSheet, { at, column }: PlacedColumn): ShownScale {
  const first = sheet.rows.map((row) => row.cells[at]!).find((cell) => cell.kind === 'number' && cell.value !== null);
  const unit = first?.kind === 'number' ? first.unit : '';
  const shownUnit = unitInHead(column.shownAs, unit);
  const label = shownUnit === '' || column.label.includes(shownUnit) ? column.label : `${column.label}, ${shownUnit}`;
  return { times: shownTimes(column.shownAs, unit), label: label.charAt(0).toUpperCase() + label.slice(1) };
}

/** A number on an axis: as few digits as say it, in groups of three, with a true minus sign. */
export function tickText(value: number): string {
  const rounded = Number(value.toPrecision(12));
  return writtenNumber(String(rounded));
}
