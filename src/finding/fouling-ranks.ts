import type { Book, BookTable } from '../record/book.js';
import type { Estimate } from '../statistic/estimate.js';
import { type ItemCounts, type ResampledRank, resampledRanks } from '../statistic/resample/ranks.js';
import { once } from './book/once.js';
import { numberChoice } from './choices.js';
import { countColumn, estimateColumn, keyCells, keyColumns, numberColumn, whereNone, wordColumn } from './columns.js';
import { type CountedGroup, countedBy, modelled } from './counted-rows.js';
import { type CraftParts, craftParts, part } from './craft-parts.js';
import type { Finding, FindingCell, FindingChoices, FindingColumn } from './finding.js';
import { fouledCraft } from './fouled-craft.js';
import { looksAt } from './fouling-looks.js';
import { groupRows } from './group-rows.js';
import { sentence } from './sentence.js';
import { enoughEvents, withheld } from './small-numbers.js';

const fewFouled = `under ${enoughEvents} craft fouled there`;

const columns: readonly FindingColumn[] = [
  wordColumn('component', 'component', 'The part; one with sides counts once a craft.'),
  countColumn('fouled', 'craft fouled there', 'craft', 'Craft with mussels found on it.'),
  countColumn('fouled_craft', 'fouled craft', 'craft', 'Craft with mussels found on any part, among the rows asked.'),
  estimateColumn(
    'rank',
    'rank',
    null,
    'one decimal',
    'Its place by craft fouled there, 1 for the most; equals share one.',
  ),
  whereNone(
    fewFouled,
    numberColumn(
      'in_top',
      'chance to be in the top',
      null,
      'percent',
      'Resamples in which it was among the top parts.',
    ),
  ),
];

/** The station-days of some craft, by how many craft each part was fouled on there. */
function unitsOf(parts: CraftParts, strata: (craft: number) => number) {
  const { components, craftCount, marks, places } = parts;
  const counts = Array.from({ length: places.count }, () => new Map<number, number>());
  const stratumOf = new Uint32Array(places.count);
  for (let craft = 0; craft < craftCount; craft++) stratumOf[places.placeOf[craft]!] = strata(craft);
  for (const craft of fouledCraft(parts).craft) {
    const place = places.placeOf[craft]!;
    for (let at = 0; at < components.length; at++) {
      if ((marks[craft * components.length + at]! & part.mussels) === 0) continue;
      counts[place]!.set(at, (counts[place]!.get(at) ?? 0) + 1);
    }
  }
  const patterns: ItemCounts[] = [];
  const numberOf = new Map<string, number>();
  const patternOf = Uint32Array.from(counts, (own) => {
    const items = [...own.keys()].sort((a, b) => a - b);
    const key = items.map((item) => `${item}:${own.get(item)}`).join();
    const known = numberOf.get(key);
    if (known !== undefined) return known;
    numberOf.set(key, patterns.length);
    patterns.push({ items, counts: items.map((item) => own.get(item)!) });
    return patterns.length - 1;
  });
  return { stratumOf, patternOf, patterns, items: components.length };
}

function rankEstimate({ rank, interval }: ResampledRank, fouled: number): Estimate {
  if (fouled < enoughEvents) return withheld(fewFouled, fouled);
  return { value: rank, numerator: null, denominator: null, interval, why: null, cautions: [] };
}

/** How many craft each part had mussels on. */
function craftFouledThere(parts: CraftParts): Uint32Array {
  const { components, marks } = parts;
  const there = new Uint32Array(components.length);
  for (const craft of fouledCraft(parts).craft) {
    for (let at = 0; at < there.length; at++)
      if ((marks[craft * there.length + at]! & part.mussels) !== 0) there[at]!++;
  }
  return there;
}

/** A part with its numbers, and which looks stand behind them. */
interface RankedPart {
  readonly fouled: number;
  readonly cells: readonly FindingCell[];
  readonly behind: () => CountedGroup;
}

/** The looks behind the numbers of a part, by its place in the catalogue. */
function behindRanks(table: BookTable, rows: Uint32Array, parts: CraftParts): (place: number) => CountedGroup {
  const looks = once(() => looksAt(table, rows, parts));
  return (place) => {
    const group = looks()(place);
    const { fouled, fouled_craft } = group.rules;
    const anywhere = fouled_craft!.counted!;
    const rank = modelled(
      'the place among all parts by craft fouled there; limits by drawing station-days again',
      [anywhere],
      {
        counted: fouled!.counted,
      },
    );
    const chance = modelled('a share of resamples of the station-days, not of craft', [fouled!.counted!, anywhere]);
    return { ...group, rules: { fouled: fouled!, fouled_craft: fouled_craft!, rank, in_top: chance } };
  };
}

function ranksOf(book: Book, table: BookTable, rows: Uint32Array, choices: FindingChoices): RankedPart[] {
  const parts = craftParts(table, rows);
  const { components, firstRows } = parts;
  const { count, seed } = choices.resamples;
  const top = numberChoice(choices, 'top') ?? 5;
  const stratum = (craft: number): number => book.clusters.stratumOf[table.clusterOf![firstRows[craft]!]!]!;
  const ranks = resampledRanks(unitsOf(parts, stratum), top, count, seed);
  const fouledAnywhere = fouledCraft(parts).craft.length;
  const fouled = craftFouledThere(parts);
  const behind = behindRanks(table, rows, parts);
  return components
    .map((component, at): RankedPart => {
      const own = fouled[at]!;
      const chance = own < enoughEvents ? null : ranks[at]!.inTop;
      const cells = [component, own, fouledAnywhere, rankEstimate(ranks[at]!, own), chance];
      return { fouled: own, cells, behind: once(() => behind(at)) };
    })
    .filter((part) => part.fouled !== 0)
    .sort((one, other) => other.fouled - one.fouled);
}

/** How sure the order of parts is. */
export const foulingRanks: Finding = {
  name: 'fouling ranks',
  table: 'checks',
  account: {
    definition:
      'Parts in the order of craft on which they were fouled, with how far another season like this one could have moved each.',
    numerator: 'Craft with mussels on the part, on either side.',
    denominator: 'Craft with mussels on any part among the rows asked.',
    leftOut: `Parts on which no mussels were found. Parts fouled on fewer than ${enoughEvents} craft are shown without a rank.`,
    method:
      'Station-days are drawn again within station and season; each resample is ranked, equals sharing the mean of their places. The number of resamples and the seed are the notebook’s.',
    source: 'Goldstein and Spiegelhalter 1996, JRSS A 159:385-443.',
    formula: 'rank = 1 + parts fouled on more craft + ½ parts fouled on as many; limits = middle 95 % over resamples',
    example: { by: [], options: { top: 3 } },
  },
  options: [
    {
      name: 'top',
      kind: 'number',
      unit: null,
      choices: null,
      countsFrom: 1,
      usual: 5,
      meaning: 'How many parts are the top: the chance to be among them is given.',
    },
  ],
  find: (book, table, rows, named, choices) => {
    const by = named.filter((field) => field !== 'component');
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) =>
      ranksOf(book, table, own, choices).map(({ cells, behind }) => {
        return { cells: [...keyCells(table, by, key), ...cells], behind };
      }),
    );
    const few = found.filter(({ cells }) => cells.at(-1) === null).length;
    const { count, seed } = choices.resamples;
    const top = numberChoice(choices, 'top') ?? 5;
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!.behind()),
      leftOut: sentence(few, 'part has', 'parts have', `no rank: fouled on fewer than ${enoughEvents} craft.`),
      said: [`The top is ${top} ${top === 1 ? 'part' : 'parts'}; ${count} resamples of station-days, seed ${seed}.`],
    };
  },
};
