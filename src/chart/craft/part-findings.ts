import { enoughEvents } from '../../finding/small-numbers.js';
import type { Result } from '../../formula/result.js';
import { isWithheld, showFraction, showInterval, showNumber, showResult } from '../../notebook/shown.js';
import { components } from '../../record/components.js';
import type { AskedChart, PlacedColumn } from '../chart-kind.js';
import { keyText } from '../key-text.js';
import { numberOf } from '../points.js';
import { shownScale } from '../shown-scale.js';

/** What the records say of a part: how often it was fouled, that nothing was found, that too few looked, or that it may not be told. */
export type Standing = 'fouled' | 'none found' | 'too few looks' | 'withheld';

/** A part with its figures, as the drawing shows them. */
export interface PartFinding {
  readonly component: string;
  readonly standing: Standing;
  /** Its place by the value, 1 the most often fouled, equal values alike; null unless fouled on enough craft to be placed. */
  readonly rank: number | null;
  /** The place as readers see it; empty unless fouled. */
  readonly place: string;
  /** On the scale that readers see, such as percent; null where too few looked. */
  readonly value: number | null;
  readonly shown: string;
  /** The value short enough for a label, whose legend says the unit. */
  readonly short: string;
  readonly interval: string;
  readonly counted: string;
  /** Whether it is a share of so few craft that it is told as a count alone: of fewer than five. */
  readonly few: boolean;
  /** Whether it is a share of no craft at all, which has no value. */
  readonly ofNone: boolean;
  readonly looks: number | null;
  /** Skipped share, in percent, and as readers see it; null where not known. */
  readonly skipped: number | null;
  readonly skippedShown: string;
  /** Whether its skipped share is as large as the drawing marks. */
  readonly oftenSkipped: boolean;
}

/** The limits that a drawing's address sets. */
export interface Limits {
  /** Fewer looks than this say nothing. */
  readonly fewest: number;
  /** A skipped share of at least this many percent is marked. */
  readonly often: number;
}

/** Every part of the sheet, in its order, with its place by the value asked for. */
export function partFindings(asked: AskedChart, limits: Limits): readonly PartFinding[] {
  const { sheet, columns } = asked;
  const value = columns.get('value')!;
  const { times } = shownScale(sheet, value);
  const at = (row: number, word: string) => {
    const placed = columns.get(word);
    return placed === undefined ? null : sheet.rows[row]!.cells[placed.at]!;
  };
  const number = (row: number, word: string): number | null => {
    const cell = at(row, word);
    return cell === null ? null : numberOf(cell);
  };
  const found = sheet.rows.map(({ cells }, row): PartFinding => {
    const cell = cells[value.at]!;
    const looks = number(row, 'looks');
    // A share of no fouled craft has no value; but many looks that found none say that none was found.
    const ofNone = cell.kind === 'number' && cell.denominator === 0 && looks !== null;
    const own = numberOf(cell) ?? (ofNone ? 0 : null);
    const withheld = isWithheld(cell);
    const tooFew = own === null || (looks !== null && looks < limits.fewest);
    const word = withheld ? 'withheld' : 'too few looks';
    const standing = tooFew ? word : own === 0 ? 'none found' : 'fouled';
    const skipped = number(row, 'skipped');
    const few =
      !tooFew && own > 0 && cell.kind === 'number' && cell.denominator !== null && cell.denominator < enoughEvents;
    return {
      component: keyText(cells[columns.get('part')!.at]!),
      standing,
      rank: null,
      place: '',
      value: tooFew ? null : own * times,
      shown: tooFew ? word : showResult(cell, value.column.shownAs),
      short: few ? showFraction(cell) : shortOf(cell, standing, value.column.shownAs),
      interval: tooFew ? '' : showInterval(cell, value.column.shownAs),
      counted: cell.kind === 'number' ? showFraction(cell) : '',
      few,
      ofNone,
      looks,
      skipped: skipped === null ? null : skipped * 100,
      skippedShown: skipped === null ? '' : showResult(at(row, 'skipped')!, columns.get('skipped')!.column.shownAs),
      oftenSkipped: skipped !== null && skipped * 100 >= limits.often,
    };
  });
  const enough = found.map(({ standing }, row) => {
    const cell = sheet.rows[row]!.cells[value.at]!;
    const cases = cell.kind === 'number' ? cell.numerator : null;
    return standing === 'fouled' && (cases === null || cases >= enoughEvents);
  });
  return found.map((part, row) => {
    if (part.standing !== 'fouled') return part;
    if (!enough[row]) return { ...part, place: 'too few to place' };
    const rank = 1 + found.filter((other, at) => enough[at] && other.value! > part.value!).length;
    return { ...part, rank, place: String(rank) };
  });
}

/**
 * Parts in the order a reader takes them: by place; then those fouled on too few craft to have one, none found, and too few
 * looks, each in the order of the walk around a craft, since these records do not order them. Withheld ones stand last.
 */
export function inReadingOrder(parts: readonly PartFinding[]): readonly PartFinding[] {
  const standings: readonly Standing[] = ['fouled', 'none found', 'too few looks', 'withheld'];
  const walk = components.map(({ component }) => component);
  return [...parts].sort(
    (one, other) =>
      standings.indexOf(one.standing) - standings.indexOf(other.standing) ||
      (one.rank ?? parts.length + 1) - (other.rank ?? parts.length + 1) ||
      walk.indexOf(one.component) - walk.indexOf(other.component),
  );
}

function shortOf(cell: Result, standing: Standing, shownAs: string): string {
  if (standing === 'withheld') return standing;
  if (standing === 'none found') return 'none';
  if (standing === 'too few looks' || cell.kind !== 'number' || cell.value === null) return 'too few';
  return `${showNumber(cell.value, shownAs, cell.unit)}${shownAs.startsWith('percent') ? ' %' : ''}`;
}

/** The words over the values: `Share of fouled craft, %`. */
export function valueLabel(asked: AskedChart): string {
  return shownScale(asked.sheet, asked.columns.get('value') as PlacedColumn).label;
}
