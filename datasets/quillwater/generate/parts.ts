import type { Craft, WatercraftType } from './craft.js';

/** A part on the forms, with the truth about it. */
export interface Part {
  readonly part: string;
  readonly sided: boolean;
  readonly hidden: boolean;
  /** Whether the short list of a standard inspection has it; the long list has all. */
  readonly standard: boolean;
  /** The probability that a light load fouls it, on a craft that carries it. */
  readonly fouling: number;
  /** The probability that a craft of a type carries it; other types never do. */
  readonly carriedBy: Readonly<Partial<Record<WatercraftType, number>>>;
  /** The drives it hangs on, or null for any. */
  readonly drives: readonly string[] | null;
}

const hulls = { 'open motorboat': 1, 'pontoon boat': 1, 'cabin motorboat': 1, houseboat: 1, 'inflatable boat': 1 };
const sails = { 'auxiliary sail': 1, 'sail only': 1 };
const jets = { 'personal watercraft': 1 };
const every = { ...hulls, ...sails, ...jets, rowboat: 1, paddlecraft: 1, other: 1 };
const trailered = { ...hulls, ...sails, ...jets, rowboat: 0.9 };
const legs = { 'open motorboat': 1, 'pontoon boat': 1, 'cabin motorboat': 1, houseboat: 1 };
const powered = { ...hulls, 'auxiliary sail': 1 };

type Marks = 'sided' | 'hidden' | 'standard';

function part(
  name: string,
  fouling: number,
  carriedBy: Part['carriedBy'],
  drives: Part['drives'],
  ...marks: readonly Marks[]
): Part {
  return {
    part: name,
    fouling,
    carriedBy,
    drives,
    sided: marks.includes('sided'),
    hidden: marks.includes('hidden'),
    standard: marks.includes('standard'),
  };
}

/** A share of a set of types. */
function some(types: Part['carriedBy'], share: number): Part['carriedBy'] {
  return Object.fromEntries(Object.keys(types).map((type) => [type, share]));
}

/** Every part on the forms, in the order of the walk around a craft. */
export const parts: readonly Part[] = [
  part('hull below waterline', 0.26, every, null, 'sided', 'standard'),
  part(
    'through-hull fittings',
    0.27,
    { 'open motorboat': 0.55, 'cabin motorboat': 1, houseboat: 0.9, 'auxiliary sail': 0.8, 'pontoon boat': 0.1 },
    null,
    'sided',
    'hidden',
  ),
  part('transom', 0.18, { ...hulls, ...sails, ...jets, rowboat: 1 }, null, 'standard'),
  part(
    'trim tabs and rams',
    0.36,
    { 'open motorboat': 0.35, 'cabin motorboat': 0.8 },
    null,
    'sided',
    'hidden',
    'standard',
  ),
  part('transducer', 0.17, some(legs, 0.6), null, 'hidden'),
  part('swim platform', 0.1, { ...some(legs, 0.4), houseboat: 0.9 }, null, 'hidden'),
  part('rudder', 0.27, { ...sails, 'cabin motorboat': 1 }, ['inboard', 'outboard', 'other']),
  part('centreboard', 0.24, { 'auxiliary sail': 0.4, 'sail only': 0.9 }, null, 'hidden'),
  part('outdrive lower unit', 0.37, legs, ['sterndrive'], 'standard'),
  part('hydraulic rams', 0.19, some(legs, 0.9), ['sterndrive'], 'sided'),
  part('gimbal area', 0.34, legs, ['sterndrive'], 'hidden', 'standard'),
  part('outboard lower unit', 0.22, powered, ['outboard'], 'standard'),
  part('cavitation plate', 0.16, powered, ['sterndrive', 'outboard']),
  part('propeller', 0.13, powered, ['inboard', 'outboard', 'pod drive', 'sterndrive'], 'standard'),
  part('prop shafts', 0.23, { ...legs, 'auxiliary sail': 1 }, ['inboard', 'pod drive']),
  part('jet intake', 0.2, { 'open motorboat': 1, ...jets }, ['inboard'], 'hidden', 'standard'),
  part('bilge', 0.04, { ...some(powered, 0.95), ...jets }, null, 'hidden', 'standard'),
  part('live well', 0.03, { 'open motorboat': 0.65, 'pontoon boat': 0.3, 'cabin motorboat': 0.2 }, null, 'standard'),
  part('ballast tank', 0.05, { 'open motorboat': 0.6, 'cabin motorboat': 0.05 }, ['inboard', 'sterndrive'], 'hidden'),
  part('anchor line', 0.11, some({ ...powered, 'sail only': 1 }, 0.8), null, 'standard'),
  part('bunks', 0.05, some(trailered, 0.85), null, 'sided', 'standard'),
  part('rollers', 0.04, some(trailered, 0.5), null, 'standard'),
  part('tube openings', 0.03, some(trailered, 0.7), null, 'sided', 'hidden'),
];

/**
 * The probability that a craft of that build carries a part. Jets take water in through an intake and have no propeller;
 * a personal watercraft's drive is not written down.
 */
export function carryProbability(part: Part, craft: Pick<Craft, 'type' | 'drive' | 'propulsion'>): number {
  const share = part.carriedBy[craft.type] ?? 0;
  if (part.part === 'jet intake') return craft.propulsion === 'water jet' ? share : 0;
  if (craft.propulsion === 'water jet' && (part.part === 'propeller' || part.part === 'prop shafts')) return 0;
  if (part.drives === null) return share;
  if (craft.drive !== null) return part.drives.includes(craft.drive) ? share : 0;
  return part.part === 'rudder' ? share : 0;
}
