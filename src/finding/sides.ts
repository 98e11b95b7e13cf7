import type { BookTable } from '../record/book.js';
import type { Estimate } from '../statistic/estimate.js';
import { holm } from '../statistic/many-comparisons.js';
import { mcNemar } from '../statistic/paired/mcnemar.js';
import { pairedOddsRatio } from '../statistic/paired/odds-ratio.js';
import { once } from './book/once.js';
import { countColumn, estimateColumn, keyCells, keyColumns, numberColumn, wordColumn } from './columns.js';
import { comparedEstimate } from './compared-estimate.js';
import { countedBy, counting, modelled, type NumberRules } from './counted-rows.js';
import { type CraftParts, craftParts, part } from './craft-parts.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { type LookTests, lookTests } from './look-tests.js';
import { isValue } from './row-tests.js';
import { sentence } from './sentence.js';
import { enoughEvents, withheld } from './small-numbers.js';

const columns: readonly FindingColumn[] = [
  wordColumn('component', 'component', 'The part, which has two sides.'),
  countColumn('both_looked', 'both sides looked at', 'craft', 'Craft on which both sides were looked at.'),
  countColumn('one_looked', 'one side only', 'craft', 'Craft on which only one side was looked at; left out.'),
  countColumn('neither', 'neither fouled', 'craft', 'Craft with mussels on neither side.'),
  countColumn('port_only', 'port only', 'craft', 'Craft with mussels on the port side alone.'),
  countColumn('starboard_only', 'starboard only', 'craft', 'Craft with mussels on the starboard side alone.'),
  countColumn('both', 'both fouled', 'craft', 'Craft with mussels on both sides.'),
  estimateColumn(
    'odds',
    'port for each starboard',
    null,
    'two decimals',
    'Craft fouled to port alone by craft fouled to starboard alone.',
  ),
  numberColumn('p_value', 'P, mid-P', null, 'P value', 'McNemar’s test that neither side is fouled more often.'),
  numberColumn('p_holm', 'P, Holm', null, 'P value', 'The same, adjusted for all tests of the table.'),
];

function sidesOf({ components, craftCount, marks }: CraftParts, at: number): FindingCell[] | null {
  let oneLooked = 0;
  let [neither, portOnly, starboardOnly, both] = [0, 0, 0, 0];
  for (let craft = 0; craft < craftCount; craft++) {
    const seen = marks[craft * components.length + at]!;
    const looked = seen & (part.portLooked | part.starboardLooked);
    if (looked === 0) continue;
    const port = (seen & part.portMussels) !== 0;
    const starboard = (seen & part.starboardMussels) !== 0;
    if (looked === part.portLooked || looked === part.starboardLooked) oneLooked++;
    else if (port && starboard) both++;
    else if (port) portOnly++;
    else if (starboard) starboardOnly++;
    else neither++;
  }
  const looked = neither + portOnly + starboardOnly + both;
  if (looked + oneLooked === 0) return null;
  const differ = portOnly + starboardOnly;
  const p = differ === 0 ? null : mcNemar(portOnly, starboardOnly).pMid;
  return [
    components[at]!,
    looked,
    oneLooked,
    neither,
    portOnly,
    starboardOnly,
    both,
    oddsOf(portOnly, starboardOnly),
    p,
  ];
}

const bothLooked = part.portLooked | part.starboardLooked;
const bothMussels = part.portMussels | part.starboardMussels;

/** Which looks at a part with sides stand behind each number of it. */
function rulesOf(table: BookTable, { components, marks }: CraftParts, tests: LookTests, at: number): NumberRules {
  const name = components[at]!;
  const [port, starboard] = [isValue(table, 'side', 'port'), isValue(table, 'side', 'starboard')];
  const seen = (row: number): number => marks[tests.craftAt(row) * components.length + at]!;
  const within = (): Uint32Array => tests.looksAt(at);
  const isSide = (row: number): boolean => tests.isLooked(row) && (port(row) || starboard(row));
  const where = (words: string, holds: (marks: number) => boolean) => ({
    words: `looks at the sides of ${name}, on craft with ${words}`,
    within,
    holds: (row: number) => isSide(row) && holds(seen(row)),
  });
  const isWhole = (own: number): boolean => (own & bothLooked) === bothLooked;
  const withMussels = (words: string, mussels: number) =>
    where(words, (own) => isWhole(own) && (own & bothMussels) === mussels);
  const whole = where('both looked at', isWhole);
  const portOnly = withMussels('mussels to port alone', part.portMussels);
  const starboardOnly = withMussels('mussels to starboard alone', part.starboardMussels);
  const differ = [portOnly, starboardOnly];
  return {
    both_looked: counting(whole),
    one_looked: counting(where('only one looked at', (own) => !isWhole(own))),
    neither: counting(withMussels('mussels on neither', 0)),
    port_only: counting(portOnly),
    starboard_only: counting(starboardOnly),
    both: counting(withMussels('mussels on both', bothMussels)),
    odds: modelled('craft fouled to port alone by craft fouled to starboard alone, with mid-P limits', [], {
      counted: portOnly,
      among: starboardOnly,
    }),
    p_value: modelled('McNemar’s test with mid-P on craft that differ between sides', differ),
    p_holm: modelled('that test’s P, adjusted by Holm for all tests of the table', differ),
  };
}

/** The odds of port to starboard among craft that differ. */
function oddsOf(port: number, starboard: number): Estimate {
  if (port + starboard === 0) return withheld('no craft differs between its sides');
  const { value, midP } = pairedOddsRatio(port, starboard);
  const cautions = port + starboard < enoughEvents ? [`under ${enoughEvents} craft that differ`] : [];
  return {
    ...comparedEstimate({ value, interval: midP }, 'none to starboard alone', cautions),
    numerator: port,
    denominator: starboard,
  };
}

/** Rows with Holm's adjustment of the last cell behind it. */
function adjusted(rows: readonly (readonly FindingCell[])[]): FindingCell[][] {
  const p = rows.map((cells) => cells.at(-1)).filter((cell) => typeof cell === 'number');
  const fitted = holm(p);
  let test = 0;
  return rows.map((cells) => [...cells, cells.at(-1) === null ? null : fitted[test++]!]);
}

/** How many tests the table holds, said beside it. */
function testsMade(rows: readonly (readonly FindingCell[])[]): string[] {
  const tests = rows.filter((cells) => cells.at(-1) !== null).length;
  return sentence(tests, 'test was', 'tests were', 'made; P, Holm is adjusted for their number.');
}

/** Whether mussels are found more often on one side than on the other. */
export const sides: Finding = {
  name: 'sides',
  table: 'checks',
  account: {
    definition: 'Of craft on which both sides of a part were looked at, those with mussels on one side alone.',
    numerator: 'Craft with mussels on the port side alone, on the starboard side alone, on both.',
    denominator: 'Craft on which both sides were looked at.',
    leftOut:
      'Craft on which only one side was looked at, which would tell which side inspectors favour. Parts without sides.',
    method:
      'McNemar’s test with mid-P on craft that differ between sides; none where no craft differs; Holm’s adjustment for the number of tests. Odds with mid-P limits. Not adjusted for clustering.',
    source:
      'McNemar 1947, Psychometrika 12:153-157; Fagerland, Lydersen and Laake 2013, BMC Med Res Methodol 13:91; Holm 1979, Scand J Statist 6:65-70.',
    formula: 'mid-P = 2 P(X ≤ least) − P(X = least), with X binomial(port only + starboard only, ½)',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const by = named.filter((field) => field !== 'component');
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) => {
      const parts = craftParts(table, own);
      const tests = lookTests(table, own, parts);
      return parts.components.flatMap((_, at) => {
        const cells = sidesOf(parts, at);
        if (cells === null) return [];
        const behind = once(() => ({ rows: own, craftOf: tests.craftOf, rules: rulesOf(table, parts, tests, at) }));
        return [{ cells: [...keyCells(table, by, key), ...cells], behind }];
      });
    });
    const all = found.map(({ cells }) => cells);
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: adjusted(all),
      counted: countedBy((row) => found[row]!.behind()),
      leftOut: [],
      said: testsMade(all),
    };
  },
};
