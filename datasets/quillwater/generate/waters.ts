export type WaterStatus = 'positive' | 'suspect' | 'negative' | 'not tested';

/** A water of the basin or beyond it, with its status from each date (year, month, day). */
export interface Water {
  readonly water: string;
  readonly name: string;
  readonly region: string;
  readonly inBasin: boolean;
  readonly statuses: readonly { readonly status: WaterStatus; readonly from: readonly [number, number, number] }[];
}

/** The lake whose leaving craft are looked over. */
export const positiveLake = 'marrowby-lake';

/** The eight lakes of the basin, then the waters beyond. Regions are invented, like everything else. */
export const waters: readonly Water[] = [
  {
    water: positiveLake,
    name: 'Marrowby Lake',
    region: 'QW',
    inBasin: true,
    statuses: [
      { status: 'negative', from: [2016, 5, 1] },
      { status: 'suspect', from: [2022, 8, 14] },
      { status: 'positive', from: [2023, 4, 20] },
    ],
  },
  negative('quillwater-lake', 'Quillwater Lake', 'QW', true),
  negative('tamsel-lake', 'Tamsel Lake', 'QW', true),
  negative('upper-fennick', 'Upper Fennick', 'QW', true),
  negative('lower-fennick', 'Lower Fennick', 'QW', true),
  negative('hollin-lake', 'Hollin Lake', 'QW', true),
  untested('cindermere', 'Cindermere', true),
  untested('paleham-pool', 'Paleham Pool', true),
  positive('great-sallow', 'Great Sallow', 'SV'),
  positive('dunmark-canal', 'Dunmark Canal', 'EM'),
  negative('northreach-sound', 'Northreach Sound', 'NR', false),
  negative('westdown-lake', 'Westdown Lake', 'WD', false),
  { ...untested('other-water', 'Other water beyond the basin', false), region: '' },
];

function negative(water: string, name: string, region: string, inBasin: boolean): Water {
  return { water, name, region, inBasin, statuses: [{ status: 'negative', from: [2016, 5, 1] }] };
}

function untested(water: string, name: string, inBasin: boolean): Water {
  return { water, name, region: 'QW', inBasin, statuses: [{ status: 'not tested', from: [2010, 1, 1] }] };
}

function positive(water: string, name: string, region: string): Water {
  return { water, name, region, inBasin: false, statuses: [{ status: 'positive', from: [2014, 7, 1] }] };
}
