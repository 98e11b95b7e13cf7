import type { Book, BookTable } from '../record/book.js';
import { miettinenNurminenDifference } from '../statistic/difference/miettinen-nurminen.js';
import type { Estimate } from '../statistic/estimate.js';
import { once } from './book/once.js';
import { estimateColumn, keyCells, keyColumns, numberColumn, shareColumn, wordColumn } from './columns.js';
import { comparedEstimate } from './compared-estimate.js';
import { type CountedGroup, countedBy, modelled, sharing } from './counted-rows.js';
import { type CraftParts, craftParts, part } from './craft-parts.js';
import { definitionBreak } from './definition-break.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { fouledCraft } from './fouled-craft.js';
import { looksAt } from './fouling-looks.js';
import { groupRows } from './group-rows.js';
import { ShareCount } from './shares.js';
import { fewEvents, withheld } from './small-numbers.js';

const columns: readonly FindingColumn[] = [
  wordColumn('component', 'component', 'The part; one with sides counts once a craft.'),
  numberColumn('from_season', 'from season', null, 'year', 'The earlier season.'),
  numberColumn('to_season', 'to season', null, 'year', 'The later season.'),
  shareColumn('earlier', 'earlier', 'percent', 'Craft fouled there by fouled craft of the earlier season.'),
  shareColumn('later', 'later', 'percent', 'Craft fouled there by fouled craft of the later season.'),
  estimateColumn(
    'change',
    'change in points',
    null,
    'percent',
    'Later less earlier; limits that hold zero are no change.',
  ),
];

/** Fields of a look on which it hangs whether a part counts as fouled. */
const deciding = ['component', 'state', 'finding'];

interface Season {
  readonly season: number;
  readonly parts: CraftParts;
  /** The looks behind the numbers of a part of that season, by its place. */
  readonly looks: () => (place: number) => CountedGroup;
}

function seasonsOf(table: BookTable, rows: Uint32Array): readonly Season[] {
  return groupRows(table, rows, ['season']).flatMap(({ key, rows: own }) => {
    const [season] = key;
    if (typeof season !== 'number') return [];
    const parts = craftParts(table, own);
    const looks = once(() => looksAt(table, own, parts));
    return [{ season, parts, looks }];
  });
}

function shareIn({ parts }: Season, at: number): ShareCount {
  const share = new ShareCount(parts.places.count);
  for (const craft of fouledCraft(parts).craft) {
    const seen = parts.marks[craft * parts.components.length + at]!;
    share.add(parts.places.placeOf[craft]!, (seen & part.mussels) !== 0);
  }
  return share;
}

/** Whether anybody looked at the part in that season: a form that did not ask for it says nothing of it. */
function wasLookedAt({ parts }: Season, at: number): boolean {
  const { components, craftCount, marks } = parts;
  for (let craft = 0; craft < craftCount; craft++) {
    if ((marks[craft * components.length + at]! & part.looked) !== 0) return true;
  }
  return false;
}

/** The words of a change of definition that lies between two seasons; null where none does. */
function brokenBy({ sum }: Book, from: number, to: number): string | null {
  const change = definitionBreak(sum, { table: 'checks', fields: deciding }, [from, to]);
  return change === null ? null : `“${change.field}” changed its meaning in ${change.season}`;
}

function changeOf(earlier: ShareCount, later: ShareCount, broken: string | null): Estimate {
  if (broken !== null) return withheld(broken);
  const compared = miettinenNurminenDifference(later.cases, later.trials, earlier.cases, earlier.trials);
  return comparedEstimate(compared, 'no fouled craft in one of the seasons', fewEvents(earlier.cases, later.cases));
}

/** Which looks stand behind the change of a part from one season to another. */
function behindChange(rows: Uint32Array, from: Season, to: Season, at: number): CountedGroup {
  const looksOf = ({ season, looks }: Season) => {
    const { fouled, fouled_craft } = looks()(at).rules;
    const of = (rule: typeof fouled) => ({ ...rule!.counted!, words: `${rule!.counted!.words}, in ${season}` });
    return { there: of(fouled), anywhere: of(fouled_craft) };
  };
  const [earlier, later] = [looksOf(from), looksOf(to)];
  const name = 'the name of a season, and no count';
  return {
    rows,
    craftOf: from.looks()(at).craftOf!,
    rules: {
      from_season: modelled(name, [earlier.anywhere]),
      to_season: modelled(name, [later.anywhere]),
      earlier: sharing(earlier.there, earlier.anywhere),
      later: sharing(later.there, later.anywhere),
      change: modelled('the later share less the earlier one, with score limits', [
        later.there,
        later.anywhere,
        earlier.there,
        earlier.anywhere,
      ]),
    },
  };
}

interface Change {
  readonly cells: readonly FindingCell[];
  readonly behind: () => CountedGroup;
}

function changesOf(book: Book, table: BookTable, rows: Uint32Array): Change[] {
  const seasons = seasonsOf(table, rows);
  return seasons.slice(1).flatMap((to, step) => {
    const from = seasons[step]!;
    const broken = brokenBy(book, from.season, to.season);
    return to.parts.components.flatMap((component, at) => {
      const [earlier, later] = [shareIn(from, at), shareIn(to, at)];
      if (earlier.cases + later.cases === 0) return [];
      const unseen = [from, to].find((season) => !wasLookedAt(season, at));
      const why = unseen === undefined ? null : `nobody looked at it in ${unseen.season}`;
      const shareOf = (season: Season, share: ShareCount) =>
        why !== null && season === unseen ? withheld(why) : share.clustered();
      const change = changeOf(earlier, later, broken ?? why);
      const cells = [component, from.season, to.season, shareOf(from, earlier), shareOf(to, later), change];
      return [{ cells, behind: once(() => behindChange(rows, from, to, at)) }];
    });
  });
}

/** Whether a part is fouled on more or on fewer of the fouled craft than in the season before. */
export const foulingChanges: Finding = {
  name: 'fouling changes',
  table: 'checks',
  account: {
    definition:
      'The share of fouled craft on which a part was fouled, in each season and the one before it among the rows asked, and the difference in points.',
    numerator: 'Craft of that season with mussels on the part, on either side.',
    denominator: 'Craft of that season with mussels on any part.',
    leftOut:
      'Parts fouled in neither season. A part that nobody looked at in one of the seasons has no share in it, and no difference. Where the meaning of a part, of its state or of a finding changed between the two, there is no difference.',
    method:
      'Score limits for the difference of two independent shares; the shares’ own limits have station-days as clusters, the difference’s do not. No allowance is made for the number of parts compared: of twenty, one shows a change by chance.',
    source: 'Miettinen and Nurminen 1985, Statistics in Medicine 4:213-226.',
    formula: 'change = fouled there ÷ fouled craft (later) − fouled there ÷ fouled craft (earlier)',
    example: { by: [], options: {} },
  },
  find: (book, table, rows, named) => {
    const by = named.filter((field) => field !== 'component' && field !== 'season');
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) =>
      changesOf(book, table, own).map(({ cells, behind }) => ({
        cells: [...keyCells(table, by, key), ...cells],
        behind,
      })),
    );
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!.behind()),
      leftOut: [],
      said: [`${found.length} differences are shown, not adjusted for their number.`],
    };
  },
};
