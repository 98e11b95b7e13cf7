import { expect } from 'vitest';
import type { Cell } from './carried.js';

/** Cells are carried to six digits, so that rounding moves a number by at most five millionths of it. */
const rounding = 5.0001e-6;

/** A number, or numbers with limits; null where there is none. */
export type Wanted = Cell | undefined;

function isAlike(seen: Wanted, wanted: Wanted, tolerance: number): boolean {
  if (Array.isArray(seen) && Array.isArray(wanted)) {
    return seen.length === wanted.length && seen.every((one, at) => isAlike(one, wanted[at], tolerance));
  }
  if (typeof seen !== 'number' || typeof wanted !== 'number') return seen === wanted;
  return Math.abs(seen - wanted) <= tolerance * Math.abs(wanted) + 1e-12;
}

/** A value with its limits where it has any, as it is carried. */
export const ofFigure = (figure: { value: number; interval?: { low: number; high: number } }): Cell =>
  figure.interval === undefined ? figure.value : [figure.value, figure.interval.low, figure.interval.high];

/** Holds what a page carries under each name to what was recounted under it, and says every difference at once. */
export function expectAlike(
  carried: Readonly<Record<string, Wanted>>,
  recounted: Readonly<Record<string, Wanted>>,
  tolerance = rounding,
): void {
  const differing = Object.keys(recounted).filter((name) => !isAlike(carried[name], recounted[name], tolerance));
  const listed = (values: Readonly<Record<string, Wanted>>) =>
    Object.fromEntries(differing.map((name) => [name, values[name]]));
  expect(listed(carried), 'on the page, where it differs from the recount').toEqual(listed(recounted));
  expect(differing).toEqual([]);
}

/** Holds the rows of a sheet to recounted ones, by the name of each row, in whatever order; only the recounted columns. */
export function expectSheet(
  rows: readonly Readonly<Record<string, Cell>>[],
  key: string,
  recounted: Readonly<Record<string, Readonly<Record<string, Wanted>>>>,
): void {
  const nameOf = (row: Readonly<Record<string, Cell>>) =>
    key
      .split(' ')
      .map((column) => String(row[column] ?? ''))
      .join('/');
  expect(rows.map(nameOf).sort(), 'rows of the sheet').toEqual(Object.keys(recounted).sort());
  const flat = (entries: readonly (readonly [string, Readonly<Record<string, Wanted>>])[]) =>
    Object.fromEntries(
      entries.flatMap(([name, row]) => Object.entries(row).map(([column, cell]) => [`${name}: ${column}`, cell])),
    );
  expectAlike(flat(rows.map((row) => [nameOf(row), row] as const)), flat(Object.entries(recounted)));
}

/** Recounted rows by name, as `expectSheet` takes them. */
export function rowsOf<T extends object>(
  list: readonly T[],
  nameOf: (row: T) => string,
  rowOf: (row: T) => Readonly<Record<string, Wanted>>,
): Readonly<Record<string, Readonly<Record<string, Wanted>>>> {
  return Object.fromEntries(list.map((row) => [nameOf(row), rowOf(row)]));
}
