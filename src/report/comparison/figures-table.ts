import type { Element } from 'hast';
import { showFraction, showInterval, showNumber, showResult } from '../../notebook/shown.js';
import { anchor, inWords } from '../anchor.js';
import { resultOf } from '../results/carried-value.js';
import type { CarriedValue } from '../results/page-results.js';
import { tableElement } from '../table.js';
import type { ChangedFigure, Moved } from './comparison.js';
import { comparisonWords as words } from './comparison-words.js';
import { whyText } from './why-text.js';

/** Figures that are not as they were: before, now, by how much, whether beyond the former interval, and why. */
export function changedFigures(page: string, figures: readonly ChangedFigure[]): Element {
  return tableElement({
    id: anchor('figures', page),
    caption: words.figures,
    heads: 1,
    head: [words.figure, words.before, words.after, words.moved, words.relative, words.beyond, words.why].map(
      (content) => ({ content }),
    ),
    rows: figures.map((figure) => [
      { content: inWords(figure.name) },
      { content: valueSaid(figure.before, figure.shownAs) },
      { content: valueSaid(figure.after, figure.shownAs) },
      { content: movedSaid(figure), order: figure.by },
      { content: relativeSaid(figure), order: figure.relative },
      { content: figure.by === null ? '' : words.beyondOf(figure.beyond) },
      { content: whyText(figure) },
    ]),
    sortable: figures.length > 1,
  });
}

/** A value with all that a page says of it: its interval and what it was counted from. */
export function valueSaid(value: CarriedValue | null, shownAs: string): string {
  if (value === null) return words.absent;
  const result = resultOf(value);
  const beside = [showInterval(result, shownAs), result.kind === 'number' ? showFraction(result) : ''];
  const why = 'why' in result && result.why !== null ? result.why : '';
  const said = [...beside, why].filter((text) => text !== '').join('; ');
  return said === '' ? showResult(result, shownAs) : `${showResult(result, shownAs)} (${said})`;
}

/** How far a figure moved, in its own unit and format. */
export function movedSaid({ by, shownAs, after }: ChangedFigure): string {
  if (by === null) return '';
  if (shownAs.startsWith('percent')) return words.signed(by, words.points(showNumber(by, shownAs, '')));
  return words.signed(by, showResult(resultOf({ value: by, unit: after?.unit ?? '' }), shownAs));
}

/** How far a value moved, as a share of what it was. */
export function relativeSaid({ relative }: Moved): string {
  return relative === null ? '' : words.relativeOf(relative);
}
