import type { FileReading } from './read-file.js';
import type { Follows, Saying } from './remark.js';
import { followsFrom } from './rules/rule-choices.js';

/** The place of a field's column in the header of a file, the last where several are joined; null for none. */
export function positionOf(reading: FileReading, field: string): number | null {
  const column = reading.rule.fields.find((rule) => rule.field.name === field)?.columns.at(-1);
  return column === undefined ? null : reading.header.get(column)!;
}

/** Remarks on a row of a draft; its cell is read again later, since its text is no longer at hand. */
export function remarkOn(
  reading: FileReading,
  row: number,
  position: number | null,
  saying: Saying,
  severity: Follows = 'sets aside',
): void {
  reading.remarks.add(saying, severity, reading.draft.places.lineOf(row), row, position, position === null ? '' : null);
  if (severity === 'sets aside') reading.draft.aside[row] = 1;
}

/** Remarks on a row as its crosswalk sets the rule: sets it aside, notes it, or passes over a rule that is not checked. */
export function remarkAsSet(reading: FileReading, row: number, position: number | null, saying: Saying): void {
  const severity = followsFrom(reading.rule.choices, saying.code);
  if (severity !== null) remarkOn(reading, row, position, saying, severity);
}

/** Notes on one kept row what was seen of many together, as its crosswalk sets the rule. */
export function noteTogether(
  reading: FileReading,
  row: number,
  position: number | null,
  saying: Saying,
  seen: string,
): void {
  const severity = followsFrom(reading.rule.choices, saying.code);
  if (severity === null) return;
  reading.remarks.add(saying, 'notes', reading.draft.places.lineOf(row), row, position, seen);
}
