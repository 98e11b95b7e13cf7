import type { Element, ElementContent } from 'hast';
import { s } from 'hastscript';
import { chartWords } from '../chart-words.js';
import { paint } from '../colours.js';
import type { Said } from '../settle-svg.js';
import type { CraftDrawing, PlacedView } from './craft-drawing.js';
import { labelsApart, layoutCraft, margin } from './craft-layout.js';
import { craftLegend, craftLegendDepth } from './craft-legend.js';
import type { FrequencyClasses } from './frequency-classes.js';
import { type Fill, fillOf, fillPaint, hatchings } from './hatching.js';
import type { Placed } from './label-places.js';
import type { PartFinding } from './part-findings.js';
import { skipMark } from './skip-mark.js';
import { isRegion, type Line, type Region, type Weight } from './view.js';

const widths: Readonly<Record<Weight, number>> = { outline: 1.9, detail: 1, faint: 0.6, behind: 0.8 };
const top = 14;
const words = chartWords.craft.said;

/** What a drawing of a craft is made from. */
export interface CraftPicture {
  readonly drawing: CraftDrawing;
  readonly parts: ReadonlyMap<string, PartFinding>;
  readonly classes: FrequencyClasses;
  readonly valueLabel: string;
  /** The address that a part leads to; null where nothing leads anywhere, as on paper. */
  readonly addressOf: ((component: string) => string) | null;
}

/** A craft with its parts toned and hatched by how often they were fouled, each with findings labelled in the margins. */
export function craftSvg(said: Said, picture: CraftPicture): Element {
  const { drawing, parts, classes } = picture;
  const layout = layoutCraft(drawing, new Set(parts.keys()));
  const legendTop = top + layout.height + 6;
  const withheld = [...parts.values()].some(({ standing }) => standing === 'withheld');
  const fill = (component: string): Fill => fillOf(parts.get(component) ?? null, classes.classOf);
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
      role: 'group',
      ariaLabelledBy: [`${said.name}-title`],
      ariaDescribedBy: [`${said.name}-description`],
    },
    [
      s('title', { id: `${said.name}-title` }, [said.title]),
      s('desc', { id: `${said.name}-description` }, [said.description]),
      s('defs', [...hatchings(said.name, withheld)]),
      s('g', { transform: `translate(${margin},${top})` }, [
        ...drawing.views.flatMap((placed) => viewMarks(placed)),
        ...drawing.views.map(viewName),
        ...layout.labels.map((label) => leader(label, drawing.width)),
      ]),
      ...layout.labels.map((label) => labelText(label, parts.get(label.name)!, layout.width)),
      craftLegend(said.name, picture.classes, picture.valueLabel, layout.width, legendTop, withheld),
    ],
  );

  function viewMarks({ view, left, top: down, scale }: PlacedView): ElementContent[] {
    const marks = view.marks.map((mark) => (isRegion(mark) ? region(mark, scale) : stroke(mark, scale)));
    return [s('g', { transform: `translate(${left},${down})${scale === 1 ? '' : ` scale(${scale})`}` }, marks)];
  }

  function region({ component, d, at }: Region, scale: number): Element {
    const kind = fill(component);
    const shape = s('path', {
      d,
      fill: fillPaint(said.name, kind),
      pointerEvents: kind === 'not recorded' ? 'all' : undefined,
      stroke: paint(kind === 'not recorded' ? 'soft' : 'ink'),
      strokeWidth: (kind === 'not recorded' ? 0.7 : 1.1) / scale,
      strokeDasharray: kind === 'not recorded' ? '1.5 2.5' : kind === 'too few looks' ? '4 2' : undefined,
    });
    const title = s('title', [saidOf(component, parts.get(component) ?? null)]);
    const { addressOf } = picture;
    return addressOf !== null && parts.has(component) && at !== null
      ? s('a', { className: ['part'], href: addressOf(component) }, [title, shape])
      : s('g', [title, shape]);
  }
}

function stroke({ weight, d, covers }: Line, scale: number): Element {
  return s('path', {
    d,
    fill: covers ? paint('paper') : undefined,
    stroke: paint(weight === 'faint' ? 'soft' : 'ink'),
    strokeWidth: widths[weight] / scale,
    strokeDasharray: weight === 'behind' ? '3 3' : undefined,
  });
}

/** A part in words: what a pointer or a screen reader meets on the drawing. */
export function saidOf(component: string, part: PartFinding | null): string {
  if (part === null) return words.noLooks(component);
  const skipped = part.skippedShown === '' ? '' : words.skippedOn(part.skippedShown);
  if (part.standing === 'withheld') return words.withheld(component) + skipped;
  if (part.standing === 'too few looks') return words.tooFew(component) + skipped;
  if (part.standing === 'none found') return words.noneFound(component, part.interval) + skipped;
  const place = part.rank === null ? part.place : words.place(part.place);
  return words.fouled(component, place, part.shown, part.interval) + skipped;
}

function viewName({ view, left, top: down, scale }: PlacedView): Element {
  return s(
    'text',
    {
      x: left + (view.width * scale) / 2,
      y: down + view.height * scale + 12,
      textAnchor: 'middle',
      fontSize: 11,
      fill: paint('soft'),
    },
    [view.name],
  );
}

/** A level start from the label, then straight to the point, with a rim of paper so that it shows upon hatching. */
function leader({ edge, x, y, top: down }: Placed, width: number): Element {
  const [start, bend] = edge === 'left' ? [-16, 0] : [width + 16, width];
  const d = `M ${start} ${rounded(down)} L ${bend} ${rounded(down)} L ${rounded(x)} ${rounded(y)}`;
  return s('g', [
    s('path', { d, stroke: paint('paper'), strokeWidth: 3, strokeOpacity: 0.85 }),
    s('path', { d, stroke: paint('ink'), strokeWidth: 0.8 }),
    s('circle', { cx: rounded(x), cy: rounded(y), r: 2.6, fill: paint('ink'), stroke: paint('paper'), strokeWidth: 1 }),
  ]);
}

function rounded(value: number): number {
  return Number(value.toFixed(1));
}

/** The rank in a ring, the part's name, and its figures; nearest the drawing stands the ring. */
function labelText(label: Placed, part: PartFinding, width: number): Element {
  const left = label.edge === 'left';
  const ring = left ? margin - 28 : width - margin + 28;
  const beside = left ? ring - 19 : ring + 19;
  const anchor = left ? 'end' : 'start';
  const middle = rounded(top + label.top);
  return s('g', { className: ['label'] }, [
    s('circle', {
      cx: ring,
      cy: middle,
      r: 12,
      fill: paint('paper'),
      stroke: paint('ink'),
      strokeWidth: part.rank !== null && part.rank <= 3 ? 2 : 1,
      strokeDasharray: part.standing === 'too few looks' ? '3 2' : undefined,
    }),
    s(
      'text',
      { className: ['ring'], x: ring, y: middle + 4.5, textAnchor: 'middle', fontWeight: 600, fill: paint('ink') },
      [ringText(part)],
    ),
    s('text', { className: ['words'], x: beside, y: middle - 3, textAnchor: anchor, fill: paint('ink') }, [
      part.component,
    ]),
    s(
      'text',
      {
        className: ['words'],
        x: beside,
        y: middle + labelsApart / 2 - 6,
        textAnchor: anchor,
        fontSize: 12,
        fill: paint('soft'),
      },
      // Its mark says that it is often skipped; both words would not fit.
      [part.oftenSkipped && part.standing !== 'withheld' ? part.short + words.skipped(part.skippedShown) : part.short],
    ),
    ...(part.oftenSkipped ? [skipMark(left ? ring + 12 : ring - 12, middle - 10)] : []),
  ]);
}

function ringText({ rank, standing }: PartFinding): string {
  if (rank !== null) return String(rank);
  return { fouled: '•', 'none found': '–', 'too few looks': '?', withheld: '×' }[standing];
}
