import type { Element } from 'hast';
import { s } from 'hastscript';
import { chartWords } from '../chart-words.js';
import { tickText } from '../shown-scale.js';
import { textWidth } from '../text-width.js';
import type { FrequencyClasses } from './frequency-classes.js';
import { type Fill, fillClass } from './hatching.js';
import { box, written } from './path.js';
import { skipMark } from './skip-mark.js';

/** How deep the legend stands below a drawing. */
export const craftLegendDepth = 64;

const words = chartWords.craft;

const size = 12;
const swatch = 26;

/** What every tone, hatching and mark of the drawing means, in two rows; some only where one of the fills is drawn. */
export function craftLegend(
  { edges }: FrequencyClasses,
  valueLabel: string,
  width: number,
  down: number,
  fills: ReadonlySet<Fill>,
): Element {
  const names = ['', ...edges].map((_, at) => {
    const [from, to] = [edges[at - 1], edges[at]];
    if (from === undefined) return to === undefined ? words.found : words.under(tickText(to));
    return to === undefined ? words.orMore(tickText(from)) : words.between(tickText(from), tickText(to));
  });
  const isClassed = !fills.has('found on few') || [1, 2, 3, 4].some((tone) => fills.has(tone as Fill));
  const classes = [
    ...(isClassed ? names.map((name, at) => ({ name, swatch: sample((at + 1) as Fill) })) : []),
    ...(fills.has('found on few') ? [{ name: words.onFew, swatch: sample('found on few') }] : []),
  ];
  const others = [
    { name: words.noneFound, swatch: sample('none found') },
    { name: words.tooFew, swatch: sample('too few looks') },
    ...(fills.has('withheld') ? [{ name: words.withheld, swatch: sample('withheld') }] : []),
    { name: words.notRecorded, swatch: sample('not recorded') },
    { name: words.oftenSkipped, swatch: s('g', [skipMark(swatch - 7, 6)]) },
  ];
  const lead = `${valueLabel}:`;
  return s('g', { className: ['legend'], transform: `translate(0,${down})` }, [
    ...(isClassed ? [s('text', { x: 14, y: 22 }, [lead])] : []),
    ...row(classes, 14 + (isClassed ? textWidth(lead, size) + 12 : 0), 12),
    ...row(others, 14, 38),
    s('line', { x1: 14, x2: width - 14, y1: 2, y2: 2 }),
  ]);
}

function sample(fill: Fill): Element {
  return s('path', { d: written(box(0, 0, swatch, 13)), className: [fillClass(fill)] });
}

function row(
  entries: readonly { readonly name: string; readonly swatch: Element }[],
  from: number,
  down: number,
): Element[] {
  let x = from;
  return entries.map((entry) => {
    const element = s('g', { transform: `translate(${x},${down})` }, [
      entry.swatch,
      s('text', { x: swatch + 7, y: 11 }, [entry.name]),
    ]);
    x += swatch + 7 + textWidth(entry.name, size) + 20;
    return element;
  });
}
