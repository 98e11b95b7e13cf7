import type { BookTable } from '../record/book.js';
import { captureRecapture } from '../statistic/detection/capture-recapture.js';
import { agreement } from '../statistic/detection/kappa.js';
import type { Estimate } from '../statistic/estimate.js';
import { once } from './book/once.js';
import { countColumn, estimateColumn, keyCells, keyColumns, shareColumn, wordColumn } from './columns.js';
import { comparedEstimate } from './compared-estimate.js';
import { type CountedGroup, countedBy, modelled, type NumberRule } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { sentence } from './sentence.js';
import { clusterPlaces, ShareCount } from './shares.js';
import { enoughMatches, withheld } from './small-numbers.js';
import { pairLooks, type TwoLooks } from './two-looks.js';

const columns: readonly FindingColumn[] = [
  wordColumn('unit', 'unit', 'parts: a part and side looked at twice; craft: a craft any of whose parts were.'),
  countColumn(
    'looked_twice',
    'looked at twice',
    'looks',
    'Looked at by both inspectors, the second blind to the first.',
  ),
  countColumn('both', 'found by both', 'looks', 'Mussels found at both looks.'),
  countColumn('first_only', 'first only', 'looks', 'Found at the first look alone.'),
  countColumn('second_only', 'second only', 'looks', 'Found at the second look alone.'),
  shareColumn('first_finds', 'a first look finds', 'percent', 'Found by both by all that the second look found.'),
  shareColumn(
    'positive',
    'agreement on finds',
    'percent',
    'Twice those found by both by what each look found, added up.',
  ),
  estimateColumn('kappa', 'kappa', null, 'two decimals', 'Agreement beyond chance; sinks when finds are rare.'),
  estimateColumn(
    'missed',
    'likely missed by both',
    'looks',
    'one decimal',
    'A range for those that neither look found; never added to any count.',
  ),
];

interface Tally {
  readonly both: number;
  readonly firstOnly: number;
  readonly secondOnly: number;
  readonly neither: number;
}

function tallyOf(pairs: readonly TwoLooks[]): Tally {
  const count = (first: boolean, second: boolean): number =>
    pairs.filter((pair) => pair.first === first && pair.second === second).length;
  return {
    both: count(true, true),
    firstOnly: count(true, false),
    secondOnly: count(false, true),
    neither: count(false, false),
  };
}

/** A craft was found by a look when any of its parts was. */
function byCraft(pairs: readonly TwoLooks[]): TwoLooks[] {
  const craft = new Map<number, { -readonly [Part in keyof TwoLooks]: TwoLooks[Part] }>();
  for (const pair of pairs) {
    const known = craft.get(pair.inspection);
    if (known === undefined) craft.set(pair.inspection, { ...pair });
    else {
      known.first ||= pair.first;
      known.second ||= pair.second;
    }
  }
  return [...craft.values()];
}

/** The share of what the second look found that the first had found, too, with station-days as clusters. */
function firstFinds(table: BookTable, pairs: readonly TwoLooks[]): Estimate {
  const found = pairs.filter(({ second }) => second);
  const places = clusterPlaces(
    table,
    Uint32Array.from(found, ({ row }) => row),
  );
  const share = new ShareCount(places.count);
  found.forEach(({ first }, at) => {
    share.add(places.placeOf[at]!, first);
  });
  return share.clustered();
}

function positiveAgreement({ both, firstOnly, secondOnly }: Tally): Estimate {
  const [numerator, denominator] = [2 * both, 2 * both + firstOnly + secondOnly];
  const why = 'an agreement of two looks has no simple interval; read the counts';
  return { value: numerator / denominator, numerator, denominator, interval: null, why, cautions: [] };
}

function missed({ both, firstOnly, secondOnly }: Tally): Estimate {
  const seen = both + firstOnly + secondOnly;
  const { chapman, logNormal } = captureRecapture(both + firstOnly, both + secondOnly, both);
  const limit = (end: number | null): number | null => (end === null ? null : Math.max(0, end - seen));
  return {
    value: Math.max(0, chapman - seen),
    numerator: null,
    denominator: null,
    interval: logNormal === null ? null : { ...logNormal, low: limit(logNormal.low), high: limit(logNormal.high) },
    why: logNormal === null ? 'one look found all that the other did: limits would have no width' : null,
    cautions: ['a range, never added to a count'],
  };
}

/** Which second looks, and which first ones, stand behind each number: of parts, or of the craft that they are of. */
function behindUnit(rows: Uint32Array, pairs: readonly TwoLooks[], ofCraft: readonly TwoLooks[] | null): CountedGroup {
  const craft = new Map(ofCraft?.map((one) => [one.inspection, one]));
  const found = (pair: TwoLooks): TwoLooks => craft.get(pair.inspection) ?? pair;
  const some = (words: string, holds: (pair: TwoLooks) => boolean) => {
    const own = once(() => pairs.filter((pair) => holds(found(pair))));
    return {
      second: { words: `second looks ${words}`, within: () => Uint32Array.from(own(), ({ row }) => row) },
      first: {
        words: `first looks at the same parts, ${words}`,
        table: 'checks',
        within: () => Uint32Array.from(own(), ({ firstRow }) => firstRow).sort(),
      },
    };
  };
  const unit = ofCraft === null ? 'at parts' : 'at craft';
  const all = some(`${unit} looked at twice`, () => true);
  const both = some(`${unit} with mussels found by both`, ({ first, second }) => first && second);
  const firstOnly = some(`${unit} with mussels found by the first alone`, ({ first, second }) => first && !second);
  const secondOnly = some(`${unit} with mussels found by the second alone`, ({ first, second }) => !first && second);
  const bySecond = some(`${unit} with mussels found by the second`, ({ second }) => second);
  const count = ({ second, first }: typeof all): NumberRule => {
    return { counted: second, among: null, uses: [first], model: null };
  };
  const four = [both.second, firstOnly.second, secondOnly.second, all.second];
  const inspectionOf = new Map(pairs.map(({ row, inspection }) => [row, inspection]));
  return {
    rows,
    ...(ofCraft === null ? {} : { craftOf: (row) => inspectionOf.get(row)! }),
    rules: {
      looked_twice: count(all),
      both: count(both),
      first_only: count(firstOnly),
      second_only: count(secondOnly),
      first_finds: { counted: both.second, among: bySecond.second, uses: [bySecond.first], model: null },
      positive: modelled('twice those found by both, by the finds of both looks added up', four.slice(0, 3)),
      kappa: modelled('Cohen’s kappa: agreement of the two looks beyond chance', four),
      missed: modelled('Chapman’s estimate of what neither look found, from what each found', four.slice(0, 3)),
    },
  };
}

function unitCells(table: BookTable, unit: string, pairs: readonly TwoLooks[]): FindingCell[] {
  const tally = tallyOf(pairs);
  const { both, firstOnly, secondOnly, neither } = tally;
  const counts = [unit, pairs.length, both, firstOnly, secondOnly];
  if (both < enoughMatches) {
    const few = withheld(`under ${enoughMatches} found by both`);
    return [...counts, few, few, few, few];
  }
  const { kappa, interval } = agreement([
    [both, firstOnly],
    [secondOnly, neither],
  ]);
  return [
    ...counts,
    firstFinds(table, pairs),
    positiveAgreement(tally),
    {
      ...comparedEstimate({ value: kappa, interval }, 'not defined where all looks say the same'),
      ...(kappa !== null && interval === null ? { why: 'all looks agree: limits would have no width' } : {}),
    },
    missed(tally),
  ];
}

/** How much of what is there a first look finds, from blind second looks. */
export const detection: Finding = {
  name: 'detection',
  table: 'rechecks',
  account: {
    definition:
      'Of parts looked at twice, the second time blind, the share of what the second look found that the first had found. It stands for the chance that a first look finds what is there if both looks err apart from each other; parts that are hard for both make it look too good.',
    numerator: 'Parts, or craft, found fouled by mussels at both looks.',
    denominator: 'Parts, or craft, that the second look found fouled by mussels, and the first had looked at.',
    leftOut: `Second looks at parts that the first had not looked at; looks that left open what they found. Under ${enoughMatches} found by both nothing is estimated.`,
    method:
      'Lincoln-Petersen with the exact interval at the effective sample size, station-days as clusters; agreement on finds first, kappa second; those likely missed by both after Chapman with log-normal limits, a range that is never added to a count.',
    source:
      'Chapman 1951, Univ California Publ Statist 1:131-160; Burnham et al. 1987, p. 212; Cicchetti and Feinstein 1990, J Clin Epidemiol 43:551-558; Cohen 1960, Educ Psychol Meas 20:37-46.',
    formula:
      'a first look finds = both ÷ (both + second only); agreement on finds = 2 both ÷ (2 both + first only + second only); missed = (n₁ + 1)(n₂ + 1) ÷ (both + 1) − 1 − seen',
    example: { by: [], options: {} },
  },
  find: (book, table, rows, by) => {
    const all = pairLooks(book, table, rows);
    const pairAt = new Array<TwoLooks | undefined>(table.rowCount);
    for (const pair of all.pairs) pairAt[pair.row] = pair;
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) => {
      const pairs = Array.from(own, (row) => pairAt[row]).filter((pair) => pair !== undefined);
      const craft = byCraft(pairs);
      const head = keyCells(table, by, key);
      return [
        { cells: [...head, ...unitCells(table, 'parts', pairs)], behind: once(() => behindUnit(own, pairs, null)) },
        { cells: [...head, ...unitCells(table, 'craft', craft)], behind: once(() => behindUnit(own, pairs, craft)) },
      ];
    });
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!.behind()),
      leftOut: [
        ...sentence(all.unpaired, 'second look has', 'second looks have', 'no first look at the same part and side.'),
        ...sentence(
          all.open,
          'second look did',
          'second looks did',
          'not look at the part, or left open what it found.',
        ),
      ],
    };
  },
};
