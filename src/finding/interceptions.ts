import type { BookTable } from '../record/book.js';
import { countColumn, keyCells, keyColumns, shareColumn } from './columns.js';
import { countedBy, counting, type NumberRules, sharing } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { countRows, hasText, isValue } from './row-tests.js';
import { sentence } from './sentence.js';
import { clusterPlaces, shareOfRows } from './shares.js';

const columns: readonly FindingColumn[] = [
  countColumn('inspections', 'all inspections', 'inspections', 'Every inspection, paper checks too.'),
  countColumn('paper_checks', 'paper checks', 'inspections', 'Only a receipt or seal was looked at; in no rate.'),
  countColumn('full', 'full inspections', 'inspections', 'The craft itself was looked over.'),
  countColumn('intercepted', 'interceptions', 'inspections', 'Full inspections that ended in an interception.'),
  shareColumn(
    'interception',
    'interceptions per 1,000',
    'per 1,000',
    'Interceptions by full inspections; the interval takes station-days as clusters.',
  ),
  shareColumn(
    'interception_unclustered',
    'the same, unclustered',
    'per 1,000',
    'The same rate with the exact interval that takes inspections as independent; too narrow where they are not.',
  ),
  countColumn(
    'depth_known',
    'full inspections with depth known',
    'inspections',
    'Full inspections whose parts were looked at, and where mussels were found, with stage and number recorded.',
  ),
  countColumn('established', 'established', 'inspections', 'Of those, with attached mussels above trace on some part.'),
  shareColumn('established_rate', 'established per 1,000', 'per 1,000', 'Established by those with depth known.'),
  countColumn(
    'first',
    'first inspections',
    'inspections',
    'Full inspections that are the first of their craft in its season; craft without a pseudonym have none.',
  ),
  countColumn('first_intercepted', 'interceptions at the first', 'inspections', 'Those that were interceptions.'),
  shareColumn('first_interception', 'per 1,000 first inspections', 'per 1,000', 'Those by first inspections.'),
];

/** The tests that the counts are made of, by row. */
function testsOf(table: BookTable) {
  const full = isValue(table, 'extent', 'full');
  const depthKnown = hasText(table, 'established');
  return {
    full,
    paper: isValue(table, 'extent', 'paper check'),
    intercepted: isValue(table, 'outcome', 'intercepted'),
    mussels: isValue(table, 'mussels_on_parts', 'yes'),
    established: isValue(table, 'established', 'yes'),
    depthKnown: (row: number): boolean => full(row) && depthKnown(row),
    first: isValue(table, 'first_of_season', 'yes'),
    craftKnown: hasText(table, 'craft'),
  };
}

type Tests = ReturnType<typeof testsOf>;

/** Which inspections stand behind each column. */
function rulesOf({ full, paper, intercepted, depthKnown, established, first }: Tests): NumberRules {
  const both = (one: Tests['full'], other: Tests['full']) => (row: number) => one(row) && other(row);
  const fully = { words: 'full inspections', holds: full };
  const deep = { words: 'full inspections with depth known', holds: depthKnown };
  const firsts = { words: 'first inspections', holds: first };
  const found = { words: 'full inspections that were interceptions', holds: both(full, intercepted) };
  const settled = { words: 'those with established mussels', holds: both(depthKnown, established) };
  const atFirst = { words: 'first inspections that were interceptions', holds: both(first, intercepted) };
  return {
    inspections: counting({ words: 'all inspections' }),
    paper_checks: counting({ words: 'paper checks', holds: paper }),
    full: counting(fully),
    intercepted: counting(found),
    interception: sharing(found, fully),
    interception_unclustered: sharing(found, fully),
    depth_known: counting(deep),
    established: counting(settled),
    established_rate: sharing(settled, deep),
    first: counting(firsts),
    first_intercepted: counting(atFirst),
    first_interception: sharing(atFirst, firsts),
  };
}

function measure(table: BookTable, rows: Uint32Array, tests: Tests): FindingCell[] {
  const places = clusterPlaces(table, rows);
  const intercepted = shareOfRows(rows, places, tests.full, tests.intercepted);
  const established = shareOfRows(rows, places, tests.depthKnown, tests.established);
  const first = shareOfRows(rows, places, tests.first, tests.intercepted);
  return [
    rows.length,
    countRows(rows, tests.paper),
    intercepted.trials,
    intercepted.cases,
    intercepted.clustered(),
    intercepted.unclustered(),
    established.trials,
    established.cases,
    established.clustered(),
    first.trials,
    first.cases,
    first.clustered(),
  ];
}

function leftOut(rows: Uint32Array, tests: Tests): string[] {
  const paper = countRows(rows, tests.paper);
  const noDepth = countRows(rows, (row) => tests.full(row) && !tests.depthKnown(row));
  const noCraft = countRows(rows, (row) => tests.full(row) && !tests.craftKnown(row));
  const otherwise = countRows(rows, (row) => tests.full(row) && tests.mussels(row) && !tests.intercepted(row));
  return [
    ...sentence(paper, 'paper check is', 'paper checks are', 'counted apart, in no denominator.'),
    ...sentence(
      noDepth,
      'full inspection is',
      'full inspections are',
      'left out of the established rate: no part was looked at, or finding, stage or number was left open.',
    ),
    ...sentence(
      noCraft,
      'full inspection has',
      'full inspections have',
      'no craft pseudonym, and no part in the first inspections.',
    ),
    ...sentence(
      otherwise,
      'full inspection has',
      'full inspections have',
      'mussels on a part but another outcome: not counted as interceptions.',
    ),
  ];
}

/** Interceptions per 1,000 full inspections, at two depths and by two units of counting. */
export const interceptions: Finding = {
  name: 'interceptions',
  table: 'inspections',
  tellsCountsOnly: true,
  account: {
    definition:
      'An interception is an inspection that ended so because mussels were found on the craft, trailer or equipment, or in its water. Established: attached mussels above trace on some part.',
    numerator: 'Full inspections with the outcome intercepted; those established; those that were first of the season.',
    denominator:
      'Full inspections; those with depth known; first full inspections of each craft in its season. Detected, never prevalence.',
    leftOut: 'Paper checks; for the established rate, inspections whose depth is not known.',
    method:
      'Exact interval at the effective sample size with station-days as clusters; with no case, a one-sided upper limit; the unclustered exact interval beside it.',
    source:
      'Clopper and Pearson 1934; Korn and Graubard 1998, Survey Methodology 24:193-201; depth of interception: common practice, no source.',
    formula: 'interception = intercepted ÷ full; established rate = established ÷ depth known; both × 1,000',
    example: { by: ['station'], options: {} },
  },
  find: (_book, table, rows, by) => {
    const tests = testsOf(table);
    const groups = groupRows(table, rows, by);
    const rules = rulesOf(tests);
    return {
      columns: [...keyColumns(table, by), ...columns],
      counted: countedBy((row) => ({ rows: groups[row]!.rows, rules })),
      rows: groups.map((group) => [...keyCells(table, by, group.key), ...measure(table, group.rows, tests)]),
      leftOut: leftOut(rows, tests),
    };
  },
};
