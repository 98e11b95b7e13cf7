import type { BookTable } from '../record/book.js';
import type { TextColumn } from '../record/column.js';
import { bookText } from './row-tests.js';
import { type ClusterPlaces, clusterPlaces } from './shares.js';

/** What the looks at one part of one craft say; a part fouled on either side counts once. */
export const part = {
  carried: 1,
  looked: 2,
  mussels: 4,
  portLooked: 8,
  starboardLooked: 16,
  portMussels: 32,
  starboardMussels: 64,
} as const;

/** Looks gathered by craft (one inspection each) and part. */
export interface CraftParts {
  /** The parts in the order of the catalogue. */
  readonly components: readonly string[];
  readonly craftCount: number;
  /** Marks of `part`, craft by craft: those of one craft's part stand at craft × components + part. */
  readonly marks: Uint8Array;
  /** The first look of each craft, as a row of the table. */
  readonly firstRows: Uint32Array;
  /** The station-day of each craft. */
  readonly places: ClusterPlaces;
  /** Looks at fouled parts whose finding was left open: looked at, but not known to be mussels. */
  readonly openFindings: number;
}

/** Numbers the inspections of some looks from 0, by the codes of their keys, with the first look of each. */
function numberCraft({ codes, dictionary }: TextColumn, rows: Uint32Array) {
  const numberOf = new Int32Array(dictionary.length).fill(-1);
  const firstRows: number[] = [];
  let last = -1;
  for (let at = 0; at < rows.length; at++) {
    const code = codes[rows[at]!]!;
    // Looks at one craft mostly stand together.
    if (code === last) continue;
    last = code;
    if (numberOf[code] === -1) numberOf[code] = firstRows.push(rows[at]!) - 1;
  }
  return { numberOf, firstRows: Uint32Array.from(firstRows) };
}

/** What each look of a table says, whatever rows are asked of. */
interface LookMarks {
  /** The part's place in the catalogue, or `noPlace`. */
  readonly placeOf: Uint8Array;
  /** Marks of `part`. */
  readonly marks: Uint8Array;
  /** 1 for a look at a fouled part whose finding was left open. */
  readonly isOpen: Uint8Array;
}

const noPlace = 255;

/** Marks made before: every finding about parts asks for those of the same table. */
const marked = new WeakMap<BookTable, LookMarks>();

function lookMarks(table: BookTable): LookMarks {
  const known = marked.get(table) ?? markLooks(table);
  marked.set(table, known);
  return known;
}

function markLooks(table: BookTable): LookMarks {
  const component = bookText(table, 'component');
  const state = bookText(table, 'state');
  const finding = bookText(table, 'finding');
  const side = bookText(table, 'side');
  const components = table.fields.get('component')?.codes ?? [];
  const places = component.dictionary.map((name) => components.indexOf(name));
  const [findings, sides] = [finding.dictionary.length, side.dictionary.length];
  const marksByCodes = state.dictionary.flatMap((one) =>
    finding.dictionary.flatMap((two) => side.dictionary.map((three) => marksOfLook(one, two, three))),
  );
  const fouled = state.dictionary.indexOf('fouled', 1);
  const [placeOf, marks, isOpen] = [0, 0, 0].map(() => new Uint8Array(table.rowCount)) as [
    Uint8Array,
    Uint8Array,
    Uint8Array,
  ];
  for (let row = 0; row < table.rowCount; row++) {
    const place = places[component.codes[row]!]!;
    placeOf[row] = place < 0 ? noPlace : place;
    const [stateCode, findingCode] = [state.codes[row]!, finding.codes[row]!];
    marks[row] = marksByCodes[(stateCode * findings + findingCode) * sides + side.codes[row]!]!;
    isOpen[row] = stateCode === fouled && findingCode === 0 ? 1 : 0;
  }
  return { placeOf, marks, isOpen };
}

function marksOfLook(state: string, finding: string, side: string): number {
  if (state === 'absent' || state === '') return 0;
  if (state === 'not checked') return part.carried;
  const mussels = state === 'fouled' && finding === 'mussels';
  let marks = part.carried | part.looked | (mussels ? part.mussels : 0);
  if (side === 'port') marks |= part.portLooked | (mussels ? part.portMussels : 0);
  if (side === 'starboard') marks |= part.starboardLooked | (mussels ? part.starboardMussels : 0);
  return marks;
}

/** What was gathered of some rows: several findings of a page are asked of the same ones. */
const gathered = new WeakMap<Uint32Array, { readonly table: BookTable; readonly parts: CraftParts }>();

/** The looks in those rows of checks or rechecks, gathered by craft and part; nobody changes what is given back. */
export function craftParts(table: BookTable, rows: Uint32Array): CraftParts {
  const known = gathered.get(rows);
  if (known?.table === table) return known.parts;
  const parts = gatherParts(table, rows);
  gathered.set(rows, { table, parts });
  return parts;
}

function gatherParts(table: BookTable, rows: Uint32Array): CraftParts {
  const components = table.fields.get('component')?.codes ?? [];
  const looks = lookMarks(table);
  const inspection = bookText(table, 'inspection');
  const { numberOf, firstRows } = numberCraft(inspection, rows);
  const marks = new Uint8Array(firstRows.length * components.length);
  let openFindings = 0;
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at]!;
    const place = looks.placeOf[row]!;
    if (place === noPlace) continue;
    openFindings += looks.isOpen[row]!;
    marks[numberOf[inspection.codes[row]!]! * components.length + place]! |= looks.marks[row]!;
  }
  return {
    components,
    craftCount: firstRows.length,
    marks,
    firstRows,
    places: clusterPlaces(table, firstRows),
    openFindings,
  };
}
