import type { BookTable } from '../record/book.js';
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

/** Numbers the inspections of some looks from 0, with the first look of each. */
function numberCraft(table: BookTable, rows: Uint32Array): { craftOf: Uint32Array; firstRows: Uint32Array } {
  const { codes, dictionary } = bookText(table, 'inspection');
  const numberOf = new Int32Array(dictionary.length).fill(-1);
  const craftOf = new Uint32Array(rows.length);
  const firstRows: number[] = [];
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at]!;
    const code = codes[row]!;
    if (numberOf[code] === -1) {
      numberOf[code] = firstRows.length;
      firstRows.push(row);
    }
    craftOf[at] = numberOf[code]!;
  }
  return { craftOf, firstRows: Uint32Array.from(firstRows) };
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
  const component = bookText(table, 'component');
  const state = bookText(table, 'state');
  const finding = bookText(table, 'finding');
  const side = bookText(table, 'side');
  const components = table.fields.get('component')?.codes ?? [];
  const partOf = component.dictionary.map((name) => components.indexOf(name));
  const [findings, sides] = [finding.dictionary.length, side.dictionary.length];
  const marksByCodes = state.dictionary.flatMap((one) =>
    finding.dictionary.flatMap((two) => side.dictionary.map((three) => marksOfLook(one, two, three))),
  );
  const fouled = state.dictionary.indexOf('fouled', 1);
  const { craftOf, firstRows } = numberCraft(table, rows);
  const marks = new Uint8Array(firstRows.length * components.length);
  let openFindings = 0;
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at]!;
    const place = partOf[component.codes[row]!]!;
    if (place < 0) continue;
    const stateCode = state.codes[row]!;
    const findingCode = finding.codes[row]!;
    if (stateCode === fouled && findingCode === 0) openFindings++;
    marks[craftOf[at]! * components.length + place]! |=
      marksByCodes[(stateCode * findings + findingCode) * sides + side.codes[row]!]!;
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

/** How many parts of each craft had mussels. */
export function fouledParts({ components, craftCount, marks }: CraftParts): Uint8Array {
  const fouled = new Uint8Array(craftCount);
  for (let craft = 0; craft < craftCount; craft++) {
    const from = craft * components.length;
    for (let at = from; at < from + components.length; at++) if ((marks[at]! & part.mussels) !== 0) fouled[craft]!++;
  }
  return fouled;
}
