import { findings } from '../finding/findings.js';
import { formulaFunctions } from '../formula/functions/functions.js';
import type { FormulaKind } from '../formula/kind.js';
import { describeUnit } from '../formula/unit/unit.js';
import { unitWords } from '../formula/unit/word.js';
import { kindOfValue } from '../formula/value/kind-of-value.js';
import type { Book, BookField } from '../record/book.js';
import { formatNames, showResult } from './shown.js';
import type { NotebookWorkings } from './workings.js';

/** A word that a cell of a notebook may hold, with what a writer must know to choose it. */
export interface KnownName {
  readonly name: string;
  readonly kind:
    | 'input'
    | 'figure'
    | 'selection'
    | 'sheet'
    | 'function'
    | 'table'
    | 'field'
    | 'code'
    | 'unit'
    | 'format'
    | 'finding';
  /** The unit of its values, what it takes, or what kind it is, as a phrase; empty for none. */
  readonly unit: string;
  readonly meaning: string;
  /** The table of a field, or the field of a code; empty for all others. */
  readonly of: string;
}

/** Every word that can be written in a notebook's cells: its own names first, then the language's, then the records'. */
export function knownNames(workings: NotebookWorkings): readonly KnownName[] {
  return [...ownNames(workings), ...languageNames(), ...recordNames(workings.book)];
}

function ownNames({ notebook, names }: NotebookWorkings): readonly KnownName[] {
  const { inputs, figures, selections, sheets } = notebook;
  const known = (name: string, kind: KnownName['kind'], unit: string, meaning: string): KnownName => {
    return { name, kind, unit, meaning, of: '' };
  };
  return [
    ...[...inputs.values()].map(({ name, unit, value, source }) =>
      known(
        name,
        'input',
        unit,
        [showResult(value, unit === 'year' ? 'year' : ''), source].filter((text) => text !== '').join(', '),
      ),
    ),
    ...[...figures.values()].map(({ name, formula }) => {
      const value = names.get(name)?.value;
      return known(name, 'figure', value === undefined ? 'has a problem' : kindInWords(kindOfValue(value)), formula);
    }),
    ...[...selections.values()].map(({ name, table, formula }) =>
      known(name, 'selection', `rows of ${table}`, formula),
    ),
    ...[...sheets.values()].map(({ name, sentence }) => known(name, 'sheet', 'sheet', sentence)),
  ];
}

function kindInWords(kind: FormulaKind): string {
  return kind.kind === 'number' ? describeUnit(kind.unit) || 'plain number' : kind.kind;
}

function languageNames(): readonly KnownName[] {
  return [
    ...formulaFunctions.map((one): KnownName => {
      const takes = `(${one.arguments.map(({ name }) => name).join(', ')})`;
      return {
        name: one.name,
        kind: 'function',
        unit: takes,
        meaning: `${one.meaning} Example: ${one.example}`,
        of: '',
      };
    }),
    ...findings.map(({ name, table, account }): KnownName => {
      return { name, kind: 'finding', unit: `asked of ${table}`, meaning: account.definition, of: '' };
    }),
    ...unitWords.map(
      ({ name, one }): KnownName => ({ name, kind: 'unit', unit: '', meaning: `one is a ${one}`, of: '' }),
    ),
    ...['year', 'percent', 'per 1,000'].map(
      (name): KnownName => ({ name, kind: 'unit', unit: '', meaning: 'plain number', of: '' }),
    ),
    ...formatNames().map(
      (name): KnownName => ({ name, kind: 'format', unit: '', meaning: 'a way of showing', of: '' }),
    ),
  ];
}

function recordNames({ tables }: Book): readonly KnownName[] {
  const codes = new Map<string, KnownName>();
  const fields = [...tables.values()].flatMap((table) =>
    [...table.fields.values()].map((field): KnownName => {
      for (const code of field.codes ?? []) {
        const meaning = field.labels?.get(code) ?? '';
        codes.set(`${field.name} ${code}`, { name: code, kind: 'code', unit: '', meaning, of: field.name });
      }
      return { name: field.name, kind: 'field', unit: fieldInWords(field), meaning: field.meaning, of: table.name };
    }),
  );
  const ofTables = [...tables.values()].map((table): KnownName => {
    return { name: table.name, kind: 'table', unit: table.counted, meaning: `A row is ${table.row}.`, of: '' };
  });
  return [...ofTables, ...fields, ...codes.values()];
}

function fieldInWords({ kind, unit }: BookField): string {
  return kind === 'number' || kind === 'wait' ? (unit ?? 'plain number') : kind;
}
