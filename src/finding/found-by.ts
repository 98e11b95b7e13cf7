import { foundBy as foundByCodes } from '../record/codes.js';
import { countColumn, keyCells, keyColumns, shareColumn, wordColumn } from './columns.js';
import { type CountedGroup, countedBy, counting, sharing } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { bookText, countRows, isValue } from './row-tests.js';
import { sentence } from './sentence.js';
import { clusterPlaces, shareOfRows } from './shares.js';

const columns: readonly FindingColumn[] = [
  wordColumn('found_by', 'found by', 'By sight, by feel, or with a mirror, a light, a magnifier or a camera.'),
  countColumn('looks', 'looks', 'looks', 'Looks at a part that found mussels so.'),
  countColumn('recorded', 'of looks', 'looks', 'Looks that found mussels, with how recorded.'),
  shareColumn(
    'share',
    'share',
    'percent',
    'Looks that found them so by looks with how recorded, clustered by station-day.',
  ),
];

/** How mussels were found: what an eye alone would have missed. */
export const foundBy: Finding = {
  name: 'found by',
  table: 'checks',
  tellsCountsOnly: true,
  account: {
    definition: 'A look that found mussels was made by sight, by feel, or with a tool; the form records one of them.',
    numerator: 'Looks that found mussels by that means.',
    denominator: 'Looks that found mussels and say by what means.',
    leftOut: 'Looks that found nothing, or something else; looks that found mussels and do not say how.',
    method: 'Exact interval at the effective sample size with station-days as clusters. Each side of a part is a look.',
    source: 'Korn and Graubard 1998, Survey Methodology 24:193-201; the means: common practice, no source.',
    formula: 'share = looks that found mussels so ÷ looks that found mussels with how recorded',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const by = named.filter((field) => field !== 'found_by');
    const settled = isValue(table, 'settled', 'yes');
    const { codes, dictionary } = bookText(table, 'found_by');
    const found = rows.filter(settled);
    const known = (row: number): boolean => codes[row] !== 0;
    const asked: CountedGroup[] = [];
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: groupRows(table, found, by).flatMap(({ key, rows: own }) => {
        const places = clusterPlaces(table, own);
        return foundByCodes.codes.flatMap(({ code }): FindingCell[][] => {
          const wanted = dictionary.indexOf(code, 1);
          const share = shareOfRows(own, places, known, (row) => codes[row] === wanted);
          if (share.trials === 0) return [];
          const counted = {
            words: `looks that found mussels by ${code}`,
            holds: (row: number) => codes[row] === wanted,
          };
          const among = { words: 'looks that found mussels, with how recorded', holds: known };
          const rules = { looks: counting(counted), recorded: counting(among), share: sharing(counted, among) };
          asked.push({ rows: own, rules });
          return [[...keyCells(table, by, key), code, share.cases, share.trials, share.clustered()]];
        });
      }),
      counted: countedBy((row) => asked[row] ?? null),
      leftOut: sentence(
        countRows(found, (row) => !known(row)),
        'look that found mussels does',
        'looks that found mussels do',
        'not say how.',
      ),
    };
  },
};
