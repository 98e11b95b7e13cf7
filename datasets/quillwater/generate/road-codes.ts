import { dottedMoment } from './calendar.js';
import type { Dialect } from './export-file.js';
import type { Look } from './looks.js';
import { parts } from './parts.js';

/** The road stations' dialect. */
export const roadDialect: Dialect = { delimiter: ';', newline: '\r\n', byteOrderMark: false };

/** dd.MM.yyyy HH:mm, or an empty cell. */
export const roadMoment = (value: number | null): string => (value === null ? '' : dottedMoment(value));
/** A number with a decimal comma, or an empty cell. */
export const roadNumber = (value: number | null, digits: number): string =>
  value === null ? '' : value.toFixed(digits).replace('.', ',');

/** Stations. */
export const roadStations: Readonly<Record<string, string>> = {
  'stag-pass': '21',
  'mill-junction': '22',
  'north-gate': '31',
  'south-gate': '32',
};

/** Waters. */
export const roadWaters: Readonly<Record<string, string>> = {
  'marrowby-lake': '101',
  'quillwater-lake': '102',
  'tamsel-lake': '103',
  'upper-fennick': '104',
  'lower-fennick': '105',
  'hollin-lake': '106',
  cindermere: '107',
  'paleham-pool': '108',
  'great-sallow': '201',
  'dunmark-canal': '202',
  'northreach-sound': '203',
  'westdown-lake': '204',
  'other-water': '299',
};

/** Watercraft types. */
export const roadTypes: Readonly<Record<string, string>> = {
  'open motorboat': '1',
  'cabin motorboat': '2',
  'pontoon boat': '3',
  houseboat: '4',
  'personal watercraft': '5',
  'auxiliary sail': '6',
  'sail only': '7',
  'inflatable boat': '8',
  rowboat: '9',
  paddlecraft: '10',
  other: '99',
};

/** Propulsion. */
export const roadPropulsion: Readonly<Record<string, string>> = {
  propeller: 'p',
  'water jet': 'j',
  sail: 's',
  manual: 'm',
  other: 'o',
};

/** Drives. */
export const roadDrives: Readonly<Record<string, string>> = {
  outboard: 'out',
  sterndrive: 'stern',
  inboard: 'in',
  'pod drive': 'pod',
};

/** Hull materials. */
export const roadHulls: Readonly<Record<string, string>> = {
  aluminum: 'alu',
  fiberglass: 'gfk',
  plastic: 'pla',
  'rubber, vinyl or canvas': 'rub',
  steel: 'ste',
  wood: 'woo',
};

/** Outcomes. */
export const roadOutcomes: Readonly<Record<string, string>> = {
  cleared: '0',
  'cleaned on site': '1',
  'washed as a precaution': '2',
  intercepted: '3',
  'held to dry': '4',
  refused: '5',
  'turned away': '6',
};

const partNames = [
  'hull',
  'thru',
  'transom',
  'tabs',
  'sounder',
  'platform',
  'rudder',
  'cboard',
  'leg',
  'rams',
  'gimbal',
  'obm',
  'cavit',
  'prop',
  'shaft',
  'jet',
  'bilge',
  'livew',
  'ballast',
  'rope',
  'bunk',
  'roller',
  'tube',
];

/** The checklist's columns, in the order of `parts`: one a part, two where it has sides. */
export const roadColumns: readonly { readonly column: string; readonly part: number; readonly side: string }[] =
  parts.flatMap(({ sided }, part) =>
    (sided ? ['port', 'starboard'] : ['none']).map((side) => ({
      column: side === 'none' ? partNames[part]! : `${partNames[part]}_${side[0]}`,
      part,
      side,
    })),
  );

const amounts: Readonly<Record<string, string>> = { trace: '1', some: '2', many: '3', encrusted: '4' };
const means: Readonly<Record<string, string>> = {
  sight: 's',
  feel: 'f',
  mirror: 'm',
  light: 'l',
  magnifier: 'g',
  camera: 'c',
};
const others: Readonly<Record<string, string>> = { vegetation: 'V', mud: 'D', 'standing water': 'W' };

/** A checklist cell: blank not checked, 0 clean, - absent, M or S with amount and means for mussels, a letter for else. */
export function roadCell(look: Look): string {
  if (look.state === 'not checked') return '';
  if (look.state !== 'fouled') return look.state === 'clean' ? '0' : '-';
  const { finding, stage, abundance, by } = look.found!;
  if (finding !== 'mussels') return others[finding]!;
  return `${stage === 'settler' ? 'S' : 'M'}${amounts[abundance!]}${means[by]}`;
}
