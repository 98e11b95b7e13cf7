import type { FileReading } from './read-file.js';
import type { Saying } from './remark.js';

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
  severity: 'sets aside' | 'notes' = 'sets aside',
): void {
  reading.remarks.push({
    severity,
    line: reading.draft.lines[row]!,
    row,
    position,
    seen: position === null ? '' : null,
    code: saying.code,
    reason: saying.reason,
    remedy: saying.remedy,
  });
  if (severity === 'sets aside') reading.draft.aside[row] = 1;
}
