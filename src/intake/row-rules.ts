import type { FileRule } from './crosswalk.js';
import type { Draft } from './draft.js';
import { isPrefixOnly } from './registration.js';
import type { Saying } from './remark.js';
import { followsFrom } from './rules/rule-choices.js';
import { sayingOf } from './rules/saying-of.js';
import { isTimeZone } from './time-zone.js';

/** A rule that one row keeps or breaks by itself. */
export interface RowRule extends Saying {
  readonly severity: 'sets aside' | 'notes';
  /** The field at fault. */
  readonly field: string;
  readonly isBroken: (row: number) => boolean;
}

const hour = 3_600_000;
const day = 24 * hour;

function inOrder(draft: Draft, names: readonly string[]): readonly RowRule[] {
  const present = names.flatMap((name) => draft.columns.get(name) ?? []);
  return present.slice(1).map((column, index): RowRule => {
    // The nearest earlier moment that the row has: a wash may lack its start and still end before it was ordered.
    const earlier = present.slice(0, index + 1).reverse();
    return {
      severity: 'sets aside',
      ...sayingOf(
        'wrong-order',
        `${column.field.name} lies before ${earlier.map(({ field }) => field.name).join(' or ')}`,
      ),
      field: column.field.name,
      isBroken: (row) => {
        const moment = column.values[row]!;
        for (const { values } of earlier) if (!Number.isNaN(values[row]!)) return moment < values[row]!;
        return false;
      },
    };
  });
}

function notLonger(draft: Draft, names: readonly string[], longest: number, said: string): readonly RowRule[] {
  const present = names.flatMap((name) => draft.columns.get(name) ?? []);
  return present.slice(1).map((column, index): RowRule => {
    const earlier = present.slice(0, index + 1).reverse();
    return {
      severity: 'sets aside',
      ...sayingOf('over-long', `longer than ${said} since the time before it`),
      field: column.field.name,
      isBroken: (row) => {
        const moment = column.values[row]!;
        for (const { values } of earlier) if (!Number.isNaN(values[row]!)) return moment - values[row]! > longest;
        return false;
      },
    };
  });
}

function zoneIsKnown(draft: Draft): readonly RowRule[] {
  const zone = draft.columns.get('time_zone');
  if (zone === undefined) return [];
  const known = new Map<number, boolean>();
  const isKnown = (code: number): boolean => {
    const answer = known.get(code) ?? isTimeZone(zone.interner!.textOf(code));
    known.set(code, answer);
    return answer;
  };
  return [
    {
      severity: 'sets aside',
      ...sayingOf('unknown-time-zone'),
      field: 'time_zone',
      isBroken: (row) => zone.values[row] !== 0 && !isKnown(zone.values[row]!),
    },
  ];
}

function hoursAreRecorded(draft: Draft): readonly RowRule[] {
  const state = draft.columns.get('state');
  const hours = draft.columns.get('staff_hours');
  if (state?.field.type !== 'code' || hours === undefined) return [];
  const open = state.field.codes.codes.findIndex(({ code }) => code === 'open') + 1;
  return [
    {
      severity: 'notes',
      ...sayingOf('hours-not-recorded'),
      field: 'staff_hours',
      isBroken: (row) => state.values[row] === open && Number.isNaN(hours.values[row]!),
    },
  ];
}

/** What is noted of a finding on a part that is not called fouled. */
export const findingWithoutFouling: Saying = sayingOf('finding-without-fouling');

function findingsAreFouled(draft: Draft): readonly RowRule[] {
  const state = draft.columns.get('state');
  const finding = draft.columns.get('finding');
  if (state?.field.type !== 'code' || finding === undefined) return [];
  const fouled = state.field.codes.codes.findIndex(({ code }) => code === 'fouled') + 1;
  return [
    {
      ...findingWithoutFouling,
      severity: 'notes',
      field: 'finding',
      isBroken: (row) => finding.values[row] !== 0 && state.values[row] !== fouled,
    },
  ];
}

function regionsArePostal(draft: Draft): readonly RowRule[] {
  const region = draft.columns.get('home_region');
  if (region === undefined) return [];
  const known: boolean[] = [];
  const isPrefix = (code: number): boolean => {
    // Numbered in order of appearance, so that the list has no gaps for long.
    known[code] ??= isPrefixOnly(region.interner!.textOf(code));
    return known[code];
  };
  return [
    {
      ...sayingOf('registration-prefix'),
      severity: 'notes',
      field: 'home_region',
      isBroken: (row) => region.values[row] !== 0 && isPrefix(region.values[row]!),
    },
  ];
}

const washMoments = ['ordered_at', 'started_at', 'finished_at', 'released_at'];

function usualRules(draft: Draft, { choices }: FileRule): readonly RowRule[] {
  switch (draft.table.name) {
    case 'stations':
      return zoneIsKnown(draft);
    case 'station_days':
      return [...inOrder(draft, ['opened_at', 'closed_at']), ...hoursAreRecorded(draft)];
    case 'inspections': {
      const moments = ['started_at', 'finished_at'];
      const { inspectionHours: longest } = choices;
      return [
        ...inOrder(draft, moments),
        ...notLonger(draft, moments, longest * hour, `${longest} hours`),
        ...regionsArePostal(draft),
      ];
    }
    case 'checks':
    case 'rechecks':
      return findingsAreFouled(draft);
    case 'decontaminations': {
      const { washStageDays: longest } = choices;
      return [...inOrder(draft, washMoments), ...notLonger(draft, washMoments, longest * day, `${longest} days`)];
    }
    default:
      return [];
  }
}

/** The rules that rows of a draft must keep by themselves, for the columns it has, as their crosswalk sets them. */
export function rowRulesOf(draft: Draft, file: FileRule): readonly RowRule[] {
  return usualRules(draft, file).flatMap((rule) => {
    const severity = followsFrom(file.choices, rule.code);
    return severity === null ? [] : [{ ...rule, severity }];
  });
}
