import type { AskedChart } from '../../chart/chart-kind.js';
import { inReadingOrder, type PartFinding } from '../../chart/craft/part-findings.js';
import { keyText } from '../../chart/key-text.js';
import type { NumberResult } from '../../formula/result.js';
import { showFraction, showNumber } from '../../notebook/shown.js';
import { componentOf } from '../../record/components.js';
import { words } from '../words.js';

/** A part as a handout lists it, in words from the same figures as the drawing's. */
export interface HandoutPart {
  readonly part: PartFinding;
  /** The value, unless it is a share of too few craft, what it was counted from, and its interval. */
  readonly found: string;
  /** Fouled per 1,000 looks, as a bare number; empty where the sheet has no such column. */
  readonly rate: string;
  /** What makes it easy to miss: skipped, hidden, or the only site. */
  readonly mind: string;
}

/** What a handout says of its craft. */
export interface HandoutParts {
  /** Fouled parts by place, then those without one in the order of the walk, at most so many as asked. */
  readonly first: readonly HandoutPart[];
  /** Fouled parts for which there was no line. */
  readonly alsoFouled: readonly PartFinding[];
  /** Parts often skipped that stand in neither. */
  readonly alsoSkipped: readonly PartFinding[];
}

/** The parts of a handout, at most `most` of them with a line of their own. */
export function handoutParts(asked: AskedChart, parts: readonly PartFinding[], most: number): HandoutParts {
  const fouled = inReadingOrder(parts).filter(({ standing }) => standing === 'fouled');
  return {
    first: fouled.slice(0, most).map((part) => listed(asked, part)),
    alsoFouled: fouled.slice(most),
    alsoSkipped: parts.filter((part) => part.oftenSkipped && !fouled.includes(part)),
  };
}

function listed(asked: AskedChart, part: PartFinding): HandoutPart {
  const row = asked.sheet.rows.find(({ cells }) => keyText(cells[asked.columns.get('part')!.at]!) === part.component);
  const cell = (word: string): NumberResult | null => {
    const placed = asked.columns.get(word);
    const found = placed === undefined || row === undefined ? null : row.cells[placed.at]!;
    return found?.kind === 'number' && found.value !== null ? found : null;
  };
  const shown = (word: string, number: number | null | undefined): string =>
    number === null || number === undefined
      ? words.handout.open
      : showNumber(number, asked.columns.get(word)!.column.shownAs, cell(word)!.unit);
  const value = cell('value');
  const limits = value?.interval;
  const rate = cell('rate');
  const sole = cell('sole');
  return {
    part,
    found: [
      ...(part.few ? [] : [part.shown]),
      ...(part.counted === '' ? [] : [part.counted]),
      ...(limits ? [words.handout.limits(shown('value', limits.low), shown('value', limits.high))] : []),
    ].join('; '),
    rate: rate === null ? '' : shown('rate', rate.value),
    mind: [
      ...(part.oftenSkipped ? [words.handout.skipped(part.skippedShown)] : []),
      ...(componentOf(part.component)?.hidden === true ? [words.handout.hidden] : []),
      ...(sole === null || sole.value === 0 ? [] : [words.handout.sole(showFraction(sole))]),
    ].join('; '),
  };
}
