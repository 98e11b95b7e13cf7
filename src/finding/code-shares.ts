import type { Book, BookTable } from '../record/book.js';
import { countColumn, keyCells, keyColumns, numberColumn, shareColumn, whereNone, wordColumn } from './columns.js';
import { countedBy, counting, modelled, type NumberRules, sharing } from './counted-rows.js';
import { definitionBreak } from './definition-break.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { type GroupKey, groupRows } from './group-rows.js';
import { bookText, hasText, isValue } from './row-tests.js';
import { sentence } from './sentence.js';
import { type ClusterPlaces, clusterPlaces, ShareCount } from './shares.js';

/** The coded fields whose use by inspectors is watched. */
const watched = ['standing_water', 'vegetation', 'risk', 'outcome', 'direction'] as const;

/** A share that grows or shrinks by this factor jumps. */
const jump = 3;
/** A field whose codes have all moved by less than this factor holds still. */
const still = 2;
/** A code counts as moved only where it was used this often in the season before or the season itself. */
const enough = 20;

const columns: readonly FindingColumn[] = [
  wordColumn('field', 'field', 'The coded field.'),
  wordColumn('code', 'code', 'One of its codes.'),
  numberColumn('season', 'season', null, 'year', 'The season.'),
  countColumn('coded', 'inspections coded', 'inspections', 'Inspections of the season with any code in the field.'),
  countColumn('used', 'with this code', 'inspections', 'Of those, with this code.'),
  shareColumn('share', 'share', 'percent', 'With this code by inspections coded.'),
  whereNone(
    'no season before, or not used in it',
    numberColumn('ratio', 'by season before', null, 'two decimals', 'The share divided by that of the season before.'),
  ),
  whereNone(
    'no jump',
    wordColumn(
      'mark',
      'mark',
      `Jumps: the share moved threefold or more at ${enough} uses or more; others still: the other fields held still.`,
    ),
  ),
];

/** One code of one field in one season. */
interface CodeUse {
  readonly code: string;
  readonly count: ShareCount;
}

interface FieldSeason {
  readonly field: string;
  readonly season: number;
  /** The inspections of the season. */
  readonly rows: Uint32Array;
  readonly uses: readonly CodeUse[];
}

function usesOf(table: BookTable, field: string, rows: Uint32Array, places: ClusterPlaces): readonly CodeUse[] {
  const { codes, dictionary } = bookText(table, field);
  return (table.fields.get(field)?.codes ?? []).map((code) => {
    const wanted = dictionary.indexOf(code, 1);
    const count = new ShareCount(places.count);
    for (let at = 0; at < rows.length; at++) {
      const own = codes[rows[at]!]!;
      if (own !== 0) count.add(places.placeOf[at]!, own === wanted);
    }
    return { code, count };
  });
}

/** The share by that of the season before; null where either season has none coded, or the code was not in use before. */
function ratioOf(now: ShareCount, before: ShareCount | null): number | null {
  if (before === null || before.cases === 0 || now.trials === 0) return null;
  // Whole numbers multiplied first: 60 of 100 after 20 of 100 is exactly threefold.
  return (now.cases * before.trials) / (now.trials * before.cases);
}

/** By what factor a code's share moved, up or down; 1 where too few uses tell, infinite where it came or went. */
function moveOf(now: ShareCount, before: ShareCount | null): number {
  if (before === null || before.trials === 0 || now.trials === 0) return 1;
  if (Math.max(now.cases, before.cases) < enough) return 1;
  const ratio = ratioOf(now, before);
  return ratio === null || ratio === 0 ? Number.POSITIVE_INFINITY : Math.max(ratio, 1 / ratio);
}

function previous(all: readonly FieldSeason[], { field, season }: FieldSeason): FieldSeason | null {
  const earlier = all.filter((one) => one.field === field && one.season < season);
  return earlier.at(-1) ?? null;
}

function before(use: CodeUse, earlier: FieldSeason | null): ShareCount | null {
  return earlier?.uses.find(({ code }) => code === use.code)?.count ?? null;
}

function greatestMove(all: readonly FieldSeason[], one: FieldSeason): number {
  const earlier = previous(all, one);
  return Math.max(1, ...one.uses.map((use) => moveOf(use.count, before(use, earlier))));
}

/** Whether most of the other fields held still in that season. */
function othersStill(all: readonly FieldSeason[], { field, season }: FieldSeason): boolean {
  const others = all.filter((other) => other.season === season && other.field !== field);
  return others.filter((other) => greatestMove(all, other) < still).length * 2 > others.length;
}

function markOf(book: Book, all: readonly FieldSeason[], one: FieldSeason, use: CodeUse): string | null {
  const earlier = previous(all, one);
  const since = earlier?.season ?? one.season - 1;
  const changed =
    definitionBreak(book.sum, { table: 'inspections', fields: [one.field] }, [since, one.season]) !== null;
  const jumps = moveOf(use.count, before(use, earlier)) >= jump;
  const marks = [
    ...(jumps ? [othersStill(all, one) ? 'jumps, others still' : 'jumps, others too'] : []),
    ...(changed ? ['meaning changed'] : []),
  ];
  return marks.length === 0 ? null : marks.join('; ');
}

/** Which inspections of a season, and of the one before, stand behind each number of a code. */
function rulesOf(table: BookTable, one: FieldSeason, earlier: FieldSeason | null, code: string): NumberRules {
  const isCode = isValue(table, one.field, code);
  const isCoded = hasText(table, one.field);
  const ofSeason = ({ field, season, rows }: FieldSeason) => ({
    coded: { words: `inspections of ${season} with any code of ${field}`, within: () => rows, holds: isCoded },
    used: { words: `inspections of ${season} with ${field} ${code}`, within: () => rows, holds: isCode },
  });
  const { coded, used } = ofSeason(one);
  const before = earlier === null ? null : ofSeason(earlier);
  return {
    season: modelled('the name of the season, and no count', [coded]),
    coded: counting(coded),
    used: counting(used),
    share: sharing(used, coded),
    ratio: modelled('the share divided by that of the season before', [
      used,
      coded,
      ...(before === null ? [] : [before.used, before.coded]),
    ]),
  };
}

interface CodeSeason {
  readonly cells: readonly FindingCell[];
  readonly rows: Uint32Array;
  readonly rules: NumberRules;
}

function sharesOf(book: Book, table: BookTable, rows: Uint32Array): readonly CodeSeason[] {
  const seasons = groupRows(table, rows, ['season']).filter(({ key }) => key[0] !== null);
  const all = watched.flatMap((field) =>
    seasons.map(({ key, rows: own }): FieldSeason => {
      return { field, season: key[0] as number, rows: own, uses: usesOf(table, field, own, clusterPlaces(table, own)) };
    }),
  );
  return watched.flatMap((field) => {
    const ofField = all.filter((one) => one.field === field);
    const inUse = (code: string): boolean =>
      ofField.some(({ uses }) => uses.some((use) => use.code === code && use.count.cases > 0));
    return (table.fields.get(field)?.codes ?? []).filter(inUse).flatMap((code) =>
      ofField.map((one): CodeSeason => {
        const use = one.uses.find((candidate) => candidate.code === code)!;
        const { count } = use;
        const earlier = previous(all, one);
        const ratio = ratioOf(count, before(use, earlier));
        const mark = markOf(book, all, one, use);
        const cells = [field, code, one.season, count.trials, count.cases, count.clustered(), ratio, mark];
        return { cells, rows: one.rows, rules: rulesOf(table, one, earlier, code) };
      }),
    );
  });
}

/** How the use of each code moves from season to season: a jump while all else holds still is a changed meaning. */
export const codeShares: Finding = {
  name: 'code shares',
  table: 'inspections',
  account: {
    definition:
      'The share of a code among the inspections of a season with any code in its field. A share that moves threefold while other fields hold still more often tells of a changed form or rule than of a changed traffic.',
    numerator: 'Inspections with the code.',
    denominator: 'Inspections of the season with any code in the field.',
    leftOut: 'Inspections without a code in the field, and those whose season is not known. Codes never used.',
    method: `Exact interval at the effective sample size with station-days as clusters. A move counts from ${enough} uses on; other fields hold still when most of them have no code that moved by a factor of ${still} or more.`,
    source: 'common practice, no source',
    formula:
      'share = inspections with the code ÷ inspections with any code; change = share ÷ share of the season before',
    example: { by: [], options: {} },
  },
  find: (book, table, rows, named) => {
    const by = named.filter((field) => field !== 'season');
    const noSeason = groupRows(table, rows, ['season']).find(({ key }: { key: GroupKey }) => key[0] === null);
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) =>
      sharesOf(book, table, own).map((one) => ({ ...one, cells: [...keyCells(table, by, key), ...one.cells] })),
    );
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!),
      leftOut: sentence(noSeason?.rows.length ?? 0, 'inspection has', 'inspections have', 'no known season.'),
    };
  },
};
