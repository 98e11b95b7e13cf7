import type { EvaluatedSheet } from '../notebook/evaluated.js';
import type { PlacedColumn } from './chart-kind.js';
import type { Point } from './points.js';

/** The marks of a chart in words. */
export interface Marks {
  /** What stands for a row: `dot`, `bar`. */
  readonly mark: string;
  /** What stands for an interval, as the subject of a sentence: `the line`; null where none is drawn. */
  readonly interval: string | null;
  /** What is done where there is no value: `is marked so`, `leaves a gap in its line`. */
  readonly absent: string;
}

/** How to read a chart's marks, and what is not drawn and why, as sentences. */
export function readingOf(points: readonly Point[], named: readonly PlacedColumn[], marks: Marks): string[] {
  const drawn = points.filter((point) => point.value !== null);
  const limited = drawn.filter((point) => point.limits === 'two');
  const key = named.map(({ column }) => column.label).join(' and ');
  const sentences = [`Each ${marks.mark} is one ${key === '' ? 'row' : key}`];
  if (marks.interval !== null && limited.length > 0)
    sentences[0] += `; ${marks.interval} is its ${confidenceOf(limited)}`;
  sentences[0] += '.';
  if (marks.interval === null) return [...sentences, ...absence(points, drawn, marks.absent)];
  if (drawn.some((point) => point.limits === 'upper')) {
    sentences.push(
      'A dashed line from a hollow mark or from zero: no case was seen, and it ends at the one-sided upper limit.',
    );
  }
  if (drawn.some((point) => point.limits === 'lower')) {
    sentences.push('A dashed line below a mark: every trial was a case, and it begins at the one-sided lower limit.');
  }
  if (limited.some((point) => point.high === null)) {
    sentences.push('A line that runs to the edge: its upper limit is not reached.');
  }
  const bare = drawn.filter((point) => point.limits === null).length;
  if (bare > 0 && bare < drawn.length)
    sentences.push(`${bare} of ${drawn.length} have no interval; the table says why.`);
  return [...sentences, ...absence(points, drawn, marks.absent)];
}

/** A column by the name under which one of its marks is spoken of: a quantity counts something, so no mark is one of it. */
export function spokenOf(placed: PlacedColumn, sheet: EvaluatedSheet): PlacedColumn {
  const first = sheet.rows[0]?.cells[placed.at];
  if (first?.kind !== 'number' || first.unit === '') return placed;
  return { ...placed, column: { ...placed.column, label: `row, by its ${placed.column.label}` } };
}

function absence(points: readonly Point[], drawn: readonly Point[], said: string): string[] {
  const absent = points.length - drawn.length;
  return absent === 0
    ? []
    : [`${absent} of ${points.length} without a value: each ${said}, and none is drawn as zero.`];
}

function confidenceOf(points: readonly Point[]): string {
  const confidence = points[0]!.confidence;
  const same = points.every((point) => point.confidence === confidence);
  return confidence === null || !same ? 'interval' : `${Number((confidence * 100).toPrecision(6))} % interval`;
}

/** What it means that some places of a chart stand empty; nothing where none does. */
export function emptyPlaces(empty: number): string[] {
  if (empty <= 0) return [];
  return [
    empty === 1
      ? '1 place is left open: there is no row for it, which is not zero.'
      : `${empty} places are left open: there is no row for them, which is not zero.`,
  ];
}
