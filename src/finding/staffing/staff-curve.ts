import type { ProgramSolver } from '../../record/program-solver.js';
import { writtenNumber } from '../../record/written-numbers.js';
import { bestShifts } from '../../statistic/allocation/best-shifts.js';
import { dividedShifts } from '../../statistic/allocation/divided-shifts.js';
import type { ShiftBlock, ShiftChoice, ShiftLimits } from '../../statistic/allocation/shift-choice.js';
import type { Estimate } from '../../statistic/estimate.js';
import { numberChoice } from '../choices.js';
import { countColumn, estimateColumn, numberColumn } from '../columns.js';
import { countedBy, modelled, type NumberRules } from '../counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from '../finding.js';
import { withheld } from '../small-numbers.js';
import { resampledEstimate } from './gain-estimate.js';
import { boundAgain, solvedAgain } from './solved-plan.js';
import { gainFactors, gainOf, shiftBlocks } from './staff-blocks.js';
import { staffChoices, staffLimits, staffOptions } from './staff-choices.js';
import { type StaffGround, staffGround } from './staff-ground.js';
import { noPlan, noWatch } from './staff-plan.js';
import { staffRows } from './staff-rows.js';

const columns: readonly FindingColumn[] = [
  {
    ...countColumn('hours', 'staff hours to be had', 'staff hours', 'Further staff hours in the season.'),
    names: true,
  },
  countColumn('used', 'used', 'staff hours', 'Hours that the best whole shifts take of them.'),
  numberColumn('shifts', 'shifts', null, 'whole', 'Whole shifts of the season that they buy.'),
  estimateColumn('gained', 'further interceptions', 'inspections', 'one decimal', 'What these shifts can expect.'),
  numberColumn(
    'price',
    'by 100 hours more',
    'inspections',
    'two decimals',
    'The shadow price: further interceptions that 100 hours beyond these would bring if shifts could be divided.',
  ),
];

const costColumns: readonly FindingColumn[] = [
  estimateColumn(
    'cost_each',
    'cost of each, on average',
    'dollars',
    'dollars',
    'The wages of the hours used by the further interceptions.',
  ),
  numberColumn('cost_next', 'cost of the next', 'dollars', 'dollars', 'The wage by the shadow price.'),
];

function costEach(wage: number, used: number, gained: Estimate): Estimate {
  if (gained.value === null || gained.value === 0) return withheld('nothing is chosen');
  const { interval } = gained;
  const flip = (limit: number | null): number | null => (limit === null || limit <= 0 ? null : (wage * used) / limit);
  const turned =
    interval === null
      ? null
      : { ...interval, low: flip(interval.high), high: flip(interval.low), method: interval.method };
  return { ...gained, value: (wage * used) / gained.value, interval: turned };
}

/** Which records stand behind the numbers of every sum of hours: all that can be planned from, and none counted by itself. */
function rulesOf(ground: StaffGround): NumberRules {
  const { days, full, found } = staffRows(ground);
  const of = (model: string) => modelled(model, [days, full, found]);
  const expected = of('what the best whole shifts can expect, by integer programming over the season’s blocks');
  return {
    hours: of('the sum of hours that is asked about, and no count'),
    used: expected,
    shifts: expected,
    gained: expected,
    price: of('the shadow price of the linear relaxation, in which shifts can be divided'),
    cost_each: of('the wages of the hours used by the interceptions that they can expect'),
    cost_next: of('the wage by the shadow price'),
  };
}

interface Plans {
  readonly sums: readonly number[];
  /** One a sum; null where no choice keeps what is asked of the stations. */
  readonly plans: readonly (ShiftChoice | null)[];
}

/**
 * How the plans were found and what a solver makes of them: of one alone what it makes of any plan. Whole shifts at every step
 * take a solver longer than all else on a page, so that tests hold those to it, and here only what divided shifts bring.
 */
function checkedAgain(
  solver: ProgramSolver | undefined,
  blocks: readonly ShiftBlock[],
  limits: ShiftLimits,
  { sums, plans }: Plans,
): string {
  const furthest = plans.findLastIndex((plan) => plan !== null);
  const most = sums[furthest]!;
  if (sums.length === 1 || solver === undefined) {
    return solvedAgain(solver, blocks, { ...limits, most }, plans[furthest]!);
  }
  boundAgain(solver, blocks, { ...limits, most });
  const hours = writtenNumber(String(most));
  return `The plans were found by one dynamic program. What ${hours} staff hours could bring if shifts could be divided, ${solver.name} found too.`;
}

/** A plan at every step takes its time: beyond this a page would wait. */
const mostSteps = 50;

/** What further staff hours can expect to intercept, for a range of hours. */
export const staffCurve: Finding = {
  name: 'staff curve',
  table: 'station_days',
  account: {
    definition:
      'The interceptions that the best whole shifts can expect, for several sums of staff hours up to the most.',
    numerator: 'Interceptions to be expected of the people added, as in the staff plan.',
    denominator: 'Staff hours of the shifts chosen.',
    leftOut: 'As in the staff plan.',
    method:
      'Every sum is planned anew. Limits by drawing station-days again within station and weekday, the shifts staying as chosen. The shadow price is that of the linear relaxation, in which shifts can be divided.',
    source:
      'Koopman 1957, Operations Research 5:613-626; Dantzig 1957, Operations Research 5:266-277 (the relaxation and its price).',
    formula: 'cost of each = wage × hours used ÷ further interceptions; cost of the next = wage ÷ shadow price',
    example: { by: [], options: { hours: 600, shift: 4, reached: 0.8, people: 1, wage: 25, steps: 3 } },
  },
  options: [
    ...staffOptions,
    {
      name: 'steps',
      kind: 'number',
      unit: null,
      choices: null,
      usual: 10,
      meaning: 'In how many even steps the hours are gone up to, from 1 to 50; 1 gives the hours alone.',
    },
  ],
  find: (book, table, rows, _by, choices) => {
    const told = staffChoices(choices);
    const own = 'wrong' in told || told.wage === null ? columns : [...columns, ...costColumns];
    if ('wrong' in told) return noPlan(own, told.wrong);
    const steps = numberChoice(choices, 'steps') ?? 10;
    if (!(Number.isInteger(steps) && steps >= 1 && steps <= mostSteps)) {
      return noPlan(own, `steps must be a whole number from 1 to ${mostSteps}`);
    }
    const ground = staffGround(book, table, rows, told.shift, choices.resamples);
    const { season, yields, resampled, leftOut } = ground;
    const factors = season.blocks.map(({ crew }) => gainFactors(crew, told.reached, told.people));
    const blocks = shiftBlocks(season, yields, factors);
    if (blocks.length === 0) return noPlan(own, noWatch);
    const limits = staffLimits(told, season.stations.length);
    const best = bestShifts(blocks, limits);
    const row = (hours: number, plan: ShiftChoice): FindingCell[] => {
      const gained = resampledEstimate(
        plan.gain,
        Float64Array.from(resampled, (drawn) => gainOf(plan.taken, factors, drawn)),
      );
      const price = dividedShifts(blocks, { ...limits, most: hours })?.price ?? null;
      const shifts = plan.taken.reduce((sum, people) => sum + people, 0);
      const cells = [hours, plan.spent, shifts, gained, price === null ? null : 100 * price];
      if (told.wage === null) return cells;
      const next = price === null || price === 0 ? null : told.wage / price;
      return [...cells, costEach(told.wage, plan.spent, gained), next];
    };
    // Fewer hours than steps make some steps the same; a sum of hours names its row, and stands once.
    const sums = [...new Set(Array.from({ length: steps }, (_, at) => Math.round((told.hours * (at + 1)) / steps)))];
    const plans = sums.map((hours) => best.at(hours));
    if (plans.every((plan) => plan === null)) {
      return noPlan(own, 'no choice of shifts keeps the least and the most of every station');
    }
    const rules = rulesOf(ground);
    return {
      columns: own,
      counted: countedBy(() => ({ rows, rules })),
      rows: sums.flatMap((hours, at) => (plans[at] === null ? [] : [row(hours, plans[at]!)])),
      leftOut,
      said: [checkedAgain(book.solver, blocks, limits, { sums, plans })],
    };
  },
};
