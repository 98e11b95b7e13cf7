import type { Field } from '../../record/field.js';
import { readDatePattern } from '../date-pattern.js';
import { DateReader } from '../date-reader.js';
import { fault } from '../fault.js';
import { type DraftedFile, placeOfField } from './known-list.js';

type Rows = readonly (readonly string[])[];

/** The fields that may tell the season of a row, for each table the first that is there. */
const seasonFields = ['started_at', 'ordered_at', 'date'];

/** The field whose year tells the season of a file's rows, as far as a column of dates is proposed for it; null for none. */
export function seasonFieldOf({ proposal }: DraftedFile): Field['name'] | null {
  const { columns, combined } = proposal;
  const dated = columns.flatMap(({ use, pattern }) => (use.kind === 'field' && pattern !== null ? [use.field] : []));
  const given = new Set([...dated, ...combined.map(({ field }) => field)]);
  return seasonFields.find((name) => given.has(name)) ?? null;
}

function yearNamed(file: string): number | null {
  const years = new Set(file.match(/(?<!\d)(?:19|20)\d\d(?!\d)/gu));
  return years.size === 1 ? Number([...years][0]) : null;
}

/** What tells the year of a row by its date; null where no single column does. */
function yearReader(file: DraftedFile): ((row: readonly string[]) => number | null) | null {
  const field = seasonFieldOf(file);
  const place = field === null ? -1 : placeOfField(file, field);
  const column = file.proposal.columns.find(({ use }) => use.kind === 'field' && use.field === field);
  if (place < 0 || column === undefined || column.pattern === null) return null;
  const pattern = readDatePattern(column.pattern, field === 'date' ? 'date' : 'instant');
  if (typeof pattern === 'string') throw new Error(`${column.pattern}: ${pattern}`);
  const reader = new DateReader(pattern, field !== 'date');
  return (row) => {
    const bytes = Buffer.from(row[place] ?? '', 'utf8');
    return reader.read(bytes, 0, bytes.length) === fault.none ? reader.year : null;
  };
}

/**
 * The rows of a file's sample by year, in order: the one year that the file's name tells, or else that of each row's own
 * date. Rows of which neither tells are left out.
 */
export function rowsByYear(file: DraftedFile): ReadonlyMap<number, Rows> {
  const byYear = new Map<number, (readonly string[])[]>();
  const reader = yearReader(file);
  for (const sample of file.kind.samples) {
    const named = yearNamed(sample.file);
    for (const row of sample.rows) {
      const year = named ?? reader?.(row) ?? null;
      if (year === null) continue;
      const rows = byYear.get(year) ?? [];
      byYear.set(year, rows);
      rows.push(row);
    }
  }
  return new Map([...byYear].sort(([a], [b]) => a - b));
}
