import type { Setting } from './setting.js';
import { positiveLake } from './waters.js';

/** A station with the parameters of its traffic; craft a season at scale 1. */
export interface Station {
  readonly station: string;
  readonly name: string;
  readonly setting: Setting;
  readonly water: string | null;
  readonly zone: 'America/Denver' | 'America/Los_Angeles';
  readonly lanes: number;
  /** Month and day. */
  readonly opens: readonly [number, number];
  readonly closes: readonly [number, number];
  readonly arriving: number;
  readonly leaving: number;
  /** The median wait for a wash, in minutes. */
  readonly wait: number;
  /** The unit that washes here. */
  readonly unit: string;
}

type Kind = Pick<Station, 'setting' | 'zone' | 'opens' | 'closes'>;
const early: Kind = { setting: 'launch', zone: 'America/Denver', opens: [3, 1], closes: [11, 30] };
const launch: Kind = { ...early, opens: [3, 15], closes: [10, 31] };
const roadside: Kind = { ...launch, setting: 'roadside', zone: 'America/Los_Angeles', closes: [11, 15] };
const border: Kind = { ...early, setting: 'border', zone: 'America/Los_Angeles' };

function place(
  kind: Kind,
  station: string,
  name: string,
  water: string | null,
  lanes: number,
  traffic: readonly [arriving: number, leaving: number],
  wait: number,
  unit: string,
): Station {
  return { ...kind, station, name, water, lanes, arriving: traffic[0], leaving: traffic[1], wait, unit };
}

/** The eleven stations: seven launches, two roadside, two at the border. */
export const stations: readonly Station[] = [
  place(early, 'alder-landing', 'Alder Landing', positiveLake, 3, [1800, 1850], 26, 'WU-1'),
  place(early, 'heron-point', 'Heron Point', positiveLake, 2, [1000, 1200], 19, 'WU-2'),
  place(launch, 'quill-marina', 'Quill Marina', 'quillwater-lake', 3, [3100, 0], 14, 'WU-3'),
  place(launch, 'tamsel-ramp', 'Tamsel Ramp', 'tamsel-lake', 2, [2600, 0], 15, 'WU-4'),
  place(launch, 'fennick-dam', 'Fennick Dam', 'upper-fennick', 2, [2400, 0], 17, 'WU-5'),
  place(launch, 'old-ferry', 'Old Ferry', 'lower-fennick', 2, [2150, 0], 16, 'WU-5'),
  place(launch, 'hollin-beach', 'Hollin Beach', 'hollin-lake', 1, [1200, 0], 31, 'WU-6'),
  place(roadside, 'stag-pass', 'Stag Pass', null, 2, [2000, 0], 12, 'WU-7'),
  place(roadside, 'mill-junction', 'Mill Junction', null, 1, [1700, 0], 22, 'WU-8'),
  place(border, 'north-gate', 'North Gate', null, 2, [1500, 0], 11, 'WU-9'),
  place(border, 'south-gate', 'South Gate', null, 2, [1450, 0], 13, 'WU-10'),
];

/** Which of the two export formats a station's records come in. */
export function isRoad(station: Station): boolean {
  return station.setting !== 'launch';
}

/** The wash units: kind, where they stand, dollars to buy, day in service (year, month, day), years of life, dollars a wash. */
export const washUnits = [
  ['WU-1', 'fixed', 'alder-landing', 148_000, [2023, 3, 1], 15, 9.5],
  ['WU-2', 'portable', 'heron-point', 41_500, [2021, 5, 12], 8, 12.25],
  ['WU-3', 'portable', 'quill-marina', 39_900, [2019, 6, 3], 8, 13.1],
  ['WU-4', 'portable', 'tamsel-ramp', 38_700, [2020, 4, 20], 8, 12.8],
  ['WU-5', 'portable', 'fennick-dam', 42_300, [2022, 4, 8], 8, 12.4],
  ['WU-6', 'portable', 'hollin-beach', 27_800, [2017, 5, 30], 7, 15.6],
  ['WU-7', 'portable', 'stag-pass', 40_200, [2021, 3, 9], 8, 12.9],
  ['WU-8', 'portable', 'mill-junction', 36_400, [2018, 4, 16], 8, 14.2],
  ['WU-9', 'fixed', 'north-gate', 162_500, [2022, 2, 21], 15, 8.75],
  ['WU-10', 'portable', 'south-gate', 43_100, [2023, 2, 27], 8, 12.1],
] as const;
