import type { Book, BookTable } from '../record/book.js';
import { miettinenNurminenDifference } from '../statistic/difference/miettinen-nurminen.js';
import type { Estimate } from '../statistic/estimate.js';
import { estimateColumn, keyCells, keyColumns, numberColumn, shareColumn, wordColumn } from './columns.js';
import { comparedEstimate } from './compared-estimate.js';
import { type CraftParts, craftParts, fouledParts, part } from './craft-parts.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
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
  readonly fouledOn: Uint8Array;
}

function seasonsOf(table: BookTable, rows: Uint32Array): readonly Season[] {
  return groupRows(table, rows, ['season']).flatMap(({ key, rows: own }) => {
    const [season] = key;
    if (typeof season !== 'number') return [];
    const parts = craftParts(table, own);
    return [{ season, parts, fouledOn: fouledParts(parts) }];
  });
}

function shareIn({ parts, fouledOn }: Season, at: number): ShareCount {
  const share = new ShareCount(parts.places.count);
  for (let craft = 0; craft < parts.craftCount; craft++) {
    if (fouledOn[craft]! === 0) continue;
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
  const change = sum.definitionChanges.find(
    ({ table, field, season }) => table === 'checks' && deciding.includes(field) && season > from && season <= to,
  );
  return change === undefined ? null : `“${change.field}” changed its meaning in ${change.season}`;
}

function changeOf(earlier: ShareCount, later: ShareCount, broken: string | null): Estimate {
  if (broken !== null) return withheld(broken);
  const compared = miettinenNurminenDifference(later.cases, later.trials, earlier.cases, earlier.trials);
  return comparedEstimate(compared, 'no fouled craft in one of the seasons', fewEvents(earlier.cases, later.cases));
}

function changesOf(book: Book, table: BookTable, rows: Uint32Array): FindingCell[][] {
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
      return [[component, from.season, to.season, shareOf(from, earlier), shareOf(to, later), change]];
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
      changesOf(book, table, own).map((cells) => [...keyCells(table, by, key), ...cells]),
    );
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found,
      leftOut: [],
      said: [`${found.length} differences are shown, not adjusted for their number.`],
    };
  },
};
