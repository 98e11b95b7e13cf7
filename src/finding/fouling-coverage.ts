import { greedyCover } from '../statistic/cover.js';
import { type CoveredKind, exactCover } from '../statistic/exact-cover.js';
import { raisedTo } from '../statistic/raised-to.js';
import { once } from './book/once.js';
import { countColumn, keyCells, keyColumns, numberColumn, whereNone, wordColumn } from './columns.js';
import { type CountedGroup, countedBy, counting, modelled, sharing } from './counted-rows.js';
import { type CraftParts, craftParts, part } from './craft-parts.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { fouledCraft } from './fouled-craft.js';
import { groupRows } from './group-rows.js';
import { type LookTests, lookTests } from './look-tests.js';

/** Said of the best set where finding it would take too long. */
const notSought = 'too many sets to try';

const columns: readonly FindingColumn[] = [
  countColumn('step', 'parts looked at', 'parts', 'How many parts the set holds with this one.'),
  wordColumn('component', 'component added', 'The part that catches the most fouled craft not caught yet.'),
  countColumn('newly_caught', 'newly caught', 'craft', 'Fouled craft that this part adds.'),
  countColumn('caught', 'caught', 'craft', 'Fouled craft with mussels on at least one part of the set.'),
  countColumn('fouled_craft', 'fouled craft', 'craft', 'Craft with mussels found on any part, among the rows asked.'),
  numberColumn('share', 'share caught', null, 'percent', 'Craft caught by fouled craft.'),
  whereNone('none', wordColumn('reached', 'mark reached', 'The first set to catch 50, 80 or 95 % of fouled craft.')),
  whereNone(
    notSought,
    countColumn(
      'best_caught',
      'caught by the best set',
      'craft',
      'Fouled craft caught by the best possible set of as many parts; missing where finding it would take too long.',
    ),
  ),
  whereNone(
    'none better',
    wordColumn('best_set', 'best set, where another', 'The parts of that set, where it catches more than this one.'),
  ),
  numberColumn(
    'of_best',
    'at least, of the best set',
    null,
    'percent',
    'This set’s craft by those of the best set; where that is not known, the least share that the way of choosing allows.',
  ),
];

const marks = [50, 80, 95] as const;

/** The craft on which each part had mussels. */
function craftByPart(parts: CraftParts): number[][] {
  const { components, marks: seen } = parts;
  const craftOf = components.map((): number[] => []);
  for (const craft of fouledCraft(parts).craft) {
    for (let at = 0; at < components.length; at++) {
      if ((seen[craft * components.length + at]! & part.mussels) !== 0) craftOf[at]!.push(craft);
    }
  }
  return craftOf;
}

/** Fouled craft by the parts they were fouled on: those alike are one kind. */
function kindsOf(parts: CraftParts): CoveredKind[] {
  const { components, marks: seen } = parts;
  const found = new Map<string, { sets: number[]; count: number }>();
  for (const craft of fouledCraft(parts).craft) {
    const sets: number[] = [];
    const from = craft * components.length;
    for (let at = 0; at < components.length; at++) if ((seen[from + at]! & part.mussels) !== 0) sets.push(at);
    const key = sets.join();
    const kind = found.get(key);
    if (kind === undefined) found.set(key, { sets, count: 1 });
    else kind.count++;
  }
  return [...found.values()];
}

/** The parts of a set that catches more craft than those caught; null where none does. */
function betterThan(caught: number, best: { covered: number; picks: readonly number[] }, parts: CraftParts) {
  return best.covered === caught ? null : best.picks.map((set) => parts.components[set]!).join(', ');
}

/** A set of parts by their places in the catalogue: the last one added, those before it, and the best set of as many. */
interface PartSet {
  readonly added: number;
  readonly before: readonly number[];
  readonly best: readonly number[] | null;
  readonly cells: readonly FindingCell[];
}

/** Which looks stand behind each number of a set of parts. */
function rulesOf({ marks, components }: CraftParts, tests: LookTests, { added, before, best }: PartSet) {
  const { anywhere, craftAt, findsOn } = tests;
  const isCaughtBefore = (row: number): boolean =>
    before.some((at) => (marks[craftAt(row) * components.length + at]! & part.mussels) !== 0);
  const caught = {
    words: `looks that found mussels on a part of the set of ${before.length + 1}`,
    within: once(() => findsOn(new Set([...before, added]))),
  };
  const newly = {
    words: `looks that found mussels on ${components[added]}, on craft with none on the parts before it`,
    within: once(() => findsOn(new Set([added]))),
    holds: (row: number) => !isCaughtBefore(row),
  };
  const byBest = {
    words: `looks that found mussels on a part of the best set of ${before.length + 1}`,
    within: once(() => findsOn(new Set(best))),
  };
  return {
    step: modelled('the number of parts in the set, and no count', [caught]),
    newly_caught: counting(newly),
    caught: counting(caught),
    fouled_craft: counting(anywhere),
    share: sharing(caught, anywhere),
    best_caught: counting(byBest),
    of_best:
      best === null
        ? modelled('1 − (1 − 1/k)^k for k parts, which the way of choosing allows whatever the records are', [])
        : sharing(caught, byBest),
  };
}

/** Parts in the order that catches most craft at every step; of equals the earlier of the catalogue. */
function coverageOf(parts: CraftParts): readonly PartSet[] {
  const { picks, covered } = greedyCover(craftByPart(parts), parts.components.length);
  const fouled = covered.at(-1) ?? 0;
  const kinds = kindsOf(parts);
  return picks.map((pick, at) => {
    const caught = covered[at]!;
    const before = at === 0 ? 0 : covered[at - 1]!;
    const reached = marks.filter((mark) => before * 100 < mark * fouled && caught * 100 >= mark * fouled);
    const size = at + 1;
    const best = exactCover(kinds, parts.components.length, size, caught);
    const cells = [
      size,
      parts.components[pick]!,
      caught - before,
      caught,
      fouled,
      caught / fouled,
      reached.length === 0 ? null : reached.map((mark) => `${mark} %`).join(', '),
      best?.covered ?? null,
      best === null ? notSought : betterThan(caught, best, parts),
      best === null ? 1 - raisedTo(1 - 1 / size, size) : caught / best.covered,
    ];
    return { added: pick, before: picks.slice(0, at), best: best?.picks ?? null, cells };
  });
}

/** The shortest list of parts that would have caught most fouled craft. */
export const foulingCoverage: Finding = {
  name: 'fouling coverage',
  table: 'checks',
  account: {
    definition:
      'A fouled craft is caught by a set of parts when mussels were found on at least one of them. Parts are added one by one, always the one that catches the most craft not yet caught.',
    numerator: 'Fouled craft with mussels on at least one part of the set.',
    denominator: 'Craft with mussels found on any part among the rows asked.',
    leftOut: 'Craft on which no mussels were found; parts on which none were found.',
    method:
      'Greedy choice, ties in the order of the catalogue. Beside it the best set of as many parts, by branch and bound, where 4,000 branches suffice; elsewhere a set of k parts is known to catch at least 1 − (1 − 1/k)^k of what the best would. Chosen and measured on the same craft, the shares flatter the set a little, and carry no interval.',
    source: 'Nemhauser, Wolsey and Fisher 1978, Mathematical Programming 14:265-294.',
    formula: 'share caught = craft with mussels on any part of the set ÷ fouled craft',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const by = named.filter((field) => field !== 'component');
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) => {
      const parts = craftParts(table, own);
      const tests = lookTests(table, own, parts);
      return coverageOf(parts).map((set) => ({
        cells: [...keyCells(table, by, key), ...set.cells],
        behind: once((): CountedGroup => {
          return { rows: own, craftOf: tests.craftOf, rules: rulesOf(parts, tests, set) };
        }),
      }));
    });
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!.behind()),
      leftOut: [],
    };
  },
};
