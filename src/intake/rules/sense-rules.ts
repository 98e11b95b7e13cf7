import type { Severity } from '../../problem/problem.js';
import type { Consequence, Rule } from './rule.js';

function rule(
  code: string,
  severity: Severity,
  instead: readonly Consequence[],
  meaning: string,
  remedy: string,
): Rule {
  return { code, scope: 'sense', severity, instead, meaning, remedy };
}

const unlessNoted: readonly Consequence[] = ['notes'];
const unlessAside: readonly Consequence[] = ['sets aside', 'not checked'];
const unlessPassed: readonly Consequence[] = ['not checked'];

/** What rows say that cannot all be true, and what a season's rows say together. */
export const senseRules: readonly Rule[] = [
  rule(
    'wrong-order',
    'sets aside',
    [],
    'a time lies before the one it must follow',
    'Compare both with the form. Where one date stands for both and the clock ran over midnight, join the date and the time under combine, with next_day_if_before.',
  ),
  rule(
    'over-long',
    'sets aside',
    unlessNoted,
    'longer than an inspection (12 hours) or a stage of a wash (30 days) can take',
    'Look for a wrong day, month or half of the day, or declare other limits: inspection_hours and wash_stage_days.',
  ),
  rule(
    'wash-apart',
    'sets aside',
    unlessNoted,
    'the wash was ordered more than a day before its inspection, or more than 30 days after it',
    'Compare the dates and the number of the inspection. Where numbers begin anew each season, give those of each season a prefix of their own; wash_stage_days declares another limit.',
  ),
  rule(
    'impossible-part',
    'sets aside',
    ['reads as absent', 'notes'],
    'craft of this type and drive do not carry the part',
    'Compare with the form: the part, the type or the drive is wrong. Where crews call every part clean, even those that a craft lacks, set this rule to reads as absent: such a part then counts as no look and is noted, its row is kept, and only one on which something was found sets its row aside. Under notes it counts as a look.',
  ),
  rule(
    'finding-without-fouling',
    'notes',
    unlessAside,
    'something was found on a part that is not called fouled',
    'Compare with the form: either the state or the finding is wrong.',
  ),
  rule(
    'outcome-without-part',
    'notes',
    unlessAside,
    'the craft was intercepted, and no part is recorded with mussels',
    'Compare with the form: the part was not entered, or the outcome is wrong.',
  ),
  rule(
    'part-without-outcome',
    'notes',
    unlessAside,
    'a part is recorded with mussels, and the craft was not intercepted',
    'Compare with the form: the outcome was not changed, or the finding is wrong.',
  ),
  rule(
    'one-side-only',
    'notes',
    unlessAside,
    'the part has two sides, and only one is recorded',
    'Compare with the form; the other side counts as nothing, neither clean nor skipped.',
  ),
  rule(
    'hours-not-recorded',
    'notes',
    unlessAside,
    'the station was open and nobody wrote down the hours worked',
    'Fill them in from the time sheets; they are never guessed.',
  ),
  rule(
    'inspected-while-closed',
    'notes',
    unlessAside,
    'the day is recorded as closed, and the station inspected on it',
    'Compare with the schedule: the day was open, or the date of the form is wrong.',
  ),
  rule(
    'open-without-trace',
    'notes',
    unlessAside,
    'the day is recorded as open, with no hours and no inspection',
    'Ask the station: it was closed, or its forms are missing. It is not a day with zero craft until somebody says so.',
  ),
  rule(
    'registration-prefix',
    'notes',
    unlessAside,
    'a registration prefix of 33 CFR 173 appendix A stands where a postal code should',
    'Read the column with region_from: registration, or give its codes; MI and MS mean other states as prefixes.',
  ),
  rule(
    'clock-heaping',
    'notes',
    unlessPassed,
    'starts at :00 or :30 are more than three times as many as the one in thirty expected, by station and file',
    'Ask whether forms are filled in later; waits and hours of the day are blurred. Crowds at opening time heap honestly.',
  ),
  rule(
    'share-jump',
    'notes',
    unlessPassed,
    'the share of a code moved threefold or more from one season to the next',
    'Ask whether the code came to mean something else, and declare it under definition_changes.',
  ),
];
