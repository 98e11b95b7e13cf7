import type { Estimate } from '../statistic/estimate.js';
import { once } from './book/once.js';
import { countColumn, keyCells, keyColumns, numberColumn, shareColumn, wordColumn } from './columns.js';
import { countedBy, counting, modelled, type NumberRules, sharing } from './counted-rows.js';
import { type CraftParts, craftParts, part } from './craft-parts.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { fouledCraft } from './fouled-craft.js';
import { groupRows } from './group-rows.js';
import { type LookTests, lookTests } from './look-tests.js';
import { sentence } from './sentence.js';
import { ShareCount } from './shares.js';
import { enoughEvents } from './small-numbers.js';

const columns: readonly FindingColumn[] = [
  wordColumn('component', 'component', 'The part that comes first in the catalogue.'),
  wordColumn('with', 'with', 'The other part.'),
  countColumn('looked_both', 'fouled craft looked at on both', 'craft', 'Craft fouled anywhere with both looked at.'),
  countColumn('either', 'fouled on either', 'craft', 'Of those, with mussels on at least one of the two.'),
  countColumn('both', 'fouled on both', 'craft', 'Of those, with mussels on both.'),
  shareColumn(
    'together',
    'share together',
    'percent',
    'Fouled on both by fouled on either: how often one goes with the other.',
  ),
  numberColumn(
    'times_chance',
    'times chance',
    null,
    'two decimals',
    'Fouled on both by what two independent parts would give; above 1, one find is a reason to look at the other.',
  ),
];

interface Pair {
  /** The places of the two parts in the catalogue. */
  readonly places: readonly [number, number];
  readonly both: number;
  readonly cells: readonly FindingCell[];
}

function pairOf(parts: CraftParts, one: number, other: number): Pair | null {
  const { components, marks, places } = parts;
  const { craft } = fouledCraft(parts);
  const bothOf = (own: number) =>
    [marks[own * components.length + one]!, marks[own * components.length + other]!] as const;
  let [looked, onOne, onOther, onBoth] = [0, 0, 0, 0];
  for (const own of craft) {
    const [a, b] = bothOf(own);
    if ((a & b & part.looked) === 0) continue;
    looked++;
    if ((a & part.mussels) !== 0) onOne++;
    if ((b & part.mussels) !== 0) onOther++;
    if ((a & b & part.mussels) !== 0) onBoth++;
  }
  if (onBoth === 0) return null;
  const share = new ShareCount(places.count);
  for (const own of craft) {
    const [a, b] = bothOf(own);
    const isEither = (a & b & part.looked) !== 0 && ((a | b) & part.mussels) !== 0;
    if (isEither) share.add(places.placeOf[own]!, (a & b & part.mussels) !== 0);
  }
  const together: Estimate = share.clustered();
  const times = (onBoth * looked) / (onOne * onOther);
  const cells = [components[one]!, components[other]!, looked, share.trials, onBoth, together, times];
  return { places: [one, other], both: onBoth, cells };
}

/** Which looks stand behind each number of a pair of parts. */
function rulesOf({ components, marks }: CraftParts, tests: LookTests, [one, other]: Pair['places']): NumberRules {
  const { craftAt, findsOn, isLooked, looksAt } = tests;
  const seen = (row: number, place: number): number => marks[craftAt(row) * components.length + place]!;
  const bothHave = (row: number, mark: number): boolean => (seen(row, one) & seen(row, other) & mark) !== 0;
  const fouledCraftAt = once(() => new Set(Array.from(tests.anywhere.within!(), craftAt)));
  const [first, second] = [components[one]!, components[other]!];
  const looks = once(() => Uint32Array.from([...looksAt(one), ...looksAt(other)]).sort());
  const finds = once(() => findsOn(new Set([one, other])));
  const wasLooked = (row: number): boolean => bothHave(row, part.looked);
  const lookedBoth = {
    words: `looks at ${first} and ${second}, on fouled craft with both looked at`,
    within: looks,
    holds: (row: number) => isLooked(row) && wasLooked(row) && fouledCraftAt().has(craftAt(row)),
  };
  const either = {
    words: `looks that found mussels on ${first} or ${second}, both looked at`,
    within: finds,
    holds: wasLooked,
  };
  const both = {
    words: `looks that found mussels on ${first} and ${second}`,
    within: finds,
    holds: (row: number) => wasLooked(row) && bothHave(row, part.mussels),
  };
  const on = (place: number) => ({
    words: `looks that found mussels on ${components[place]}, both looked at`,
    within: once(() => findsOn(new Set([place]))),
    holds: wasLooked,
  });
  return {
    looked_both: counting(lookedBoth),
    either: counting(either),
    both: counting(both),
    together: sharing(both, either),
    times_chance: modelled('craft fouled on both by what two independent parts would give', [
      both,
      on(one),
      on(other),
      lookedBoth,
    ]),
  };
}

function pairsOf(parts: CraftParts): Pair[] {
  return parts.components
    .flatMap((_, one) =>
      parts.components.flatMap((_name, other) => (other <= one ? [] : (pairOf(parts, one, other) ?? []))),
    )
    .sort((one, other) => other.both - one.both);
}

/** Which parts are fouled together. */
export const foulingPairs: Finding = {
  name: 'fouling pairs',
  table: 'checks',
  account: {
    definition: 'Two parts go together when mussels were found on both of them on the same craft.',
    numerator: 'Fouled craft with mussels on both parts.',
    denominator: 'Fouled craft on which both parts were looked at, and mussels were found on at least one of the two.',
    leftOut: `Craft on which one of the two was absent or not looked at; pairs found together on fewer than ${enoughEvents} craft.`,
    method:
      'Exact interval at the effective sample size with station-days as clusters. A crew that stops at its first find makes parts look less often together than they are.',
    source: 'Jaccard 1912, New Phytologist 11:37-50; Korn and Graubard 1998, Survey Methodology 24:193-201.',
    formula:
      'share together = both ÷ either; times chance = both × looked at on both ÷ (fouled on one × fouled on the other)',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const by = named.filter((field) => field !== 'component');
    let few = 0;
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) => {
      const parts = craftParts(table, own);
      const pairs = pairsOf(parts);
      const tests = lookTests(table, own, parts);
      const enough = pairs.filter(({ both }) => both >= enoughEvents);
      few += pairs.length - enough.length;
      return enough.map(({ cells, places }) => ({
        cells: [...keyCells(table, by, key), ...cells],
        behind: once(() => ({ rows: own, craftOf: tests.craftOf, rules: rulesOf(parts, tests, places) })),
      }));
    });
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!.behind()),
      leftOut: sentence(
        few,
        'pair was',
        'pairs were',
        `found together on fewer than ${enoughEvents} craft, and not shown.`,
      ),
    };
  },
};
