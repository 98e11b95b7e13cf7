/** The words that several kinds of charts say to readers; what one kind alone says stands in its own file. */
export const chartWords = {
  row: 'row',
  rowBy: (label: string): string => `row, by its ${label}`,
  and: ' and ',
  eachIs: (mark: string, key: string): string => `Each ${mark} is one ${key}`,
  isIts: (drawn: string, interval: string): string => `; ${drawn} is its ${interval}`,
  interval: 'interval',
  intervalOf: (confidence: string): string => `${confidence} % interval`,
  upperOnly:
    'A dashed line from a hollow mark or from zero: no case was seen, and it ends at the one-sided upper limit.',
  lowerOnly: 'A dashed line below a mark: every trial was a case, and it begins at the one-sided lower limit.',
  notReached: 'A line that runs to the edge: its upper limit is not reached.',
  withoutInterval: (bare: number, drawn: number): string => `${bare} of ${drawn} have no interval; the table says why.`,
  withoutValue: (absent: number, all: number, said: string): string =>
    `${absent} of ${all} without a value: each ${said}, and none is drawn as zero.`,
  withheld: (withheld: number, all: number, said: string): string =>
    `${withheld} of ${all} withheld: each ${said}, and none is drawn as zero.`,
  emptyPlaces: (empty: number): string =>
    empty === 1
      ? '1 place is left open: there is no row for it, which is not zero.'
      : `${empty} places are left open: there is no row for them, which is not zero.`,
  table: { interval: 'Interval', counted: 'Counted', why: 'Why not' },
  heatHatched: 'no value or too few',
  craft: {
    found: 'found',
    under: (edge: string): string => `above 0, under ${edge}`,
    orMore: (edge: string): string => `${edge} or more`,
    between: (from: string, to: string): string => `${from} to under ${to}`,
    noneFound: 'none found',
    tooFew: 'too few looks to say',
    notRecorded: 'no looks recorded: not clean',
    oftenSkipped: 'often skipped',
    withheld: 'withheld',
    noneNotNone: (hasLimit: boolean): string =>
      `–: none found, which is not none there${hasLimit ? '; the table has the upper limit' : ''}.`,
    noneFouled: 'No craft of these was found fouled on any part, so that shares of fouled craft have no value.',
    onFew: 'found, on too few craft to say how often',
    fewInAll: (fewest: number): string =>
      `Fewer than ${fewest} craft stand behind the figures: they are told as counts, which are no frequency.`,
    craftOf: (type: string | null, drive: string | null): string =>
      `${type ?? 'craft of no type'}${drive === null ? '' : `, drive ${drive}`}`,
    withDrive: (caption: string, drive: string): string => `${caption}; drive: ${drive}`,
    withoutDrive: (caption: string): string => `${caption}; drive not recorded`,
    countedType: (type: string): string => `Counted: craft recorded as ${type}.`,
    countedBuild: (type: string, drive: string): string => `Counted: craft recorded as ${type}, drive ${drive}.`,
    leftUntold: 'Craft of this type whose drive is not recorded are not counted here.',
    countedUntold: (type: string): string =>
      `Counted: craft recorded as ${type}. Their drive is not recorded, so drives are not told apart.`,
    leftTold: 'Craft of this type whose drive is recorded are not counted here.',
    lowerThere: 'A part that only some have is set against all.',
    noSuchCraft: (craft: string): string =>
      `No craft here is recorded as ${craft}, and none of that type without a drive. Nothing is drawn, which says nothing of where such craft are fouled.`,
    said: {
      noLooks: (part: string): string => `${part}: no looks recorded`,
      withheld: (part: string): string => `${part}: withheld, which is not clean`,
      tooFew: (part: string): string => `${part}: too few looks to say`,
      noneFound: (part: string, interval: string): string =>
        `${part}: none found${interval === '' ? '' : `, ${interval}`}`,
      fouled: (part: string, place: string, shown: string, interval: string): string =>
        `${part}: ${place}, ${shown}, ${interval}`,
      place: (place: string): string => `place ${place}`,
      skippedOn: (share: string): string => `; skipped on ${share}`,
      skipped: (share: string): string => `; skipped ${share}`,
    },
  },
} as const;
