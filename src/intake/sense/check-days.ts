import type { FileReading } from '../read-file.js';
import { sayingOf } from '../rules/saying-of.js';
import { positionOf, remarkAsSet } from '../set-aside.js';
import { codeNumber } from './code-number.js';
import type { LocalDays } from './local-days.js';

const whileClosed = sayingOf('inspected-while-closed');
const withoutTrace = sayingOf('open-without-trace');

// Days since 1970 of the years that records may fall in lie within these bounds.
const dayCount = 2 ** 17;
const firstDay = -(2 ** 16);
const stationDay = (station: number, day: number): number => station * dayCount + (day - firstDay);

/**
 * Remarks on kept inspections of days that are recorded as closed, and on open days that left no trace: neither hours nor an
 * inspection. Closed is not zero, and a day without a trace is neither until somebody says so.
 */
export function checkDays(all: readonly FileReading[], days: LocalDays): void {
  const calendars = all.filter(({ draft }) => draft.table.name === 'station_days');
  const inspecting = all.filter(({ draft }) => draft.table.name === 'inspections');
  if (calendars.length === 0 || inspecting.length === 0) return;
  const closed = codeNumber('station_days', 'state', 'closed');
  const open = codeNumber('station_days', 'state', 'open');
  const states = new Map<number, number>();
  for (const { draft } of calendars) {
    const [stations, dates, state] = ['station', 'date', 'state'].map((name) => draft.columns.get(name)!.values);
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 0) states.set(stationDay(stations![row]!, dates![row]!), state![row]!);
    }
  }
  const inspected = new Set<number>();
  for (const reading of inspecting) {
    const { draft } = reading;
    const [stations, starts] = ['station', 'started_at'].map((name) => draft.columns.get(name)!.values);
    const position = positionOf(reading, 'started_at');
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1) continue;
      const key = stationDay(stations![row]!, days.dayOf(reading, row, starts![row]!));
      if (states.get(key) === closed) remarkAsSet(reading, row, position, whileClosed);
      if (draft.aside[row] === 0) inspected.add(key);
    }
  }
  for (const reading of calendars) {
    const { draft } = reading;
    const [stations, dates, state] = ['station', 'date', 'state'].map((name) => draft.columns.get(name)!.values);
    const hours = draft.columns.get('staff_hours')?.values;
    const position = positionOf(reading, 'state');
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1 || state![row] !== open) continue;
      if (hours !== undefined && !Number.isNaN(hours[row]!)) continue;
      if (!inspected.has(stationDay(stations![row]!, dates![row]!))) remarkAsSet(reading, row, position, withoutTrace);
    }
  }
}
