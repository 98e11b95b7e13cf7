import { enoughEvents } from '../../finding/small-numbers.js';
import {
  type AskedChart,
  type ChartKind,
  type ChartOption,
  type Drawing,
  sharedOptions,
  type Unfit,
} from '../chart-kind.js';
import { chartWords } from '../chart-words.js';
import { drawnComponents } from '../craft/craft-drawing.js';
import { type CraftRows, craftRows } from '../craft/craft-rows.js';
import { type CraftPicture, craftSvg } from '../craft/craft-svg.js';
import { drawingOf, drawings } from '../craft/drawings.js';
import { frequencyClasses, readEdges } from '../craft/frequency-classes.js';
import { partFindings, valueLabel } from '../craft/part-findings.js';
import { partAddress, partTable } from '../craft/part-table.js';
import { repeatedName } from '../repeated-name.js';

const words = chartWords.craft;

const column = (word: string, needed: boolean, meaning: string): ChartOption => ({
  word,
  takes: 'column',
  needed,
  meaning,
});

/** The words that a drawing of a craft takes in its address; a handout takes them too. */
export const craftOptions: readonly ChartOption[] = [
  sharedOptions.value,
  column('part', true, 'The column that names the parts, as the catalogue has them.'),
  {
    word: 'craft',
    takes: drawings.map(({ name }) => name),
    needed: true,
    meaning: `Which craft is drawn: ${drawings.map(({ name }) => name).join(', ')}.`,
  },
  column('looks', false, 'The column that counts how many craft had the part looked at.'),
  column('skipped', false, 'The column with the skipped share.'),
  {
    word: 'classes',
    takes: 'list',
    needed: false,
    meaning: 'Where the second, third and fourth class begin, as shown: 10,20,40. Without it, at even steps.',
  },
  {
    word: 'fewest',
    takes: 'number',
    needed: false,
    meaning: 'A part looked at on fewer craft than this reads “too few looks”; without it, on fewer than 20.',
  },
  {
    word: 'often',
    takes: 'number',
    needed: false,
    meaning: 'A skipped share of at least this many percent is marked; without it, 15.',
  },
];

/** A craft drawn from the side, from astern and from above, its parts toned and hatched by how often they were fouled. */
export const craft: ChartKind = {
  name: 'craft',
  shows:
    'A craft drawn from the side, from astern and from above, its parts toned, hatched and numbered by how often they were fouled.',
  options: craftOptions,
  wideOnly: true,
  draw: drawCraft,
};

function drawCraft(asked: AskedChart): Drawing | Unfit {
  const { name } = asked.request;
  const picture = craftPicture(asked, name, (component) => `#${partAddress(name, component)}`);
  if ('code' in picture) return picture;
  const { svg, parts, drawing, caption, counted } = picture;
  const listed = parts.map(({ component }) => component);
  const drawn = drawnComponents(drawing);
  const absent = listed.filter((component) => !drawn.includes(component));
  const unrecorded = drawn.filter((component) => !listed.includes(component));
  const unfound = parts.filter(({ standing }) => standing === 'none found');
  const reading = [
    ...counted,
    'The number is the part’s place, 1 the most often fouled; equal figures share a place.',
    ...(parts.some(({ standing, rank }) => standing === 'fouled' && rank === null)
      ? [`•: fouled, but on fewer than ${enoughEvents} craft, so that these records give it no place.`]
      : []),
    ...(parts.some(({ few, standing }) => few && standing === 'fouled') ? [words.fewInAll(enoughEvents)] : []),
    ...(unfound.length > 0 ? [words.noneNotNone(unfound.some(({ interval }) => interval !== ''))] : []),
    ...(unfound.some(({ ofNone }) => ofNone) ? [words.noneFouled] : []),
    ...(parts.some(({ standing }) => standing === 'too few looks') ? ['?: too few looks to say.'] : []),
    ...(parts.some(({ standing }) => standing === 'withheld')
      ? ['×: withheld, which is neither clean nor none found; places are among the parts that are shown.']
      : []),
    ...(unrecorded.length === 0
      ? []
      : [`Drawn with dots, since no form of these records asks for them: ${unrecorded.join(', ')}.`]),
    ...(absent.length === 0 ? [] : [`In the table but not on this craft: ${absent.join(', ')}.`]),
    'A part leads to its row in the table.',
  ];
  return {
    caption,
    svg: svg(reading.join(' ')),
    reading,
    specification: null,
    dataTable: partTable(name, parts, {
      value: valueLabel(asked),
      looks: asked.columns.has('looks'),
      skipped: asked.columns.has('skipped'),
    }),
  };
}

/** The drawing of a craft under a name of its own, with what it is made from; or why it cannot be drawn. */
export function craftPicture(
  whole: AskedChart,
  name: string,
  addressOf: CraftPicture['addressOf'] = null,
  drawnBy: CraftPicture['drawnBy'] = null,
): CraftWithParts | Unfit {
  const limits = {
    fewest: Number(whole.settings.get('fewest') ?? 20),
    often: Number(whole.settings.get('often') ?? 15),
  };
  const rows = craftRows(whole, drawingOf(whole.settings.get('craft')!)!, limits);
  if ('code' in rows) return rows;
  const { drawing, asked, caption, counted } = rows;
  const parts = partFindings(asked, limits);
  const repeated = repeatedName(
    parts.map(({ component }) => component),
    'part',
  );
  if (repeated !== null) return repeated;
  const written = asked.settings.get('classes');
  const edges = written === undefined ? null : readEdges(written);
  if (written !== undefined && edges === null) return badClasses(written);
  const shown = parts.flatMap(({ value, few }) => (value === null || few ? [] : [value]));
  const drawn = drawnComponents(drawing);
  const picture: CraftPicture = {
    drawing,
    parts: new Map(parts.filter(({ component }) => drawn.includes(component)).map((part) => [part.component, part])),
    classes: frequencyClasses(shown, edges),
    valueLabel: valueLabel(asked),
    addressOf,
    drawnBy,
  };
  const svg = (description: string) => craftSvg({ name, title: caption, description }, picture);
  return { drawing, asked, caption, counted, parts, svg };
}

/** What `craftPicture` gives: the craft and its rows, its parts in their order, and the drawing once it is described. */
export interface CraftWithParts extends CraftRows {
  readonly parts: ReturnType<typeof partFindings>;
  readonly svg: (description: string) => ReturnType<typeof craftSvg>;
}

function badClasses(written: string): Unfit {
  return {
    code: 'bad-chart-option',
    seen: `classes=${written}`,
    wanted: 'one to three rising numbers above zero, with commas between them',
    remedy: 'Write where the second, third and fourth class begin, such as classes=10,20,40.',
  };
}
