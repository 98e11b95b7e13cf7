import type { DoubleEntryKeep } from './crosswalk.js';
import { noDay } from './draft.js';
import type { FileReading } from './read-file.js';
import { RowSet } from './row-set.js';
import { sayingOf } from './rules/saying-of.js';
import { remarkOn } from './set-aside.js';

/** Two rows that record one event under two keys, with what the crosswalk of the later one makes of them. */
export interface DoubleEntry {
  readonly file: string;
  readonly line: number;
  readonly laterFile: string;
  readonly laterLine: number;
  /** The fields in which they are alike. */
  readonly alike: readonly string[];
  readonly keep: DoubleEntryKeep;
}

interface Row {
  readonly reading: FileReading;
  readonly row: number;
}

/** Rows that may be compared by the same fields. */
interface Group {
  readonly alike: readonly string[];
  readonly readings: FileReading[];
}

function groupsOf(readings: readonly FileReading[]): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const reading of readings) {
    const { duplicates } = reading.rule;
    if (duplicates.length === 0 || !duplicates.every((name) => reading.draft.columns.has(name))) continue;
    const name = duplicates.join(' ');
    const group = groups.get(name) ?? { alike: duplicates, readings: [] };
    group.readings.push(reading);
    groups.set(name, group);
  }
  return [...groups.values()];
}

function eachComparable({ alike, readings }: Group, visit: (index: number, row: number) => void): void {
  for (const [index, { draft }] of readings.entries()) {
    const marked = alike.flatMap((name) => {
      const { field, interner, values } = draft.columns.get(name)!;
      if (field.type === 'date') return [{ values, missing: noDay }];
      // Other numbers miss by NaN, which is like no other of itself.
      return field.type === 'code' || interner !== null ? [{ values, missing: 0 }] : [];
    });
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 0 && marked.every(({ values, missing }) => values[row] !== missing)) visit(index, row);
    }
  }
}

/** The rows of each event that is recorded more than once, in order of file and line. */
function repeatedIn(group: Group): readonly (readonly Row[])[] {
  const { alike, readings } = group;
  const valuesOf = ({ draft }: FileReading) => alike.map((name) => draft.columns.get(name)!.values);
  const columns = readings.map(valuesOf);
  const nameOf = (index: number, row: number) => columns[index]!.map((values) => values[row]!).join(' ');
  const rows = new RowSet(columns);
  const events = new Map<string, Row[]>();
  /** The first values of repeated events: a quick look before a name is made. */
  const firsts = new Set<number>();
  eachComparable(group, (index, row) => {
    if (rows.add(index, row)) return;
    events.set(nameOf(index, row), []);
    firsts.add(columns[index]!.at(-1)![row]!);
  });
  if (events.size === 0) return [];
  eachComparable(group, (index, row) => {
    if (!firsts.has(columns[index]!.at(-1)![row]!)) return;
    events.get(nameOf(index, row))?.push({ reading: readings[index]!, row });
  });
  return [...events.values()];
}

const placeOf = ({ reading, row }: Row): string => `${reading.file}:${reading.draft.places.lineOf(row)}`;

function judge(event: readonly Row[], alike: readonly string[]): void {
  const keep = event.at(-1)!.reading.rule.keep;
  const kept = keep === 'first' ? event[0] : keep === 'last' ? event.at(-1) : undefined;
  for (const entry of event) {
    if (entry === kept || (keep === 'both' && entry === event[0])) continue;
    const others = event.filter((other) => other !== entry).map(placeOf);
    const saying = sayingOf('double-entry', `the same ${alike.join(', ')} as ${others.join(' and ')}`);
    remarkOn(entry.reading, entry.row, null, saying, keep === 'both' ? 'notes' : 'sets aside');
  }
}

/**
 * Finds kept rows that are alike in all the fields by which their crosswalk knows a double entry, remarks on them as it
 * declares, and gives every pair with both places. A row that lacks one of the fields, such as an unknown craft, is like no
 * other. Where the files of one event declare differently, the later one's word holds.
 */
export function checkDoubleEntries(readings: readonly FileReading[]): readonly DoubleEntry[] {
  const found: DoubleEntry[] = [];
  for (const group of groupsOf(readings)) {
    for (const event of repeatedIn(group)) {
      const [first, ...later] = event;
      for (const { reading, row } of later) {
        found.push({
          file: first!.reading.file,
          line: first!.reading.draft.places.lineOf(first!.row),
          laterFile: reading.file,
          laterLine: reading.draft.places.lineOf(row),
          alike: group.alike,
          keep: event.at(-1)!.reading.rule.keep,
        });
      }
      judge(event, group.alike);
    }
  }
  return found;
}
