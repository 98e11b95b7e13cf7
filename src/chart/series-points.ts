import type { AskedChart, PlacedColumn, Unfit } from './chart-kind.js';
import { keyText, orderedKeys } from './key-text.js';
import { keyColumns, type Point, pointsOf } from './points.js';
import { mostSeries } from './series.js';

/** The points of one line, in the sheet's order. */
export interface Series {
  readonly name: string;
  readonly points: readonly Point[];
}

/** The column whose values each get a line: the one asked for, or else the one key that is not along the bottom. */
export function seriesColumn(asked: AskedChart, along: PlacedColumn): PlacedColumn | null {
  return asked.columns.get('by') ?? keyColumns(asked).find((key) => key.at !== along.at) ?? null;
}

/** The lines of a chart, or what is wrong where they are too many to tell apart. A line's points are named by `along`. */
export function seriesOf(asked: AskedChart, along: PlacedColumn): readonly Series[] | Unfit {
  const points = pointsOf(asked, [along]);
  const by = seriesColumn(asked, along);
  if (by === null) return [{ name: '', points }];
  const names = orderedKeys(asked.sheet, by).filter((name) =>
    asked.sheet.rows.some(({ cells }) => keyText(cells[by.at]!) === name),
  );
  if (names.length > mostSeries) {
    return {
      code: 'too-many-lines',
      seen: `${names.length} values of ${by.column.name}`,
      wanted: `at most ${mostSeries} lines, which a reader can tell apart without colour`,
      remedy: 'Take fewer rows into the sheet with "where", or draw a heat chart.',
    };
  }
  return names.map((name) => ({
    name,
    points: points.filter(({ row }) => keyText(asked.sheet.rows[row]!.cells[by.at]!) === name),
  }));
}
