import type { Element, ElementContent } from 'hast';
import { s } from 'hastscript';
import { chartWords } from '../chart-words.js';
import type { Said } from '../settle-svg.js';
import { textWidth } from '../text-width.js';
import type { CraftDrawing, PlacedView } from './craft-drawing.js';
import { labelsApart, layoutCraft, margin } from './craft-layout.js';
import { craftLegend, craftLegendDepth } from './craft-legend.js';
import { scaleClass } from './craft-style.js';
import type { FrequencyClasses } from './frequency-classes.js';
import { fillClass, fillOf } from './hatching.js';
import type { Placed } from './label-places.js';
import type { PartFinding } from './part-findings.js';
import { written } from './path.js';
import { skipMark } from './skip-mark.js';
import { isRegion, type Line, type Region } from './view.js';

const top = 14;
const viewNameSize = 11;
const words = chartWords.craft.said;

/** What a drawing of a craft is made from. */
export interface CraftPicture {
  readonly drawing: CraftDrawing;
  readonly parts: ReadonlyMap<string, PartFinding>;
  readonly classes: FrequencyClasses;
  readonly valueLabel: string;
  /** The address that a part leads to; null where nothing leads anywhere, as on paper. */
  readonly addressOf: ((component: string) => string) | null;
  /** The chart of the page that has the same drawing, which is then not drawn twice; null where there is none. */
  readonly drawnBy: string | null;
}

/** The address of what a chart of a craft draws, by which it can be shown once more. */
function drawingId(chart: string): string {
  return `${chart}-drawing`;
}

/** A craft with its parts toned and hatched by how often they were fouled, each with findings labelled in the margins. */
export function craftSvg(said: Said, picture: CraftPicture): Element {
  const { drawing, parts, classes } = picture;
  const layout = layoutCraft(drawing, new Set(parts.keys()));
  const legendTop = top + layout.height + 6;
  const fills = new Set([...parts.values()].map((part) => fillOf(part, classes.classOf)));
  return s(
    'svg',
    {
      className: ['drawing', 'craft'],
      viewBox: `0 0 ${layout.width} ${legendTop + craftLegendDepth}`,
      width: layout.width,
      height: legendTop + craftLegendDepth,
      fontSize: '13',
      fill: 'none',
      strokeLinejoin: 'round',
      strokeLinecap: 'round',
      // An image has no parts for a reader to meet; its words would be lost, so that only a copy is one.
      role: picture.drawnBy === null ? 'group' : 'img',
      ariaLabelledBy: [`${said.name}-title`],
      ariaDescribedBy: [`${said.name}-description`],
    },
    [
      s('title', { id: `${said.name}-title` }, [said.title]),
      s('desc', { id: `${said.name}-description` }, [said.description]),
      picture.drawnBy === null
        ? s('g', { id: drawingId(said.name), className: ['drawn'] }, drawn())
        : s('use', { href: `#${drawingId(picture.drawnBy)}` }),
    ],
  );

  function drawn(): ElementContent[] {
    return [
      s('g', { transform: `translate(${margin},${top})` }, [
        ...drawing.views.map(viewMarks),
        ...layout.labels.map((label) => leader(label, drawing.width)),
        ...drawing.views.flatMap(viewName),
      ]),
      ...layout.labels.map((label) => labelText(label, parts.get(label.name)!, layout.width)),
      craftLegend(classes, picture.valueLabel, layout.width, legendTop, fills),
    ];
  }

  function viewMarks({ view, left, top: down, scale }: PlacedView): Element {
    const place = `translate(${left},${down})`;
    const properties =
      scale === 1 ? { transform: place } : { className: [scaleClass(scale)], transform: `${place} scale(${scale})` };
    const marks = view.marks.map((mark) => (isRegion(mark) ? region(mark) : stroke(mark)));
    return s('g', properties, marks);
  }

  function region({ component, d, at }: Region): Element {
    const kind = fillOf(parts.get(component) ?? null, classes.classOf);
    const shape = s('path', { d: written(d), className: [fillClass(kind)] });
    const title = s('title', [saidOf(component, parts.get(component) ?? null)]);
    const { addressOf } = picture;
    return addressOf !== null && parts.has(component) && at !== null
      ? s('a', { className: ['part'], href: addressOf(component) }, [title, shape])
      : s('g', [title, shape]);
  }
}

function stroke({ weight, d, covers }: Line): Element {
  const classes = [...(weight === 'detail' ? [] : [weight]), ...(covers ? ['covers'] : [])];
  return s('path', { d: written(d), className: classes.length === 0 ? undefined : classes });
}

/** A part in words: what a pointer or a screen reader meets on the drawing. */
export function saidOf(component: string, part: PartFinding | null): string {
  if (part === null) return words.noLooks(component);
  const skipped = part.skippedShown === '' ? '' : words.skippedOn(part.skippedShown);
  if (part.standing === 'withheld') return words.withheld(component) + skipped;
  if (part.standing === 'too few looks') return words.tooFew(component) + skipped;
  if (part.standing === 'none found') return words.noneFound(component, part.interval) + skipped;
  const place = part.rank === null ? part.place : words.place(part.place);
  return words.fouled(component, place, part.few ? part.counted : part.shown, part.interval) + skipped;
}

/** A view's name below it, upon paper of its own, so that it can be read where a leader crosses it. */
function viewName({ view, left, top: down, scale }: PlacedView): Element[] {
  const [x, y] = [rounded(left + (view.width * scale) / 2), rounded(down + view.height * scale + 12)];
  const width = rounded(textWidth(view.name, viewNameSize));
  return [
    s('rect', { className: ['behind-name'], x: x - width / 2, y: y - 9, width, height: 12 }),
    s('text', { className: ['view'], x, y }, [view.name]),
  ];
}

/** A level start from the label, then straight to the point, with a rim of paper so that it shows upon hatching. */
function leader({ edge, x, y, top: down }: Placed, width: number): Element {
  const [start, bend] = edge === 'left' ? [-16, 0] : [width + 16, width];
  const d = `M${start} ${rounded(down)}H${bend}L${rounded(x)} ${rounded(y)}`;
  return s('g', { className: ['leader'] }, [
    s('path', { d, className: ['rim'] }),
    s('path', { d }),
    s('circle', { cx: rounded(x), cy: rounded(y), r: 2.6 }),
  ]);
}

function rounded(value: number): number {
  return Number(value.toFixed(1));
}

/** The rank in a ring, the part's name, and its figures; nearest the drawing stands the ring. */
function labelText(label: Placed, part: PartFinding, width: number): Element {
  const left = label.edge === 'left';
  const ring = left ? margin - 28 : width - margin + 28;
  const beside = left ? -19 : 19;
  const classes = [
    'label',
    ...(left ? ['left'] : []),
    ...(part.rank !== null && part.rank <= 3 ? ['first'] : []),
    ...(part.standing === 'too few looks' ? ['few'] : []),
  ];
  return s('g', { className: classes, transform: `translate(${ring},${rounded(top + label.top)})` }, [
    s('circle', { r: 12 }),
    s('text', { className: ['ring'], y: 4.5 }, [ringText(part)]),
    s('text', { className: ['words'], x: beside, y: -3 }, [part.component]),
    s(
      'text',
      { className: ['words', 'value'], x: beside, y: labelsApart / 2 - 6 },
      // Its mark says that it is often skipped; both words would not fit.
      [part.oftenSkipped && part.standing !== 'withheld' ? part.short + words.skipped(part.skippedShown) : part.short],
    ),
    ...(part.oftenSkipped ? [skipMark(left ? 12 : -12, -10)] : []),
  ]);
}

function ringText({ rank, standing }: PartFinding): string {
  if (rank !== null) return String(rank);
  return { fouled: '•', 'none found': '–', 'too few looks': '?', withheld: '×' }[standing];
}
