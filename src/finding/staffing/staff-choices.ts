import type { ShiftLimits } from '../../statistic/allocation/shift-choice.js';
import { numberChoice } from '../choices.js';
import type { FindingChoices, FindingOption } from '../finding.js';

/** What a plan of staff hours is told. */
export interface StaffChoices {
  /** Staff hours to be had. */
  readonly hours: number;
  readonly shift: number;
  readonly reached: number;
  readonly people: number;
  readonly least: number;
  readonly most: number;
  readonly wage: number | null;
}

const number = (name: string, unit: string | null, usual: number | null, meaning: string): FindingOption => {
  return { name, kind: 'number', unit, choices: null, usual, meaning };
};

/** The options of a plan of staff hours. */
export const staffOptions: readonly FindingOption[] = [
  number('hours', 'staff hours', 500, 'Staff hours to be had beyond those worked.'),
  number('shift', 'hours', 4, 'Hours of a whole shift, from 1 to 24; watches are cut from six o’clock on.'),
  number(
    'reached',
    null,
    0.85,
    'The share of passing craft that the crews of today reach, between 0 and 1: an assumption where passing craft were not counted.',
  ),
  number('people', null, 2, 'The most people that can be added to one watch.'),
  number('least', 'staff hours', 0, 'Staff hours that every station must get at least.'),
  number('most', 'staff hours', null, 'Staff hours that a station can take at most; no limit where nothing is said.'),
  number('wage', 'dollars a staff hour', null, 'What a further staff hour costs; then costs are given.'),
];

/** The choices as numbers that a plan can be made with, or what is wrong with them in words. */
export function staffChoices(choices: FindingChoices): StaffChoices | { readonly wrong: string } {
  const of = (name: string, otherwise: number): number => numberChoice(choices, name) ?? otherwise;
  const told: StaffChoices = {
    hours: Math.floor(of('hours', 500)),
    shift: of('shift', 4),
    reached: of('reached', 0.85),
    people: of('people', 2),
    least: Math.ceil(of('least', 0)),
    most: Math.floor(of('most', Number.MAX_SAFE_INTEGER)),
    wage: numberChoice(choices, 'wage'),
  };
  const wrong = [
    told.hours >= 0 && told.hours <= mostHours ? '' : `hours must lie between 0 and ${mostHours}`,
    Number.isInteger(told.shift) && told.shift >= 1 && told.shift <= 24 ? '' : 'a shift has 1 to 24 whole hours',
    told.reached > 0 && told.reached < 1 ? '' : 'the share reached must lie between 0 and 1',
    Number.isInteger(told.people) && told.people >= 1 && told.people <= 6 ? '' : 'people must be 1 to 6',
    told.least >= 0 && told.most >= told.least ? '' : 'the least of a station must not be above its most',
  ].filter((words) => words !== '');
  return wrong.length === 0 ? told : { wrong: wrong.join('; ') };
}

/** The plan is solved for every whole hour up to the most: beyond this it would take too long. */
const mostHours = 20_000;

/**
 * The limits of a plan over so many stations. A station without a most has none, even where it takes all the hours: what the
 * next hour would bring there is the shadow price.
 */
export function staffLimits({ hours, least, most }: StaffChoices, stations: number): ShiftLimits {
  return { most: hours, groups: Array.from({ length: stations }, () => ({ least, most })) };
}
