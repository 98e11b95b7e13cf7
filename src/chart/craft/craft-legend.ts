import type { Element } from 'hast';
import { s } from 'hastscript';
import { chartWords } from '../chart-words.js';
import { paint } from '../colours.js';
import { tickText } from '../shown-scale.js';
import { textWidth } from '../text-width.js';
import type { FrequencyClasses } from './frequency-classes.js';
import { type Fill, fillPaint } from './hatching.js';
import { skipMark } from './skip-mark.js';

/** How deep the legend stands below a drawing. */
export const craftLegendDepth = 64;

const words = chartWords.craft;

const size = 12;
const swatch = 26;

/** What every tone, hatching and mark of the drawing means, in two rows. */
export function craftLegend(
  chart: string,
  { edges }: FrequencyClasses,
  valueLabel: string,
  width: number,
  down: number,
  withheld: boolean,
): Element {
  const names = ['', ...edges].map((_, at) => {
    const [from, to] = [edges[at - 1], edges[at]];
    if (from === undefined) return to === undefined ? words.found : words.under(tickText(to));
    return to === undefined ? words.orMore(tickText(from)) : words.between(tickText(from), tickText(to));
  });
  const classes = names.map((name, at) => ({ name, swatch: box(chart, (at + 1) as Fill) }));
  const others = [
    { name: words.noneFound, swatch: box(chart, 'none found') },
    { name: words.tooFew, swatch: box(chart, 'too few looks') },
    ...(withheld ? [{ name: words.withheld, swatch: box(chart, 'withheld') }] : []),
    { name: words.notRecorded, swatch: box(chart, 'not recorded') },
    { name: words.oftenSkipped, swatch: s('g', [skipMark(swatch - 7, 6)]) },
  ];
  const lead = `${valueLabel}:`;
  return s('g', { className: ['legend'], transform: `translate(0,${down})` }, [
    s('text', { x: 14, y: 22, fill: paint('soft'), fontSize: size }, [lead]),
    ...row(classes, 14 + textWidth(lead, size) + 12, 12),
    ...row(others, 14, 38),
    s('line', { x1: 14, x2: width - 14, y1: 2, y2: 2, stroke: paint('hair') }),
  ]);
}

function box(chart: string, fill: Fill): Element {
  return s('rect', {
    width: swatch,
    height: 13,
    fill: fillPaint(chart, fill),
    stroke: paint(fill === 'not recorded' ? 'soft' : 'ink'),
    strokeWidth: fill === 'not recorded' ? 0.7 : 1.1,
    strokeDasharray: fill === 'not recorded' ? '1.5 2.5' : fill === 'too few looks' ? '4 2' : undefined,
  });
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
      s('text', { x: swatch + 7, y: 11, fill: paint('ink'), fontSize: size }, [entry.name]),
    ]);
    x += swatch + 7 + textWidth(entry.name, size) + 20;
    return element;
  });
}
