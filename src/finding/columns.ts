import type { BookTable } from '../record/book.js';
import { dayAsText } from './book/calendar.js';
import type { FindingCell, FindingColumn } from './finding.js';
import type { GroupKey } from './group-rows.js';

/** A column of whole numbers, with what it counts. */
export function countColumn(name: string, label: string, unit: string, meaning: string): FindingColumn {
  return { name, label, kind: 'number', unit, shownAs: 'whole', meaning };
}

/** A column of words. */
export function wordColumn(name: string, label: string, meaning: string): FindingColumn {
  return { name, label, kind: 'text', unit: null, shownAs: 'text', meaning };
}

/** A column of plain numbers without an interval, shown in that way. */
export function numberColumn(
  name: string,
  label: string,
  unit: string | null,
  shownAs: string,
  meaning: string,
): FindingColumn {
  return { name, label, kind: 'number', unit, shownAs, meaning };
}

/** A column of shares or rates with their intervals, shown in that way. */
export function shareColumn(
  name: string,
  label: string,
  shownAs: 'percent' | 'per 1,000',
  meaning: string,
): FindingColumn {
  return { name, label, kind: 'estimate', unit: null, shownAs, meaning };
}

/** A column of plain values with their intervals, such as ratios, shown in that way. */
export function estimateColumn(
  name: string,
  label: string,
  unit: string | null,
  shownAs: string,
  meaning: string,
): FindingColumn {
  return { name, label, kind: 'estimate', unit, shownAs, meaning };
}

/** A column of minutes with their intervals. */
export function minutesColumn(name: string, label: string, meaning: string): FindingColumn {
  return { name, label, kind: 'estimate', unit: 'minutes', shownAs: 'minutes', meaning };
}

/** A column whose cells without a value say that, since nothing was left unrecorded there. */
export function whereNone(says: string, column: FindingColumn): FindingColumn {
  return { ...column, whereNone: says };
}

function isNumeric(table: BookTable, field: string): boolean {
  const kind = table.fields.get(field)?.kind;
  return kind === 'number';
}

/** The columns of the fields that a finding is split by, named as the fields are. */
export function keyColumns(table: BookTable, by: readonly string[]): FindingColumn[] {
  return by.map((field): FindingColumn => {
    const meaning = table.fields.get(field)?.meaning ?? '';
    const label = field.replaceAll('_', ' ');
    if (!isNumeric(table, field)) return wordColumn(field, label, meaning);
    const isYear = field === 'season' || table.fields.get(field)?.unit === 'year';
    const unit = isYear ? null : (table.fields.get(field)?.unit ?? null);
    return numberColumn(field, label, unit, isYear ? 'year' : 'whole', meaning);
  });
}

/** A group's key as cells: names instead of codes where a field has names, dates and moments as ISO text. */
export function keyCells(table: BookTable, by: readonly string[], key: GroupKey): FindingCell[] {
  return by.map((name, at) => {
    const value = key[at] ?? null;
    if (value === null) return null;
    const field = table.fields.get(name);
    if (typeof value === 'string') return field?.labels?.get(value) ?? value;
    if (field?.kind === 'date') return dayAsText(value);
    if (field?.kind === 'instant') return new Date(value).toISOString();
    return value;
  });
}
