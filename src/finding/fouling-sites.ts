import { componentOf } from '../record/components.js';
import { once } from './book/once.js';
import { countColumn, keyCells, keyColumns, shareColumn, wordColumn } from './columns.js';
import { countedBy } from './counted-rows.js';
import { type CraftParts, craftParts, part } from './craft-parts.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { fouledCraft } from './fouled-craft.js';
import { looksAt } from './fouling-looks.js';
import { groupRows } from './group-rows.js';
import { sentence } from './sentence.js';
import { ShareCount } from './shares.js';

const columns: readonly FindingColumn[] = [
  wordColumn('component', 'component', 'The part; one with sides counts once a craft.'),
  wordColumn('area', 'area', 'The group of parts it belongs to.'),
  countColumn('carrying', 'craft carrying it', 'craft', 'Craft whose form does not call the part absent.'),
  countColumn('looked', 'craft looked at', 'craft', 'Craft that carry it and had it looked at, on one side at least.'),
  countColumn('fouled', 'craft fouled there', 'craft', 'Craft with mussels found on it, on either side.'),
  countColumn('fouled_craft', 'fouled craft', 'craft', 'Craft with mussels found on any part, among the rows asked.'),
  shareColumn(
    'share_of_fouled',
    'share of fouled craft',
    'percent',
    'Craft fouled there by fouled craft: where to look first. Sums to more than 100 %.',
  ),
  shareColumn('fouled_rate', 'fouled per 1,000 looks', 'per 1,000', 'Craft fouled there by craft looked at there.'),
  countColumn('skipped', 'craft skipped', 'craft', 'Craft that carry it and had it not looked at on any side.'),
  shareColumn('skipped_share', 'skipped share', 'percent', 'Craft skipped by craft carrying it.'),
  countColumn('sole', 'sole site', 'craft', 'Craft on which it was the only fouled part.'),
  shareColumn('sole_share', 'sole-site share', 'percent', 'Craft on which it was the only one by craft fouled there.'),
];

interface Site {
  /** The part's place in the catalogue. */
  readonly at: number;
  readonly fouled: number;
  readonly cells: readonly FindingCell[];
}

function siteOf(parts: CraftParts, at: number): Site | null {
  const { components, craftCount, marks, places } = parts;
  const ofLooks = new ShareCount(places.count);
  const skipped = new ShareCount(places.count);
  for (let craft = 0; craft < craftCount; craft++) {
    const seen = marks[craft * components.length + at]!;
    if ((seen & part.carried) === 0) continue;
    const place = places.placeOf[craft]!;
    const looked = (seen & part.looked) !== 0;
    skipped.add(place, !looked);
    if (looked) ofLooks.add(place, (seen & part.mussels) !== 0);
  }
  if (skipped.trials === 0) return null;
  const ofFouled = new ShareCount(places.count);
  const sole = new ShareCount(places.count);
  const { craft: fouledOnes, partsOf } = fouledCraft(parts);
  for (const craft of fouledOnes) {
    const place = places.placeOf[craft]!;
    const fouled = (marks[craft * components.length + at]! & part.mussels) !== 0;
    ofFouled.add(place, fouled);
    if (fouled) sole.add(place, partsOf[craft] === 1);
  }
  const component = components[at]!;
  return {
    at,
    fouled: sole.trials,
    cells: [
      component,
      componentOf(component)?.area ?? null,
      skipped.trials,
      ofLooks.trials,
      sole.trials,
      ofFouled.trials,
      ofFouled.clustered(),
      ofLooks.clustered(),
      skipped.cases,
      skipped.clustered(),
      sole.cases,
      sole.clustered(),
    ],
  };
}

/** Every part that some craft carries, the most often fouled first, then in the order of the catalogue. */
function sitesOf(parts: CraftParts): readonly Site[] {
  return parts.components.flatMap((_, at) => siteOf(parts, at) ?? []).sort((one, other) => other.fouled - one.fouled);
}

/** Where mussels are found on craft, and which parts are skipped. */
export const foulingSites: Finding = {
  name: 'fouling sites',
  table: 'checks',
  tellsCountsOnly: true,
  account: {
    definition:
      'A fouling site is a part on which mussels were found. Two figures answer two questions: the share of fouled craft fouled there (where to look first), and craft fouled there per 1,000 that had it looked at.',
    numerator: 'Craft with mussels on the part, on either side; craft that carry it and had it not looked at.',
    denominator:
      'Craft with mussels on any part among the rows asked; craft that carry the part and had it looked at; craft that carry it.',
    leftOut:
      'Absent parts stand in no denominator; parts not checked are skipped, never clean. Plants, mud and suspected grit are no mussels.',
    method:
      'One inspection is one craft. Exact interval at the effective sample size with station-days as clusters; with no case, a one-sided upper limit. A crew that stops at its first find makes later parts look cleaner: read the skipped share beside.',
    source: 'Korn and Graubard 1998, Survey Methodology 24:193-201; the part catalogue: common practice, no source.',
    formula:
      'share of fouled craft = fouled there ÷ fouled anywhere; per 1,000 looks = fouled there ÷ looked at × 1,000; skipped share = skipped ÷ carrying; sole-site share = sole ÷ fouled there',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const by = named.filter((field) => field !== 'component');
    const groups = groupRows(table, rows, by).map(({ key, rows: own }) => {
      const parts = craftParts(table, own);
      return { key, parts, sites: sitesOf(parts), looks: once(() => looksAt(table, own, parts)) };
    });
    const found = groups.flatMap(({ key, sites, looks }) => {
      return sites.map(({ at, cells }) => ({ cells: [...keyCells(table, by, key), ...cells], at, looks }));
    });
    const open = groups.reduce((sum, { parts }) => sum + parts.openFindings, 0);
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!.looks()(found[row]!.at)),
      leftOut: sentence(
        open,
        'fouled look has',
        'fouled looks have',
        'no finding recorded: looked at, but not fouled by mussels.',
      ),
    };
  },
};
