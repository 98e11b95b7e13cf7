import type { ChartRequest, EvaluatedSheet } from '../notebook/evaluated.js';
import { nearestName } from '../problem/nearest.js';
import { drawingWidths } from './axes.js';
import type { AskedChart, ChartKind, ChartOption, PlacedColumn, Unfit } from './chart-kind.js';

/** A chart request held against its kind and sheet: options checked and columns found, or everything that is wrong. */
export function askChart(
  request: ChartRequest,
  kind: Pick<ChartKind, 'name' | 'options'>,
  sheet: EvaluatedSheet,
): { readonly asked: AskedChart } | { readonly unfit: readonly Unfit[] } {
  const unfit: Unfit[] = [];
  const columns = new Map<string, PlacedColumn>();
  const settings = new Map<string, string>();
  const known = new Map(kind.options.map((option) => [option.word, option]));
  for (const [word, given] of Object.entries(request.options)) {
    const option = known.get(word);
    if (option === undefined) unfit.push(unknownOption(word, kind));
    else if (option.takes === 'column') {
      const at = sheet.columns.findIndex((column) => column.name === given);
      if (at === -1) unfit.push(unknownColumn(given, sheet));
      else columns.set(word, { at, column: sheet.columns[at]! });
    } else {
      const wanted = wantedInstead(option, given);
      if (wanted === null) settings.set(word, given);
      else unfit.push({ code: 'bad-chart-option', seen: `${word}=${given}`, wanted, remedy: option.meaning });
    }
  }
  for (const option of kind.options) {
    if (option.needed && !(option.word in request.options)) unfit.push(lackingOption(option, kind));
  }
  const value = columns.get('value');
  if (value !== undefined && onlyText(sheet, value)) unfit.push(notNumbers(value));
  return unfit.length > 0 ? { unfit } : { asked: { request, sheet, columns, settings, width: drawingWidths.wide } };
}

function onlyText(sheet: EvaluatedSheet, { at }: PlacedColumn): boolean {
  const cells = sheet.rows.map((row) => row.cells[at]!);
  return cells.some((cell) => cell.kind === 'text' || cell.kind === 'truth' || cell.kind === 'date');
}

function wantedInstead(option: ChartOption, given: string): string | null {
  if (option.takes === 'number') return /^[1-9]\d{0,8}$/.test(given) ? null : 'a whole number above zero';
  if (option.takes === 'list') return given.trim() === '' ? 'values with commas between them' : null;
  return option.takes.includes(given) ? null : `one of ${(option.takes as readonly string[]).join(', ')}`;
}

function nearestOf(name: string, known: readonly string[], list: string): string {
  const nearest = nearestName(name, known);
  return nearest === null ? `${list}: ${known.join(', ')}.` : `Did you mean "${nearest}"?`;
}

function unknownOption(word: string, kind: Pick<ChartKind, 'name' | 'options'>): Unfit {
  const words = ['sheet', ...kind.options.map((option) => option.word)];
  return {
    code: 'unknown-chart-option',
    seen: word,
    wanted: `an option of the chart "${kind.name}"`,
    remedy: nearestOf(word, words, 'Its options are'),
  };
}

function unknownColumn(name: string, sheet: EvaluatedSheet): Unfit {
  const columns = sheet.columns.map((column) => column.name);
  return {
    code: 'unknown-column',
    seen: name,
    wanted: `a column of the sheet "${sheet.name}"`,
    remedy: nearestOf(name, columns, 'Its columns are'),
  };
}

function lackingOption(option: ChartOption, kind: Pick<ChartKind, 'name' | 'options'>): Unfit {
  return {
    code: 'lacking-chart-option',
    seen: '',
    wanted: `"${option.word}=" in the address of the chart "${kind.name}"`,
    remedy: option.meaning,
  };
}

function notNumbers({ column }: PlacedColumn): Unfit {
  return {
    code: 'not-numbers',
    seen: column.name,
    wanted: 'a column of numbers to draw',
    remedy: 'Draw another column, or give this one a formula that counts or measures.',
  };
}
