import { countColumn, keyCells, keyColumns, numberColumn, shareColumn } from './columns.js';
import { countedBy, counting, modelled, sharing } from './counted-rows.js';
import type { Finding, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { bookNumber, countRows } from './row-tests.js';
import { sentence } from './sentence.js';
import { clusterPlaces, shareOfRows } from './shares.js';

const columns: readonly FindingColumn[] = [
  countColumn('starts', 'starts', 'inspections', 'Inspections whose start is known.'),
  countColumn('on_hour', 'at :00', 'inspections', 'Starts written down as a full hour.'),
  shareColumn('on_hour_share', 'share at :00', 'percent', 'Starts at a full hour by starts.'),
  countColumn('on_half', 'at :30', 'inspections', 'Starts written down as a half hour.'),
  shareColumn('on_half_share', 'share at :30', 'percent', 'Starts at a half hour by starts.'),
  numberColumn('expected', 'expected', null, 'percent', 'One of sixty, were every minute as likely.'),
];

/** How often starts were written down as a full or half hour, by station unless other fields are named. */
export const timeHeaping: Finding = {
  name: 'time heaping',
  table: 'inspections',
  account: {
    definition:
      'Starts heap where they are rounded to the full or half hour. Each minute of the hour would hold one of sixty starts, were they written down as they came.',
    numerator: 'Inspections that began at minute 0, or at minute 30, by the station’s own clock.',
    denominator: 'Inspections whose start is known.',
    leftOut: 'Inspections without a known start.',
    method:
      'Exact interval at the effective sample size with station-days as clusters. By station, and by further fields where they are named. Crowds at opening time heap honestly.',
    source: 'common practice, no source',
    formula: 'share = starts at the minute ÷ known starts',
    example: { by: [], options: {} },
  },
  find: (_book, table, rows, named) => {
    const by = named.includes('station') ? named : ['station', ...named];
    const { values, missing } = bookNumber(table, 'minute');
    const known = (row: number): boolean => missing === null || missing[row] === 0;
    const starts = { words: 'inspections whose start is known', holds: known };
    const at = (minute: number, words: string) => ({
      words: `inspections begun at ${words}`,
      holds: (row: number) => known(row) && values[row] === minute,
    });
    const [onHour, onHalf] = [at(0, 'a full hour'), at(30, 'a half hour')];
    const rules = {
      starts: counting(starts),
      on_hour: counting(onHour),
      on_hour_share: sharing(onHour, starts),
      on_half: counting(onHalf),
      on_half_share: sharing(onHalf, starts),
      expected: modelled('one of the sixty minutes of an hour, whatever the records are', []),
    };
    const groups = groupRows(table, rows, by);
    return {
      columns: [...keyColumns(table, by), ...columns],
      counted: countedBy((row) => ({ rows: groups[row]!.rows, rules })),
      rows: groups.map(({ key, rows: own }) => {
        const places = clusterPlaces(table, own);
        const onHour = shareOfRows(own, places, known, (row) => values[row] === 0);
        const onHalf = shareOfRows(own, places, known, (row) => values[row] === 30);
        return [
          ...keyCells(table, by, key),
          onHour.trials,
          onHour.cases,
          onHour.clustered(),
          onHalf.cases,
          onHalf.clustered(),
          1 / 60,
        ];
      }),
      leftOut: sentence(
        countRows(rows, (row) => !known(row)),
        'inspection has',
        'inspections have',
        'no known start.',
      ),
    };
  },
};
