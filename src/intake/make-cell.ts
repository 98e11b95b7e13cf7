import { type Field, formOf, type NumberField } from '../record/field.js';
import { type Cell, MissingTexts } from './cell.js';
import type { FieldRule, FileRule } from './crosswalk.js';
import { DateCell, InstantCell } from './date-cell.js';
import type { DraftColumn } from './draft.js';
import { fault } from './fault.js';
import { NumberCell } from './number-cell.js';
import { type NumberMarks, plainDigits } from './number-marks.js';
import { PreparedCell } from './prepare-cell.js';
import { pseudonymOf } from './pseudonym.js';
import { registrationMeaning } from './registration-meaning.js';
import { MeaningCell, TextCell, type TextMeaning } from './text-cell.js';
import type { ZoneClock } from './time-zone.js';
import { converted } from './units.js';
import { readWrittenNumber, type WrittenNumber } from './written-number.js';
import { WrittenNumberCell } from './written-number-cell.js';

/** The number by which a column stores a code or text: its place in the code list from 1, or its number among texts. */
export function storedCode(column: DraftColumn, text: string): number {
  const { field } = column;
  if (field.type !== 'code') return column.interner!.codeOfText(text);
  return field.codes.codes.findIndex(({ code }) => code === text) + 1;
}

function meaningOf(rule: FieldRule, column: DraftColumn, missing: ReadonlySet<string>, key: Uint8Array) {
  const { field, codes } = rule;
  const form = formOf(field);
  const inAnyCase = rule.anyCase
    ? new Map([...(codes ?? [])].map(([text, meaning]) => [text.toLowerCase(), meaning]))
    : null;
  return (text: string): TextMeaning => {
    const meaning = codes?.has(text) === true ? codes.get(text) : inAnyCase?.get(text.toLowerCase());
    if (Array.isArray(meaning)) return { kind: 'seasonal', meaning };
    if (meaning === null) return { kind: 'missing' };
    if (meaning === undefined) {
      if (missing.has(text) || (text === '' && field.type !== 'code')) return { kind: 'missing' };
      if (codes !== null) return { kind: 'fault', fault: fault.unknownCode };
    }
    const said = typeof meaning === 'string' ? meaning : text;
    if (form?.test(said) === false) return { kind: 'fault', fault: fault.doesNotMatch };
    const code = storedCode(column, rule.hashed ? pseudonymOf(said, key) : said);
    return field.type === 'code' && code === 0 ? { kind: 'fault', fault: fault.unknownCode } : { kind: 'value', code };
  };
}

/** The number that a text stands for under `codes`, or is; null for one that stands for missing. */
function numberOf(text: string, rule: FieldRule, field: NumberField, marks: NumberMarks): WrittenNumber | null {
  const meaning = rule.codes?.get(text);
  if (meaning === null) return null;
  if (typeof meaning === 'string') return { value: Number(meaning) };
  if (rule.isWritten) return readWrittenNumber(text, field, rule.unit, marks);
  const digits = plainDigits(text, marks);
  if (digits === null) return { fault: fault.notANumber };
  const number = Number(digits);
  return { value: rule.conversion === null ? number : converted(number, rule.conversion) };
}

function takesTextsAsTheyAre(field: Field, rule: FieldRule): boolean {
  return (
    rule.codes === null && !rule.hashed && !rule.fromRegistration && field.type !== 'code' && !('pattern' in field)
  );
}

/** What of a file's rule bears on single cells. */
export type CellSettings = Pick<FileRule, 'decimalByte' | 'thousands' | 'missing' | 'repeated'>;

/** The reader of a field's cells. */
export function makeCell(
  rule: FieldRule,
  file: CellSettings,
  column: DraftColumn,
  clock: ZoneClock | null,
  key: Uint8Array,
): Cell {
  const texts = rule.missing ?? file.missing;
  const bare = makeBareCell(rule, file, column, new MissingTexts(texts), clock, key);
  return rule.preparation === null ? bare : new PreparedCell(bare, rule.preparation, new MissingTexts(texts));
}

function makeBareCell(
  rule: FieldRule,
  file: CellSettings,
  column: DraftColumn,
  missing: MissingTexts,
  clock: ZoneClock | null,
  key: Uint8Array,
): Cell {
  const { field } = rule;
  switch (field.type) {
    case 'number':
    case 'integer': {
      const marks: NumberMarks = { decimal: file.decimalByte === 44 ? ',' : '.', thousands: file.thousands };
      return rule.isWritten || rule.codes !== null
        ? new WrittenNumberCell(column, field, missing, (text) => numberOf(text, rule, field, marks))
        : new NumberCell(column, field, missing, marks, rule.conversion);
    }
    case 'date':
      return new DateCell(column, rule.pattern!, missing);
    case 'instant':
      return new InstantCell(column, rule.pattern!, missing, clock, file.repeated);
    default: {
      if (takesTextsAsTheyAre(field, rule)) return new TextCell(column, missing);
      const texts = new Set((rule.missing ?? file.missing).map((text) => text.trim()));
      if (rule.fromRegistration) {
        const codeOf = (region: string) => storedCode(column, region);
        return new MeaningCell(column, registrationMeaning(rule, texts, codeOf), codeOf);
      }
      return new MeaningCell(column, meaningOf(rule, column, texts, key), (code) => storedCode(column, code));
    }
  }
}
