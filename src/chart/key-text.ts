import type { Result } from '../formula/result.js';
import type { EvaluatedSheet } from '../notebook/evaluated.js';
import { showDay, showResult } from '../notebook/shown.js';
import { months, weekdays } from '../record/calendar-names.js';
import type { PlacedColumn } from './chart-kind.js';

/** A group's name as readers see it, or why there is none; a whole number without separators, so that a year reads as a year. */
export function keyText(result: Result): string {
  if (result.kind === 'missing') return result.withheld === true ? 'withheld' : result.why;
  if (result.kind === 'number' && result.value !== null && Number.isInteger(result.value)) return String(result.value);
  return showResult(result, '');
}

/**
 * The names of a key column in the order in which they follow one another: numbers and dates rising, months and weekdays
 * as the calendar has them, other names as the sheet has them. Whole numbers that lie close have no gap: an hour without
 * a row keeps its place. Missing keys come last.
 */
export function orderedKeys(sheet: EvaluatedSheet, { at }: PlacedColumn): readonly string[] {
  const cells = sheet.rows.map((row) => row.cells[at]!);
  const known = cells.filter((cell) => cell.kind !== 'missing');
  const missing = [...new Set(cells.filter((cell) => cell.kind === 'missing').map(keyText))];
  if (known.length > 0 && known.every((cell) => cell.kind === 'number')) {
    return [...orderedNumbers(known.map((cell) => (cell.kind === 'number' ? (cell.value ?? 0) : 0))), ...missing];
  }
  if (known.length > 0 && known.every((cell) => cell.kind === 'date')) {
    const days = [...new Set(known.map((cell) => (cell.kind === 'date' ? cell.day : 0)))].sort((a, b) => a - b);
    return [...days.map(showDay), ...missing];
  }
  const names = [...new Set(known.map(keyText))];
  for (const calendar of [months, weekdays]) {
    if (names.every((name) => calendar.includes(name))) {
      return [...calendar.filter((name) => names.includes(name)), ...missing];
    }
  }
  return [...names, ...missing];
}

function orderedNumbers(numbers: readonly number[]): string[] {
  const rising = [...new Set(numbers)].sort((a, b) => a - b);
  const [first, last] = [rising[0]!, rising.at(-1)!];
  const close = rising.every(Number.isInteger) && last - first < 60;
  const all = close ? Array.from({ length: last - first + 1 }, (_, step) => first + step) : rising;
  return all.map((value) => keyText({ ...plain, value }));
}

const plain = {
  kind: 'number',
  unit: '',
  numerator: null,
  denominator: null,
  interval: null,
  why: null,
  cautions: [],
} as const;

/** A calendar name short enough for an axis: `Jan`, `Mon`; other names as they are. */
export function shortName(name: string): string {
  return months.includes(name) || weekdays.includes(name) ? name.slice(0, 3) : name;
}
