import { noDay } from '../draft.js';
import type { Texts } from '../key-space.js';
import type { FileReading } from '../read-file.js';
import { LocalDays } from '../sense/local-days.js';

const yearOf = (day: number): number => new Date(day * 86_400_000).getUTCFullYear();

/** The seasons that the rows of a file belong to; none for places, equipment and money, which belong to no season. */
export type FileSeasons = ReadonlyMap<FileReading, ReadonlySet<number>>;

/**
 * The seasons of each file: the local years of its inspections and station days; what belongs to an inspection has the
 * season of that inspection. Rows set aside tell nothing.
 */
export function fileSeasons(readings: readonly FileReading[], texts: Texts): FileSeasons {
  const days = new LocalDays(readings);
  const ofInspection = new Uint16Array(texts.spaceOf('inspections').interner.size);
  const seasons = new Map<FileReading, Set<number>>();
  const seasonsOf = (reading: FileReading, seasonOf: (row: number) => number) => {
    const { draft } = reading;
    const found = new Set<number>();
    for (let row = 0; row < draft.rowCount; row++) {
      const season = draft.aside[row] === 1 ? 0 : seasonOf(row);
      if (season !== 0) found.add(season);
    }
    seasons.set(reading, found);
  };
  for (const reading of readings) {
    const { columns, table } = reading.draft;
    // What only completes rows of other files goes and stays with those.
    if (reading.rule.completes) seasons.set(reading, new Set());
    else if (table.name === 'station_days') {
      const dates = columns.get('date')?.values;
      seasonsOf(reading, (row) => (dates === undefined || dates[row] === noDay ? 0 : yearOf(dates[row]!)));
    } else if (table.name === 'inspections') {
      const starts = columns.get('started_at')?.values;
      const keys = columns.get('inspection')?.values;
      seasonsOf(reading, (row) => {
        const start = starts?.[row] ?? Number.NaN;
        const season = Number.isNaN(start) ? 0 : yearOf(days.dayOf(reading, row, start));
        if (keys !== undefined) ofInspection[keys[row]!] = season;
        return season;
      });
    }
  }
  for (const reading of readings) {
    if (seasons.has(reading)) continue;
    const inspections = reading.draft.columns.get('inspection')?.values;
    seasonsOf(reading, (row) => (inspections === undefined ? 0 : ofInspection[inspections[row]!]!));
  }
  return seasons;
}
