import type { Draft } from './draft.js';
import type { Saying } from './remark.js';
import { isTimeZone } from './time-zone.js';

/** A rule that one row keeps or breaks by itself. */
export interface RowRule extends Saying {
  readonly severity: 'sets aside' | 'notes';
  /** The field at fault. */
  readonly field: string;
  readonly isBroken: (row: number) => boolean;
}

const hour = 3_600_000;
const longestInspection = 12 * hour;
const longestStage = 30 * 24 * hour;

function inOrder(draft: Draft, names: readonly string[]): readonly RowRule[] {
  const present = names.flatMap((name) => draft.columns.get(name) ?? []);
  return present.slice(1).map((column, index): RowRule => {
    // The nearest earlier moment that the row has: a wash may lack its start and still end before it was ordered.
    const earlier = present.slice(0, index + 1).reverse();
    return {
      severity: 'sets aside',
      code: 'wrong-order',
      field: column.field.name,
      reason: `${column.field.name} lies before ${earlier.map(({ field }) => field.name).join(' or ')}`,
      remedy: 'Compare both times with the form.',
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
      code: 'over-long',
      field: column.field.name,
      reason: `longer than ${said} since the time before it`,
      remedy: 'Look for a wrong day, month or half of the day.',
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
      code: 'unknown-time-zone',
      field: 'time_zone',
      reason: 'no IANA time zone of that name is known',
      remedy: 'Write it as in America/Denver.',
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
      code: 'hours-not-recorded',
      field: 'staff_hours',
      reason: 'the station was open and nobody wrote down the hours worked',
      remedy: 'Fill them in from the time sheets; they are never guessed.',
      isBroken: (row) => state.values[row] === open && Number.isNaN(hours.values[row]!),
    },
  ];
}

/** What is noted of a finding on a part that is not called fouled. */
export const findingWithoutFouling: Saying = {
  code: 'finding-without-fouling',
  reason: 'something was found on a part that is not called fouled',
  remedy: 'Compare with the form: either the state or the finding is wrong.',
};

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

const washMoments = ['ordered_at', 'started_at', 'finished_at', 'released_at'];

/** The rules that rows of a draft must keep by themselves, for the columns it has. */
export function rowRulesOf(draft: Draft): readonly RowRule[] {
  switch (draft.table.name) {
    case 'stations':
      return zoneIsKnown(draft);
    case 'station_days':
      return [...inOrder(draft, ['opened_at', 'closed_at']), ...hoursAreRecorded(draft)];
    case 'inspections': {
      const moments = ['started_at', 'finished_at'];
      return [...inOrder(draft, moments), ...notLonger(draft, moments, longestInspection, '12 hours')];
    }
    case 'checks':
    case 'rechecks':
      return findingsAreFouled(draft);
    case 'decontaminations':
      return [...inOrder(draft, washMoments), ...notLonger(draft, washMoments, longestStage, '30 days')];
    default:
      return [];
  }
}
