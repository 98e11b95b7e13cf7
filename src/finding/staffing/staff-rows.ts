import { once } from '../book/once.js';
import type { RowRule } from '../counted-rows.js';
import type { StaffGround } from './staff-ground.js';

/** The records that plans of staff hours are made of. */
export interface StaffRows {
  /** Station days that shifts can be planned from. */
  readonly days: RowRule;
  /** Full inspections of those days, and the interceptions among them. */
  readonly full: RowRule;
  readonly found: RowRule;
}

/** The records that the plans of a ground are made of, whichever shifts are chosen. */
export function staffRows({ shifts, traffic }: StaffGround): StaffRows {
  const every = once(() => new Set(shifts.days.keys()));
  const full = once(() => traffic.fullOn(every(), null));
  return {
    days: {
      words: 'open station days with staff hours and times, of all stations',
      within: () => Uint32Array.from(shifts.days, ({ row }) => row),
    },
    full: { words: 'full inspections of those days', table: 'inspections', within: full },
    found: { words: 'interceptions of those days', table: 'inspections', within: full, holds: traffic.isCase },
  };
}

/** The records of one block: its station days that were open for the watch, and the full inspections begun in it. */
export function blockRows({ season, shifts, traffic }: StaffGround, block: number) {
  const { station, weekday, watch } = season.blocks[block]!;
  const name = season.stations[station]!;
  const isOf = once(() => {
    const open = shifts.days.flatMap((day, at) => {
      return day.station === name && day.weekday === weekday && day.open[watch]! > 0 ? [at] : [];
    });
    return new Set(open);
  });
  const days: RowRule = {
    words: 'station days that were open for the watch',
    within: () => Uint32Array.from(isOf(), (at) => shifts.days[at]!.row),
  };
  const full: RowRule = {
    words: 'full inspections begun in the watch',
    table: 'inspections',
    within: once(() => traffic.fullOn(isOf(), watch)),
  };
  return { days, full };
}
