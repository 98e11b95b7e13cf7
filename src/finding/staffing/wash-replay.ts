import type { BookTable } from '../../record/book.js';
import type { Estimate } from '../../statistic/estimate.js';
import { generalWait } from '../../statistic/queue/general.js';
import { percentileInterval } from '../../statistic/resample/percentile-interval.js';
import { summary } from '../../statistic/summary.js';
import { once } from '../book/once.js';
import { countColumn, estimateColumn, keyCells, keyColumns, minutesColumn, numberColumn } from '../columns.js';
import { countedBy, counting, modelled, type NumberRules } from '../counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from '../finding.js';
import { groupRows } from '../group-rows.js';
import { bookText } from '../row-tests.js';
import { sentence } from '../sentence.js';
import { withheld } from '../small-numbers.js';
import { waitCause, waitRules, waitTimes } from '../wait-times.js';
import { type ReplayedMeans, replaySeason } from './replayed-season.js';
import { type WashLine, washLines } from './wash-lines.js';

const columns: readonly FindingColumn[] = [
  countColumn('washes', 'washes', 'washes', 'Washes ordered, all of which are replayed.'),
  countColumn('units', 'units', 'wash units', 'Units that washed there.'),
  numberColumn('busy', 'busy', null, 'percent', 'Minutes of washing by minutes that the units were there while open.'),
  numberColumn('recorded', 'recorded wait', 'minutes', 'minutes', 'The mean of the recorded waits that ended.'),
  minutesColumn('replayed', 'wait for a free unit', 'The mean wait in the replays: what want of a unit explains.'),
  minutesColumn('one_more', 'with one unit more', 'The same with one unit more.'),
  minutesColumn('saved', 'saved by one more', 'What one unit more saves each wash, on average.'),
  estimateColumn('saved_hours', 'saved in a season', 'hours', 'one decimal', 'What it saves all craft together.'),
  minutesColumn('one_fewer', 'with one unit fewer', 'The same with one unit fewer, where one would be left.'),
  numberColumn(
    'by_formula',
    'by formula',
    'minutes',
    'one decimal',
    'Allen and Cunneen’s formula for a steady line of the same averages, as a check; the replay has rush hours, too.',
  ),
];

/** The mean of replays with the limits of those whose days were drawn again. */
function replayedEstimate(replays: readonly ReplayedMeans[], of: (means: ReplayedMeans['means']) => number | null) {
  const [plain, drawn] = [replays.map(({ means }) => of(means)), replays.map((replay) => of(replay.drawn))];
  if (plain.some((mean) => mean === null)) return withheld('no unit would be left');
  const value = summary(plain.map((mean) => mean ?? 0)).mean;
  const known = drawn.filter((mean) => mean !== null);
  const enough = known.length >= 100;
  const all = enough
    ? percentileInterval(Float64Array.from(known), 0.95, 'replays with lengths and station-days drawn again')
    : null;
  // Replays that never make anyone wait say nothing of how long a wait could be.
  const interval = all !== null && all.low === all.high ? null : all;
  const why = all === null ? 'under 100 replays' : interval === null ? 'all replays gave the same' : null;
  return { value, numerator: null, denominator: null, interval, why, cautions: [] } satisfies Estimate;
}

/** An estimate and its limits, so many times. */
function times(estimate: Estimate, factor: number): Estimate {
  const { value, interval } = estimate;
  const scaled = (limit: number | null): number | null => (limit === null ? null : limit * factor);
  const limits = interval === null ? null : { ...interval, low: scaled(interval.low), high: scaled(interval.high) };
  return { ...estimate, value: scaled(value), interval: limits };
}

const difference =
  (less: number, more: number) =>
  (means: ReplayedMeans['means']): number | null => {
    const [one, other] = [means[less] ?? null, means[more] ?? null];
    return one === null || other === null ? null : one - other;
  };

/** How busy the units of one station are, and the wait of a steady line. */
function steadyLine({ rows, units, lengths, openMinutes }: WashLine): { busy: number | null; wait: number | null } {
  const { mean, standardDeviation } = summary([...lengths]);
  if (openMinutes === 0 || mean === null || mean === 0) return { busy: null, wait: null };
  const gap = openMinutes / rows.length;
  const line = { arrivalMean: gap, arrivalDeviation: gap, serviceMean: mean, servers: units };
  const { utilisation, allenCunneen } = generalWait({ ...line, serviceDeviation: standardDeviation ?? 0 });
  return { busy: utilisation, wait: allenCunneen };
}

function recordedMean(table: BookTable, rows: Uint32Array): number | null {
  const { minutes, cause } = waitTimes(table, 'wait', rows);
  return summary([...minutes.filter((_, at) => cause[at] === waitCause.done)]).mean;
}

/** Rows that several lists hold, ascending, each once. */
function together(lists: readonly Uint32Array[]): Uint32Array {
  return Uint32Array.from(new Set(lists.flatMap((rows) => [...rows]))).sort();
}

/** Which washes, and which days of their stations, stand behind each number of a group. */
function rulesOf(table: BookTable): (here: readonly WashLine[], rows: Uint32Array) => NumberRules {
  const [wait, washing] = [waitRules(table, 'wait'), waitRules(table, 'washing')];
  const unit = bookText(table, 'unit').codes;
  return (here, rows) => {
    const inGroup = new Set(rows);
    const washes = {
      words: 'washes ordered, all replayed',
      within: () => together(here.map((line) => line.rows)).filter((row) => inGroup.has(row)),
    };
    const days = {
      words: 'station days over which the units are taken to have been there',
      table: 'station_days',
      within: () => together(here.map((line) => line.days)),
    };
    const named = { words: 'washes that name their unit', holds: (row: number) => unit[row] !== 0 };
    const lengths = {
      ...washing.done,
      words: `${washing.done.words}, whose lengths are drawn`,
      within: () => together(here.map((line) => line.lengthsOf)),
    };
    const replay = modelled('the orders replayed, first come first washed, with lengths drawn from recorded ones', [
      washes,
      lengths,
    ]);
    const steady = 'a steady line of the same averages, over the hours that the station was open';
    return {
      washes: counting(washes),
      units: modelled('how many different units the washes name', [named]),
      busy: modelled(`minutes of washing by minutes of units: ${steady}`, [washes, lengths, days]),
      recorded: modelled('the mean of the recorded waits that ended', [wait.done]),
      replayed: replay,
      one_more: replay,
      saved: replay,
      saved_hours: replay,
      one_fewer: replay,
      by_formula: modelled(`Allen and Cunneen’s formula for ${steady}`, [washes, lengths, days]),
    };
  };
}

function shared(lines: readonly WashLine[], table: BookTable): string[] {
  const column = table.column('unit');
  if (column.kind !== 'text') return [];
  const stationsOf = new Map<number, Set<string>>();
  for (const { station, rows } of lines) {
    for (const row of rows) {
      const unit = column.codes[row]!;
      if (unit !== 0) stationsOf.set(unit, (stationsOf.get(unit) ?? new Set()).add(station));
    }
  }
  return [...stationsOf]
    .filter(([, stations]) => stations.size > 1)
    .map(([unit, stations]) => {
      const labels = table.fields.get('station')?.labels;
      const names = [...stations]
        .sort()
        .map((station) => labels?.get(station) ?? station)
        .join(' and ');
      return `${column.dictionary[unit]} washed at ${names}: each is replayed as if it had the unit to itself.`;
    });
}

/** What one wash unit more or fewer would do to waits: the season's orders replayed. */
export const washReplay: Finding = {
  name: 'wash replay',
  table: 'decontaminations',
  account: {
    definition:
      'Minutes from the order of a wash until a unit is free for it, had the season’s orders come again as they came: with the units there were, one more and one fewer at every station.',
    numerator: 'Minutes that replayed washes wait for a unit.',
    denominator: 'Washes ordered; those that left unwashed are replayed as if they had stayed.',
    leftOut: 'Washes of stations where no wash names a unit, or without a moment of order.',
    method:
      'Each station’s orders, in their order and at their moments, go to the first unit that is free; lengths are drawn from the recorded ones (of all stations where a station has under 30), the same for all numbers of units. Limits by drawing lengths and station-days again. What the replay does not know: crews, warming up, paperwork and distance, which is why recorded waits are longer; one unit more cannot shorten those.',
    source: 'Kiefer and Wolfowitz 1955, Trans Am Math Soc 78:1-18; Allen 1990, section 5.3.5, for the check.',
    formula: 'wait = the first moment at which one of the units is free − the moment of order, or 0',
    example: { by: ['station'], options: {} },
  },
  find: (book, table, rows, by, choices) => {
    const { lines, without } = washLines(book, table, rows);
    const groups = groupRows(table, rows, by);
    const groupAt = new Map(groups.flatMap(({ rows: own }, at) => [...own].map((row) => [row, at] as const)));
    const replays = replaySeason(
      lines,
      groups.length,
      (row) => groupAt.get(row)!,
      (row) => table.clusterOf?.[row] ?? row,
      choices.resamples,
    );
    const rulesFor = rulesOf(table);
    const found = groups.map(({ key, rows: own }, at) => {
      const inGroup = new Set(own);
      const here = lines.filter((line) => line.rows.some((row) => inGroup.has(row)));
      const washes = here.reduce((sum, line) => sum + line.rows.filter((row) => inGroup.has(row)).length, 0);
      const group = replays.map((replay) => replay[at]!);
      const [only] = here;
      const steady =
        here.length === 1 && only !== undefined && only.rows.length === washes
          ? steadyLine(only)
          : { busy: null, wait: null };
      const saved = washes === 0 ? withheld('nothing to replay') : replayedEstimate(group, difference(1, 2));
      const mean = (change: number): Estimate =>
        washes === 0 ? withheld('nothing to replay') : replayedEstimate(group, (means) => means[change] ?? null);
      const cells: FindingCell[] = [
        ...keyCells(table, by, key),
        washes,
        here.reduce((sum, { units }) => sum + units, 0),
        steady.busy,
        recordedMean(table, own),
        mean(1),
        mean(2),
        saved,
        times(saved, washes / 60),
        mean(0),
        steady.wait,
      ];
      return { cells, behind: once(() => ({ rows: own, rules: rulesFor(here, own) })) };
    });
    const labels = table.fields.get('station')?.labels;
    const crowded = lines
      .filter((line) => (steadyLine(line).busy ?? 0) >= 1)
      .map(({ station }) => labels?.get(station) ?? station);
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!.behind()),
      leftOut: sentence(without, 'wash is', 'washes are', 'left out: no unit or no moment of order is known.'),
      said: [
        ...shared(lines, table),
        ...crowded.map((station) => `${station}: washes take longer than the units are there; a backlog grows.`),
      ],
    };
  },
};
