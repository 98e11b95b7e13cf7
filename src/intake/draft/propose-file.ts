import type { Field, TableDefinition } from '../../record/field.js';
import { type NumberMarks, numberSource, type ThousandsMark } from '../number-marks.js';
import { isTimeZone } from '../time-zone.js';
import type { Assignment } from './assign-fields.js';
import { chooseTable } from './choose-table.js';
import { type ColumnProfile, missingMarks, profilesOf, shareOf } from './column-profile.js';
import { fitField, type KnownColumn, knownColumn } from './field-fit.js';
import { phrasesOf } from './field-words.js';
import type { FileKind } from './file-kinds.js';
import { likeness, tellsOfWash, wordsOf } from './heading.js';
import type { ColumnProposal, FileProposal } from './proposal.js';
import { proposeColumn } from './propose-column.js';
import { proposeCombined } from './propose-combined.js';
import { proposeFold } from './propose-fold.js';
import { proposeLooks } from './propose-looks.js';

/** Numbers with a comma where cells are not cut by commas, and none with a point. */
function decimalOf(profiles: readonly ColumnProfile[], delimiter: string): 'point' | 'comma' {
  if (delimiter === 'comma') return 'point';
  const having = (form: RegExp) => profiles.filter(({ values }) => values.some(([text]) => form.test(text))).length;
  return having(/^-?\d+,\d+$/u) > having(/^-?\d+\.\d+$/u) ? 'comma' : 'point';
}

/** The mark between groups of three digits where a column of numbers or money has it; null for none. */
function thousandsOf(profiles: readonly ColumnProfile[], decimal: 'point' | 'comma'): ThousandsMark | null {
  const thousands = decimal === 'point' ? 'comma' : 'point';
  const marks: NumberMarks = { decimal: decimal === 'point' ? '.' : ',', thousands };
  const number = new RegExp(`^[-+(]?\\s*\\$?\\s*${numberSource(marks)}\\s*\\)?$`, 'u');
  const grouped = decimal === 'point' ? /\d,\d{3}/u : /\d\.\d{3}/u;
  const hasGroups = profiles.some(
    (profile) =>
      shareOf(profile, (text) => number.test(text)) >= 0.8 && profile.values.some(([text]) => grouped.test(text)),
  );
  return hasGroups ? thousands : null;
}

/** Rows whose first cell says that they are totals and whose other cells are mostly blank; null for none. */
function totalsIn(rows: readonly (readonly string[])[]): { readonly like: string; readonly rows: number } | null {
  const found = rows.filter(isTotal);
  if (found.length === 0 || found.length * 20 > rows.length) return null;
  return { like: /^[\p{L} ]+/u.exec(found[0]![0]!)![0].trim(), rows: found.length };
}

function isTotal(row: readonly string[]): boolean {
  const blank = row.filter((cell) => cell === '').length;
  return /^(?:grand |sub)?totals?\b/iu.test(row[0] ?? '') && blank * 2 >= row.length;
}

/** The one time zone that a column of zones names; null for none, or several. */
function zoneIn(profiles: readonly ColumnProfile[]): string | null {
  const zones = profiles.filter(({ values }) => values.length > 0 && values.every(([text]) => isZone(text)));
  const named = new Set(zones.flatMap(({ values }) => values.map(([text]) => text)));
  return named.size === 1 ? [...named][0]! : null;
}

const isZone = (text: string): boolean => text.includes('/') && isTimeZone(text);

/** A column left over that alone can be the one field left over for dates or moments; a person must say whether it is. */
function byElimination(
  columns: readonly KnownColumn[],
  assigned: readonly Assignment[],
  chosen: ReturnType<typeof chooseTable>,
  taken: ReadonlySet<string>,
): readonly Assignment[] {
  const given = new Set(assigned.map(({ field }) => field));
  const used = new Set(assigned.map(({ column }) => column));
  const dated = chosen.table.fields.filter(({ type }) => type === 'date' || type === 'instant');
  const fields = dated.filter((field) => !given.has(field) && !taken.has(field.name));
  const left = columns.filter((column) => !used.has(column) && !taken.has(column.profile.heading));
  return fields.flatMap((field) => {
    const fitting = left
      .map((column) => ({ column, field, fit: fitField(chosen.table, field, column) }))
      .filter(({ fit }) => fit.values >= 0.6);
    const rivals = fields.filter(({ type }) => type === field.type).length;
    return fitting.length === 1 && rivals === 1 ? fitting : [];
  });
}

/** The column of numbers that are each met once in every file, and again in others; null for none. */
function numberedAnew(
  { samples }: FileKind,
  table: TableDefinition,
  columns: readonly ColumnProposal[],
): ColumnProposal | null {
  const [key, ...others] = table.key;
  if (samples.length < 2 || others.length > 0) return null;
  const phrases = phrasesOf(table.name, key!);
  const { headings } = samples[0]!;
  const each = samples.map(({ rows }) => profilesOf(headings, rows));
  const isAnew = ({ column, use }: ColumnProposal): boolean => {
    const words = wordsOf(column);
    const place = headings.indexOf(column);
    if (use.kind !== 'undecided' || !phrases.some((phrase) => likeness(words, phrase) >= 0.5)) return false;
    return each.every((profiles) => profiles[place]!.filled > 1 && profiles[place]!.values[0]![1] === 1);
  };
  return columns.find(isAnew) ?? null;
}

function numbered(column: ColumnProposal, field: string): ColumnProposal {
  const question =
    'Its numbers begin anew in each file, and a number that stands twice is set aside. Draft each file into a crosswalk of its own, with a prefix of its own beside the field, such as prefix: "2025-", and the same prefix wherever other files of that season name these numbers.';
  const why = 'the heading is like it; every number is met once in each file, and again in others';
  return { ...column, use: { kind: 'field', field, hashed: false }, why, questions: [question] };
}

/** The question on columns of washes beside those of inspections; none where there are fewer than two. */
function washQuestion(table: TableDefinition, columns: readonly ColumnProposal[]): readonly string[] {
  const washes = columns.filter(({ column, use }) => use.kind === 'undecided' && tellsOfWash(wordsOf(column)));
  if (table.name !== 'inspections' || washes.length < 2) return [];
  const named = washes.map(({ column }) => JSON.stringify(column)).join(', ');
  return [
    `Do ${named} tell of washes in the same row? Then say ignore for them here, and put under the file: also: [{ table: decontaminations, where: ${JSON.stringify(washes[0]!.column)}, columns: { … } }], with the fields wash, inspection, ordered_at, started_at, finished_at and released_at.`,
  ];
}

/** What a file of such rows may be told to be where it lacks what every row needs. */
function lackQuestion(table: TableDefinition, { name, meaning }: Field): string {
  const asked = `No column gives ${name}: ${meaning} Name its column, or say it under constants where it is always the same.`;
  const mayComplete = ['station_days', 'decontaminations'].includes(table.name) && !table.key.includes(name);
  return mayComplete
    ? `${asked} Or say completes: other files, where these rows only add to those of another file.`
    : asked;
}

/** The question on a ledger of two columns of money; none for any other file. */
function moneyQuestion(table: TableDefinition, columns: readonly ColumnProposal[]): readonly string[] {
  const named = (word: string) => columns.find(({ column }) => wordsOf(column).includes(word))?.column;
  const [debit, credit] = [named('debit'), named('credit')];
  if (table.name !== 'spending' || debit === undefined || credit === undefined) return [];
  const both = `columns: [${JSON.stringify(debit)}, ${JSON.stringify(credit)}], minus: [${JSON.stringify(credit)}]`;
  return [
    `Do ${debit} and ${credit} give one amount? Then take both away here, and put under the file: combine: { amount: { ${both} } }.`,
  ];
}

/** What is proposed for the files of one kind; `zone` is the zone that other files of the same draft name. */
export function proposeFile(kind: FileKind, zone: string | null): FileProposal {
  const [first] = kind.samples;
  const { headings, encoding, delimiter, headerLine, headerSpan, encodingIsSure } = first!;
  const read = kind.samples.flatMap((sample) => sample.rows);
  const totals = totalsIn(read);
  const rows = totals === null ? read : read.filter((row) => !isTotal(row));
  const profiles = profilesOf(headings, rows);
  // On a checklist N/A is a mark of its own: the craft has no such part, which is not the same as a blank.
  const fold = proposeFold(profilesOf(headings, rows, true));
  const folded = new Set(fold?.columns.map(({ column }) => column));
  const decimal = decimalOf(profiles, delimiter);
  const thousands = thousandsOf(profiles, decimal);
  const marks: NumberMarks = { decimal: decimal === 'point' ? '.' : ',', thousands };
  const columns = profiles
    .filter(({ heading }) => !folded.has(heading))
    .map((one) => knownColumn(one, marks, kind.between.get(one.heading) ?? null));
  const chosen = chooseTable(first!.file, columns);
  const { table } = chosen;
  const given = new Set(chosen.assignments.map(({ field }) => field.name));
  const combined = proposeCombined(table, columns, given);
  const joined = new Set(combined.flatMap((one) => [...one.columns, one.field]));
  // A column of dates that is joined with times of day may still be the date of its row.
  const assigned = chosen.assignments.filter(
    ({ column, field }) => field.type === 'date' || !joined.has(column.profile.heading),
  );
  const all = [...assigned, ...byElimination(columns, assigned, chosen, joined)];
  const assignmentOf = new Map(all.map((assignment) => [assignment.column, assignment]));
  const craftIsFree = !all.some(({ field }) => field.name === 'craft');
  const names = new Set(table.fields.map(({ name }) => name).filter((name) => name !== 'craft' || craftIsFree));
  const isDate = (heading: string) => assigned.some(({ column }) => column.profile.heading === heading);
  const single = columns
    .filter(({ profile }) => !joined.has(profile.heading) || isDate(profile.heading))
    .map((column) => proposeColumn(column, assignmentOf.get(column), names, fold !== null));
  const looked = proposeLooks(single, profiles);
  const anew = given.has(table.key[0]!) ? null : numberedAnew(kind, table, looked);
  const proposed = looked.map((one) => (one === anew ? numbered(one, table.key[0]!) : one));
  const used = new Set([
    ...combined.map(({ field }) => field),
    ...proposed.flatMap(({ use }) => (use.kind === 'field' ? [use.field] : [])),
  ]);
  const lacking = table.fields.filter(({ name, required }) => required === true && !used.has(name));
  const hasMoments = [...combined, ...proposed].some(({ pattern }) => pattern !== null && /[Hh]/u.test(pattern));
  const timeZone = zoneIn(profiles) ?? zone;
  return {
    patterns: kind.patterns,
    table,
    tableSureness: chosen.sureness,
    tableWhy: chosen.why,
    encoding,
    delimiter,
    headerLine,
    headerSpan,
    decimal,
    thousands,
    totals,
    missing: ['', ...missingMarks.filter((mark) => rows.some((row) => row.includes(mark)))],
    timeZone: hasMoments ? timeZone : null,
    seasonOf: table.name === 'inspections' && used.has('started_at') ? 'started_at' : null,
    columns: proposed,
    combined,
    fold,
    lacking: lacking.map(({ name }) => name),
    questions: [
      ...(chosen.sureness === 'unsure' ? [`Are these rows ${table.name}: ${table.row}?`] : []),
      ...(encodingIsSure ? [] : ['Are the letters beyond ASCII right as windows-1252? The file does not say.']),
      ...(kind.samples.some(({ hasMergedRows }) => hasMergedRows)
        ? ['Cells are merged over several rows. If each of the rows has their text, add merged: spread to the dialect.']
        : []),
      ...(hasMoments && timeZone === null
        ? ['By which clock were these times written? time_zone: America/Denver']
        : []),
      ...lacking.map((field) => lackQuestion(table, field)),
      ...moneyQuestion(table, proposed),
      ...washQuestion(table, proposed),
      ...(fold === null ? [] : ['What does each mark of the checklist say? Look at values under fold.']),
    ],
    rows: rows.length,
    isWhole: kind.samples.every(({ isWhole }) => isWhole),
  };
}

/** The zone that the files of a draft name, where they name one only. */
export function zoneOf(kinds: readonly FileKind[]): string | null {
  const zones = kinds.flatMap(({ samples }) =>
    samples.flatMap(({ headings, rows }) => zoneIn(profilesOf(headings, rows)) ?? []),
  );
  return new Set(zones).size === 1 ? zones[0]! : null;
}
