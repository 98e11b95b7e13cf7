import { americanMoment } from './calendar.js';
import type { Dialect } from './export-file.js';

/** The lake tablets' dialect; in one year the export put a byte order mark first. */
export function lakeDialect(season: number | null): Dialect {
  return { delimiter: ',', newline: '\n', byteOrderMark: season === 2024 };
}

/** Y, N, or an empty cell. */
export const lakeYesNo = (value: boolean | null): string => (value === null ? '' : value ? 'Y' : 'N');
/** MM/dd/yyyy hh:mm a, or an empty cell. */
export const lakeMoment = (value: number | null): string => (value === null ? '' : americanMoment(value));

/** The stations' codes; the tablets' unit list names the road stations too. */
export const lakeStations: Readonly<Record<string, string>> = {
  'alder-landing': 'L1',
  'heron-point': 'L2',
  'quill-marina': 'L3',
  'tamsel-ramp': 'L4',
  'fennick-dam': 'L5',
  'old-ferry': 'L6',
  'hollin-beach': 'L7',
  'stag-pass': 'R1',
  'mill-junction': 'R2',
  'north-gate': 'B1',
  'south-gate': 'B2',
};

/** The codes of `parts`, in their order. */
export const lakeParts: readonly string[] = [
  'HULL',
  'THRU',
  'TRANSOM',
  'TABS',
  'DUCER',
  'SWIMPLAT',
  'RUDDER',
  'CBOARD',
  'OUTDRV',
  'RAMS',
  'GIMBAL',
  'OBLEG',
  'CAVPL',
  'PROP',
  'SHAFT',
  'JET',
  'BILGE',
  'LIVEW',
  'BALLAST',
  'ANCHLN',
  'BUNK',
  'ROLLER',
  'TUBE',
];

/** Watercraft types. */
export const lakeTypes: Readonly<Record<string, string>> = {
  'open motorboat': 'OPEN',
  'cabin motorboat': 'CABIN',
  'pontoon boat': 'PONT',
  houseboat: 'HOUSE',
  'personal watercraft': 'PWC',
  'auxiliary sail': 'SAILAUX',
  'sail only': 'SAIL',
  'inflatable boat': 'INFL',
  rowboat: 'ROW',
  paddlecraft: 'PADDLE',
  other: 'OTH',
};

/** Propulsion. */
export const lakePropulsion: Readonly<Record<string, string>> = {
  propeller: 'PR',
  'water jet': 'WJ',
  sail: 'SA',
  manual: 'MA',
  other: 'OT',
};

/** Drives. */
export const lakeDrives: Readonly<Record<string, string>> = {
  outboard: 'OB',
  sterndrive: 'SD',
  inboard: 'IB',
  'pod drive': 'POD',
};

/** Hull materials. */
export const lakeHulls: Readonly<Record<string, string>> = {
  aluminum: 'AL',
  fiberglass: 'FG',
  plastic: 'PL',
  'rubber, vinyl or canvas': 'RV',
  steel: 'ST',
  wood: 'WD',
};

/** W meant wiped down on site until 2024, and washed from 2025; what was D until then is no code any more. */
export function lakeOutcome(outcome: string, season: number): string {
  if (outcome === 'cleaned on site') return season >= 2025 ? 'K' : 'W';
  if (outcome === 'washed as a precaution') return season >= 2025 ? 'W' : 'D';
  return { cleared: 'C', intercepted: 'X', 'held to dry': 'H', refused: 'R', 'turned away': 'T' }[outcome]!;
}

/** What was seen of a part. */
export const lakeStates: Readonly<Record<string, string>> = {
  absent: 'A',
  'not checked': 'NC',
  clean: 'OK',
  fouled: 'F',
};

/** What was found on it. */
export const lakeFindings: Readonly<Record<string, string>> = {
  mussels: 'MUS',
  vegetation: 'VEG',
  mud: 'MUD',
  'standing water': 'WAT',
};

/** Sides. */
export const lakeSides: Readonly<Record<string, string>> = { port: 'P', starboard: 'S', none: '-' };

/** Why a wash was ordered. */
export const lakeReasons: Readonly<Record<string, string>> = {
  mussels: 'MUS',
  'standing water': 'WAT',
  plants: 'VEG',
  ballast: 'BAL',
  'leaving a positive water': 'EXIT',
  'owner request': 'OWN',
};

/** How a craft was washed. */
export const lakeMethods: Readonly<Record<string, string>> = {
  'hot spray': 'SPR',
  flush: 'FLU',
  'spray and flush': 'S+F',
  'hand removal': 'HAND',
};
