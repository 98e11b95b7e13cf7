/** The groups in which inspection forms list a craft's parts. */
export type ComponentArea = 'exterior' | 'propulsion' | 'water-holding' | 'equipment' | 'trailer';

/** Which craft carry a part: by watercraft type, and where it hangs on the drive, by drive. Null: any. */
export interface Carriers {
  readonly types: readonly string[] | null;
  readonly drives: readonly string[] | null;
}

/** A part of a craft, its trailer or equipment where settlement is looked for. */
export interface Component {
  readonly component: string;
  readonly area: ComponentArea;
  /** Whether forms record port and starboard apart. */
  readonly sided: boolean;
  /** Whether a plain look misses it: it needs a mirror, a light or a hand. */
  readonly hidden: boolean;
  readonly carriers: Carriers;
}

const powered = [
  'air boat',
  'auxiliary sail',
  'cabin motorboat',
  'houseboat',
  'inflatable boat',
  'open motorboat',
  'pontoon boat',
] as const;
const motorboats = ['cabin motorboat', 'houseboat', 'open motorboat', 'pontoon boat'] as const;
const planing = ['cabin motorboat', 'open motorboat'] as const;
const sailing = ['auxiliary sail', 'sail only'] as const;
const jets = ['personal watercraft'] as const;
const anchored = [...powered, 'sail only'] as const;
const trailered = [...anchored, 'personal watercraft', 'rowboat'] as const;
const propelled = ['inboard', 'outboard', 'pod drive', 'sterndrive'] as const;

function part(
  area: ComponentArea,
  component: string,
  types: readonly string[] | null,
  drives: readonly string[] | null,
  marks: { sided?: true; hidden?: true } = {},
): Component {
  return {
    component,
    area,
    sided: marks.sided === true,
    hidden: marks.hidden === true,
    carriers: { types, drives },
  };
}

/**
 * The component catalogue, in the order of an inspection walk. Which craft carry what is common practice, no source;
 * the names follow the trade's checklists.
 */
export const components: readonly Component[] = [
  part('exterior', 'hull below waterline', null, null, { sided: true }),
  part('exterior', 'waterline', null, null, { sided: true }),
  part('exterior', 'seams and welds', null, null, { sided: true }),
  part('exterior', 'through-hull fittings', [...planing, 'auxiliary sail', 'houseboat', 'pontoon boat'], null, {
    sided: true,
    hidden: true,
  }),
  part('exterior', 'water intakes', [...powered, ...jets], propelled, { sided: true, hidden: true }),
  part('exterior', 'transom', [...powered, 'sail only', ...jets, 'rowboat'], null),
  part('exterior', 'trim tabs and rams', planing, null, { sided: true, hidden: true }),
  part('exterior', 'transducer', motorboats, null, { hidden: true }),
  part('exterior', 'speed indicator', planing, null, { hidden: true }),
  part('exterior', 'zincs', [...motorboats, ...sailing], null),
  part('exterior', 'swim platform', motorboats, null, { hidden: true }),
  part('exterior', 'rudder', [...sailing, 'cabin motorboat'], ['inboard', 'outboard', 'other']),
  part('exterior', 'centreboard', sailing, null, { hidden: true }),
  part('propulsion', 'outdrive lower unit', motorboats, ['sterndrive']),
  part('propulsion', 'exhaust hub', motorboats, ['sterndrive', 'outboard'], { hidden: true }),
  part('propulsion', 'cavitation plate', powered, ['sterndrive', 'outboard']),
  part('propulsion', 'hydraulic rams', motorboats, ['sterndrive'], { sided: true }),
  part('propulsion', 'gimbal area', motorboats, ['sterndrive'], { hidden: true }),
  part('propulsion', 'outboard lower unit', powered, ['outboard']),
  part('propulsion', 'propeller', powered, propelled),
  part('propulsion', 'prop shafts', [...motorboats, 'auxiliary sail'], ['inboard', 'pod drive']),
  part('propulsion', 'jet intake', [...planing, ...jets], ['inboard', 'other'], { hidden: true }),
  part('propulsion', 'trolling motor', ['open motorboat', 'pontoon boat', 'inflatable boat'], null),
  part('water-holding', 'bilge', [...powered, ...jets], null, { hidden: true }),
  part('water-holding', 'hold', ['cabin motorboat', 'houseboat', 'auxiliary sail'], null, { hidden: true }),
  part('water-holding', 'live well', ['open motorboat', 'pontoon boat', 'cabin motorboat'], null),
  part('water-holding', 'bait well', ['open motorboat', 'pontoon boat'], null),
  part('water-holding', 'ballast tank', planing, ['inboard', 'sterndrive'], { hidden: true }),
  part('water-holding', 'ballast bag', planing, ['inboard', 'sterndrive'], { hidden: true }),
  part('water-holding', 'wet locker', [...motorboats, 'auxiliary sail'], null),
  part('water-holding', 'cooling system', [...powered, ...jets], propelled, { hidden: true }),
  part('equipment', 'anchor', anchored, null),
  part('equipment', 'anchor line', anchored, null),
  part('equipment', 'mooring lines', [...anchored, ...jets], null),
  part('equipment', 'fenders', anchored, null),
  part('equipment', 'life jackets', null, null),
  part('equipment', 'gear', null, null),
  part('trailer', 'bunks', trailered, null, { sided: true }),
  part('trailer', 'rollers', trailered, null),
  part('trailer', 'brackets', trailered, null, { sided: true }),
  part('trailer', 'tube openings', trailered, null, { sided: true, hidden: true }),
  part('trailer', 'cross-members', trailered, null, { hidden: true }),
];

/** The catalogue's entry of that name, or null. */
export function componentOf(name: string): Component | null {
  return components.find((entry) => entry.component === name) ?? null;
}

/**
 * Whether a craft of that type and drive is built to carry the component; an unrecorded type or drive does not rule a
 * part out.
 */
export function mayCarry(component: Component, watercraftType: string | null, drive: string | null): boolean {
  const { types, drives } = component.carriers;
  if (types !== null && watercraftType !== null && watercraftType !== 'other' && !types.includes(watercraftType)) {
    return false;
  }
  if (drives === null || watercraftType === 'personal watercraft') return true;
  return drive === null || drives.includes(drive);
}
