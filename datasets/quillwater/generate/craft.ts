import { carryProbability, parts } from './parts.js';
import type { Random } from './random.js';

export type WatercraftType =
  | 'open motorboat'
  | 'cabin motorboat'
  | 'pontoon boat'
  | 'houseboat'
  | 'personal watercraft'
  | 'auxiliary sail'
  | 'sail only'
  | 'inflatable boat'
  | 'rowboat'
  | 'paddlecraft'
  | 'other';

/** One craft, its owner plainly invented. */
export interface Craft {
  readonly hullNumber: string;
  readonly registration: string;
  readonly plate: string;
  readonly owner: string;
  readonly phone: string;
  readonly type: WatercraftType;
  readonly propulsion: string;
  readonly drive: string | null;
  readonly hullMaterial: string;
  readonly lengthFeet: number;
  readonly antifouling: boolean;
  readonly homeRegion: string;
  /** Whether it carries each of `parts`. */
  readonly carries: readonly boolean[];
}

/** Shares of watercraft types: local day craft and visitors, and craft moored on the positive lake. */
export const typeShare: Readonly<Record<'day' | 'moored', Readonly<Record<WatercraftType, number>>>> = {
  day: {
    'open motorboat': 45,
    'cabin motorboat': 6,
    'pontoon boat': 11,
    houseboat: 0.5,
    'personal watercraft': 13,
    'auxiliary sail': 2,
    'sail only': 2,
    'inflatable boat': 4,
    rowboat: 3,
    paddlecraft: 12.5,
    other: 1,
  },
  moored: {
    'open motorboat': 34,
    'cabin motorboat': 24,
    'pontoon boat': 20,
    houseboat: 7,
    'personal watercraft': 4,
    'auxiliary sail': 7,
    'sail only': 3,
    'inflatable boat': 1,
    rowboat: 0,
    paddlecraft: 0,
    other: 0,
  },
};

type Build = Pick<Craft, 'propulsion' | 'drive'> & { readonly share: number };
const build = (share: number, propulsion: string, drive: string | null): Build => ({ share, propulsion, drive });

/** How craft of each type are driven, with shares. */
export const builds: Readonly<Record<WatercraftType, readonly Build[]>> = {
  'open motorboat': [
    build(70, 'propeller', 'outboard'),
    build(17, 'propeller', 'sterndrive'),
    build(9, 'propeller', 'inboard'),
    build(4, 'water jet', 'inboard'),
  ],
  'cabin motorboat': [
    build(62, 'propeller', 'sterndrive'),
    build(25, 'propeller', 'inboard'),
    build(5, 'propeller', 'pod drive'),
    build(8, 'propeller', 'outboard'),
  ],
  'pontoon boat': [build(90, 'propeller', 'outboard'), build(10, 'propeller', 'sterndrive')],
  houseboat: [build(60, 'propeller', 'sterndrive'), build(40, 'propeller', 'outboard')],
  'personal watercraft': [build(1, 'water jet', null)],
  'auxiliary sail': [build(60, 'sail', 'outboard'), build(40, 'sail', 'inboard')],
  'sail only': [build(1, 'sail', null)],
  'inflatable boat': [build(1, 'propeller', 'outboard')],
  rowboat: [build(1, 'manual', null)],
  paddlecraft: [build(1, 'manual', null)],
  other: [build(1, 'other', null)],
};

const lengths: Readonly<Record<WatercraftType, readonly [number, number]>> = {
  'open motorboat': [15, 24],
  'cabin motorboat': [22, 36],
  'pontoon boat': [18, 27],
  houseboat: [32, 62],
  'personal watercraft': [9, 12],
  'auxiliary sail': [21, 34],
  'sail only': [12, 21],
  'inflatable boat': [9, 15],
  rowboat: [10, 15],
  paddlecraft: [9, 17],
  other: [8, 30],
};

const regions = ['QW', 'NR', 'SV', 'EM', 'WD'] as const;
const givenNames = ['Ansel', 'Brindle', 'Corvin', 'Dellany', 'Emmet', 'Farrow', 'Gilda', 'Harl', 'Ismene', 'Jory'];
const familyNames = ['Testwater', 'Samplefield', 'Mockridge', 'Notareal', 'Placeholm', 'Demoson', 'Exampleby'];

function hullMaterial(type: WatercraftType, random: Random): string {
  if (type === 'inflatable boat') return 'rubber, vinyl or canvas';
  if (type === 'pontoon boat') return 'aluminum';
  if (type === 'paddlecraft') return random.pick(['plastic', 'plastic', 'plastic', 'fiberglass', 'aluminum']);
  if (type === 'rowboat') return random.pick(['aluminum', 'wood', 'plastic']);
  if (type === 'houseboat') return random.pick(['aluminum', 'steel', 'fiberglass']);
  return random.pick(['fiberglass', 'fiberglass', 'fiberglass', 'aluminum', 'aluminum']);
}

/** A new craft; `serial` tells it from all others, `local` says whether it is registered in the basin's own region. */
export function makeCraft(random: Random, serial: number, use: 'day' | 'moored', local: boolean): Craft {
  const shares = typeShare[use];
  const types = Object.keys(shares) as WatercraftType[];
  const type = types[random.weighted(types.map((name) => shares[name]))]!;
  const { propulsion, drive } = builds[type][random.weighted(builds[type].map((entry) => entry.share))]!;
  const [shortest, longest] = lengths[type];
  const homeRegion = local ? regions[0] : regions[1 + random.below(4)]!;
  const number = String(serial).padStart(5, '0');
  return {
    hullNumber: `QWX${number}A${serial % 10}${10 + (serial % 14)}`,
    registration: `${homeRegion} ${1000 + (serial % 9000)} ZZ`,
    plate: `DEMO-${number}`,
    owner: `${random.pick(givenNames)} ${random.pick(familyNames)}`,
    phone: `555-01${String(serial % 100).padStart(2, '0')}`,
    type,
    propulsion,
    drive,
    hullMaterial: hullMaterial(type, random),
    lengthFeet: Math.round((shortest + random.uniform() * (longest - shortest)) * 2) / 2,
    antifouling: random.chance(use === 'moored' ? 0.45 : 0.08),
    homeRegion,
    carries: parts.map((part) => random.chance(carryProbability(part, { type, propulsion, drive }))),
  };
}
