import { weekdays } from '../../record/calendar-names.js';
import { writtenNumber } from '../../record/written-numbers.js';
import { bestShifts } from '../../statistic/allocation/best-shifts.js';
import { dividedShifts } from '../../statistic/allocation/divided-shifts.js';
import type { ShiftChoice } from '../../statistic/allocation/shift-choice.js';
import { once } from '../book/once.js';
import { countColumn, estimateColumn, numberColumn, shareColumn, wordColumn } from '../columns.js';
import { type CountedGroup, countedBy, counting, modelled } from '../counted-rows.js';
import type { Finding, FindingCell, FindingColumn, FindingTable } from '../finding.js';
import { resampledEstimate } from './gain-estimate.js';
import type { Watch } from './shift-days.js';
import { solvedAgain } from './solved-plan.js';
import { gainFactors, gainOf, shiftBlocks } from './staff-blocks.js';
import { type StaffChoices, staffChoices, staffLimits, staffOptions } from './staff-choices.js';
import { type StaffGround, staffGround } from './staff-ground.js';
import { blockRows, type StaffRows, staffRows } from './staff-rows.js';

const columns: readonly FindingColumn[] = [
  wordColumn('station', 'station', 'Where the people are added.'),
  wordColumn('weekday', 'weekday', 'On which day of every week of the season.'),
  wordColumn('watch', 'watch', 'From when to when, by the station’s own clock.'),
  countColumn('people', 'people more', 'people', 'How many people are added to the watch.'),
  countColumn('days', 'days', 'station days', 'On how many days of the season: those that were open for the watch.'),
  countColumn('hours', 'staff hours', 'staff hours', 'What that takes in the season: every watch is paid whole.'),
  numberColumn('crew', 'staff now', 'people', 'one decimal', 'People present in the watch, on average.'),
  countColumn('full', 'full looks now', 'inspections', 'Full inspections begun in the watch in the season.'),
  estimateColumn('gained', 'further interceptions', 'inspections', 'two decimals', 'What the added people can expect.'),
  estimateColumn(
    'per_100_hours',
    'by 100 hours',
    'inspections',
    'two decimals',
    'The same by 100 of these staff hours.',
  ),
  shareColumn(
    'chosen_again',
    'chosen again',
    'percent',
    'Resamples of the season’s days whose own best plan adds people to this watch, too.',
  ),
];

const clock = (hour: number): string => `${(hour + 24) % 24}:00`;

/** A watch as readers say it. */
export function watchWords({ from, to }: Watch): string {
  return `${clock(from)} to ${clock(to)}`;
}

function chosenAgain(ground: StaffGround, told: StaffChoices, block: number, plans: readonly (ShiftChoice | null)[]) {
  const again = plans.filter((plan) => (plan?.taken[block] ?? 0) > 0).length;
  const none = { interval: null, cautions: [], why: 'a share of resamples, not of craft' };
  const asked = told.hours >= ground.season.blocks[block]!.hours;
  return plans.length === 0 || !asked
    ? { value: null, numerator: null, denominator: null, ...none, why: 'not resampled' }
    : { value: again / plans.length, numerator: again, denominator: plans.length, ...none };
}

/** Which records stand behind each number of a shift that the plan chooses. */
function behindShift(ground: StaffGround, rows: Uint32Array, all: StaffRows, block: number): CountedGroup {
  const { days, full } = blockRows(ground, block);
  const chosen = modelled('the best whole shifts within the hours, by integer programming', [
    days,
    full,
    all.found,
    all.full,
  ]);
  const expected = modelled(
    'what the added people can expect: full inspections of the watch times the station’s rate, drawn to the others, with diminishing returns',
    [full, all.found, all.full, days],
  );
  return {
    rows,
    rules: {
      people: chosen,
      days: counting(days),
      hours: modelled('people times the hours of the watch on its days', [days]),
      crew: modelled('people present on average: staff hours by open hours', [days]),
      full: counting(full),
      gained: expected,
      per_100_hours: expected,
      chosen_again: modelled('resamples of the station days whose own best plan chooses the watch', [
        all.days,
        all.full,
      ]),
    },
  };
}

type Factors = readonly (readonly number[])[];

function planRows(
  names: ReadonlyMap<string, string>,
  ground: StaffGround,
  told: StaffChoices,
  factors: Factors,
  plan: ShiftChoice,
): { cells: FindingCell[]; block: number }[] {
  const { season, yields, resampled, shifts } = ground;
  const limits = staffLimits(told, season.stations.length);
  const plans = resampled
    .slice(0, 200)
    .map((drawn) => bestShifts(shiftBlocks(season, drawn, factors), limits).at(told.hours));
  const chosen = season.blocks.flatMap((block, at) => (plan.taken[at]! > 0 ? [{ block, at }] : []));
  const rows = chosen.map(({ block, at }) => {
    const people = plan.taken[at]!;
    const factor = factors[at]!.slice(0, people).reduce((sum, one) => sum + one, 0);
    const gain = factor * yields[at]!.expected;
    const draws = Float64Array.from(resampled, (drawn) => factor * drawn[at]!.expected);
    const hours = people * block.hours;
    const cells: FindingCell[] = [
      names.get(season.stations[block.station]!) ?? season.stations[block.station]!,
      weekdays[block.weekday]!,
      watchWords(shifts.watches[block.watch]!),
      people,
      block.days,
      hours,
      block.crew,
      yields[at]!.full,
      resampledEstimate(gain, draws),
      resampledEstimate(
        (100 * gain) / hours,
        draws.map((draw) => (100 * draw) / hours),
      ),
      chosenAgain(ground, told, at, plans),
    ];
    return { cells, block: at, worth: gain / hours };
  });
  return rows.sort((one, other) => other.worth - one.worth);
}

function planSaid(
  ground: StaffGround,
  told: StaffChoices,
  factors: Factors,
  plan: ShiftChoice,
  checked: string,
): string[] {
  const { season, yields, resampled } = ground;
  const blocks = shiftBlocks(season, yields, factors);
  const drawn = Float64Array.from(resampled, (own) => gainOf(plan.taken, factors, own));
  const { interval } = resampledEstimate(plan.gain, drawn);
  const divided = dividedShifts(blocks, staffLimits(told, season.stations.length));
  const limit = (value: number | null): string => (value === null ? 'not reached' : written(value, 1));
  const limits = interval === null ? '' : ` (95 % interval ${limit(interval.low)} to ${limit(interval.high)})`;
  return [
    `Of ${writtenNumber(String(told.hours))} staff hours the plan uses ${writtenNumber(String(plan.spent))} and can expect ${written(plan.gain, 1)} further interceptions in a season like this one${limits}.`,
    ...(divided === null
      ? []
      : [
          `If shifts could be divided the same hours could bring ${written(divided.gain, 2)}; a hundred hours more would then bring ${written(100 * divided.price, 2)} (the shadow price).`,
        ]),
    checked,
    ...(season.prior === null
      ? ['Stations’ rates spread no more than chance: every station has the rate of all.']
      : []),
  ];
}

const written = (value: number, decimals: number): string => writtenNumber(value.toFixed(decimals));

/** Why there is no plan where no station-day asked of can bear a shift. */
export const noWatch = 'on no day asked of was a station open with its times and staff hours recorded';

/** An answer without rows that says why. */
export function noPlan(own: readonly FindingColumn[], why: string): FindingTable {
  return { columns: own, rows: [], leftOut: [], said: [`No plan: ${why}.`] };
}

/** Where so many further staff hours can expect most interceptions, as whole shifts through the season. */
export const staffPlan: Finding = {
  name: 'staff plan',
  table: 'station_days',
  account: {
    definition:
      'The whole shifts (a station, a weekday, a watch, every week of the season) that so many further staff hours should be spent on to intercept most.',
    numerator:
      'Interceptions to be expected of the people added: full inspections of the watch times the station’s interception rate, drawn to that of the others.',
    denominator: 'Staff hours that the shifts take on the days that were open for the watch.',
    leftOut:
      'Days closed, days without staff hours or times, watches open for less than half; hours at which no station was ever open, of which nothing is known.',
    method:
      'The crew of today reaches a share of the passing craft that is assumed; each further person reaches the same share of what is still missed, so that gains diminish. Whole shifts within the hours by integer programming. Limits, and how often the same watch is chosen, by drawing station-days again within station and weekday; they cover chance alone, not the assumed share, nor whether craft are missed for want of staff.',
    source:
      'Koopman 1957, Operations Research 5:613-626 (diminishing returns of search); Bellman 1957, Dynamic Programming; Griffiths 1973, Biometrics 29:637-648 (drawing rates together).',
    formula: 'gain of j people = expected × ((1 − reached)^(0) − (1 − reached)^(j ÷ crew)) × (1 − reached) ÷ reached',
    example: { by: [], options: { hours: 300, shift: 4, reached: 0.8, people: 1 } },
  },
  options: staffOptions,
  find: (book, table, rows, _by, choices) => {
    const told = staffChoices(choices);
    if ('wrong' in told) return noPlan(columns, told.wrong);
    const ground = staffGround(book, table, rows, told.shift, choices.resamples);
    const factors = ground.season.blocks.map(({ crew }) => gainFactors(crew, told.reached, told.people));
    const blocks = shiftBlocks(ground.season, ground.yields, factors);
    if (blocks.length === 0) return noPlan(columns, noWatch);
    const limits = staffLimits(told, ground.season.stations.length);
    const plan = bestShifts(blocks, limits).at(told.hours);
    if (plan === null) return noPlan(columns, 'no choice of shifts keeps the least and the most of every station');
    const checked = solvedAgain(book.solver, blocks, limits, plan);
    const chosen = planRows(table.fields.get('station')?.labels ?? new Map(), ground, told, factors, plan);
    const all = staffRows(ground);
    const behind = chosen.map(({ block }) => once(() => behindShift(ground, rows, all, block)));
    return {
      columns,
      rows: chosen.map(({ cells }) => cells),
      counted: countedBy((row) => behind[row]!()),
      leftOut: ground.leftOut,
      said: planSaid(ground, told, factors, plan, checked),
    };
  },
};
