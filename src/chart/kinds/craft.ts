import { enoughEvents } from '../../finding/small-numbers.js';
import {
  type AskedChart,
  type ChartKind,
  type ChartOption,
  type Drawing,
  sharedOptions,
  type Unfit,
} from '../chart-kind.js';
import { drawnComponents } from '../craft/craft-drawing.js';
import { type CraftPicture, craftSvg } from '../craft/craft-svg.js';
import { drawingOf, drawings } from '../craft/drawings.js';
import { frequencyClasses, readEdges } from '../craft/frequency-classes.js';
import { partFindings, rowsOfCraft, valueLabel } from '../craft/part-findings.js';
import { partAddress, partTable } from '../craft/part-table.js';
import { repeatedName } from '../repeated-name.js';

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
  const { svg, parts, drawing } = picture;
  const listed = parts.map(({ component }) => component);
  const drawn = drawnComponents(drawing);
  const absent = listed.filter((component) => !drawn.includes(component));
  const unrecorded = drawn.filter((component) => !listed.includes(component));
  const reading = [
    'The number is the part’s place, 1 the most often fouled; equal figures share a place.',
    ...(parts.some(({ standing, rank }) => standing === 'fouled' && rank === null)
      ? [`•: fouled, but on fewer than ${enoughEvents} craft, so that these records give it no place.`]
      : []),
    ...(parts.some(({ standing }) => standing === 'none found')
      ? ['–: none found, which is not none there; the table has the upper limit.']
      : []),
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
  const drawing = drawingOf(whole.settings.get('craft')!)!;
  const asked = rowsOfCraft(whole, drawing);
  if (asked.sheet.rows.length === 0) return noRows(drawing.title, whole.sheet.name);
  const parts = partFindings(asked, {
    fewest: Number(asked.settings.get('fewest') ?? 20),
    often: Number(asked.settings.get('often') ?? 15),
  });
  const repeated = repeatedName(
    parts.map(({ component }) => component),
    'part',
  );
  if (repeated !== null) return repeated;
  const written = asked.settings.get('classes');
  const edges = written === undefined ? null : readEdges(written);
  if (written !== undefined && edges === null) return badClasses(written);
  const shown = parts.flatMap(({ value }) => (value === null ? [] : [value]));
  const drawn = drawnComponents(drawing);
  const picture: CraftPicture = {
    drawing,
    parts: new Map(parts.filter(({ component }) => drawn.includes(component)).map((part) => [part.component, part])),
    classes: frequencyClasses(shown, edges),
    valueLabel: valueLabel(asked),
    addressOf,
    drawnBy,
  };
  const svg = (description: string) => craftSvg({ name, title: asked.request.caption, description }, picture);
  return { drawing, parts, svg };
}

/** What `craftPicture` gives: the craft, its parts in the sheet's order, and the drawing once it is described. */
export interface CraftWithParts {
  readonly drawing: CraftPicture['drawing'];
  readonly parts: ReturnType<typeof partFindings>;
  readonly svg: (description: string) => ReturnType<typeof craftSvg>;
}

function noRows(title: string, sheet: string): Unfit {
  return {
    code: 'nothing-to-draw',
    seen: sheet,
    wanted: `rows of the craft drawn: ${title}`,
    remedy:
      'There were no such craft, or the records do not say their drive. Take the drawing out, split the sheet by watercraft_type and drive, or ask it of this craft alone.',
  };
}

function badClasses(written: string): Unfit {
  return {
    code: 'bad-chart-option',
    seen: `classes=${written}`,
    wanted: 'one to three rising numbers above zero, with commas between them',
    remedy: 'Write where the second, third and fourth class begin, such as classes=10,20,40.',
  };
}
