import type { EvaluatedSheet } from '../notebook/evaluated.js';
import { writtenNumber } from '../record/written-numbers.js';
import type { PlacedColumn } from './chart-kind.js';
import { chartWords as words } from './chart-words.js';
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
  const key = named.map(({ column }) => column.label).join(words.and);
  const sentences = [words.eachIs(marks.mark, key === '' ? words.row : key)];
  if (marks.interval !== null && limited.length > 0) sentences[0] += words.isIts(marks.interval, confidenceOf(limited));
  sentences[0] += '.';
  if (marks.interval === null) return [...sentences, ...absence(points, drawn, marks.absent)];
  if (drawn.some((point) => point.limits === 'upper')) {
    sentences.push(words.upperOnly);
  }
  if (drawn.some((point) => point.limits === 'lower')) {
    sentences.push(words.lowerOnly);
  }
  if (limited.some((point) => point.high === null)) {
    sentences.push(words.notReached);
  }
  const bare = drawn.filter((point) => point.limits === null).length;
  if (bare > 0 && bare < drawn.length) sentences.push(words.withoutInterval(bare, drawn.length));
  return [...sentences, ...absence(points, drawn, marks.absent)];
}

/** A column by the name under which one of its marks is spoken of: a quantity counts something, so no mark is one of it. */
export function spokenOf(placed: PlacedColumn, sheet: EvaluatedSheet): PlacedColumn {
  const first = sheet.rows[0]?.cells[placed.at];
  if (first?.kind !== 'number' || first.unit === '') return placed;
  return { ...placed, column: { ...placed.column, label: words.rowBy(placed.column.label) } };
}

function absence(points: readonly Point[], drawn: readonly Point[], said: string): string[] {
  const withheld = points.filter((point) => point.value === null && point.isWithheld).length;
  const absent = points.length - drawn.length - withheld;
  return [
    ...(absent === 0 ? [] : [words.withoutValue(absent, points.length, said)]),
    ...(withheld === 0 ? [] : [words.withheld(withheld, points.length, said)]),
  ];
}

function confidenceOf(points: readonly Point[]): string {
  const confidence = points[0]!.confidence;
  const same = points.every((point) => point.confidence === confidence);
  return confidence === null || !same
    ? words.interval
    : words.intervalOf(writtenNumber(String(Number((confidence * 100).toPrecision(6)))));
}

/** What it means that some places of a chart stand empty; nothing where none does. */
export function emptyPlaces(empty: number): string[] {
  return empty <= 0 ? [] : [words.emptyPlaces(empty)];
}
