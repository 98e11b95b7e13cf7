import type { ChangedFigure, ChangedSheet, Comparison } from '../report/comparison/comparison.js';
import type { CarriedValue, PageResults } from '../report/results/page-results.js';

function pageJson({ name, title, asOf, program, notebook, records, chosen, seed, resamples }: PageResults): object {
  return { name, title, as_of: asOf, program, notebook, records, chosen, seed, resamples };
}

function valueJson(value: CarriedValue | null): object | null {
  if (value === null) return null;
  const { interval, numerator, denominator, unit, text, why } = value;
  return {
    value: value.value ?? text ?? null,
    low: interval?.low ?? null,
    high: interval?.high ?? null,
    numerator: numerator ?? null,
    denominator: denominator ?? null,
    unit: unit ?? '',
    ...(why === undefined ? {} : { why }),
  };
}

function whyJson({ causes, inputs, formulas }: ChangedFigure | ChangedSheet): object {
  return { causes, inputs, formulas };
}

/** A comparison as JSON: every difference, unrounded. */
export function comparisonJson({ before, after, files, inputs, definitions, figures, sheets }: Comparison): object {
  return {
    before: pageJson(before),
    after: pageJson(after),
    files: {
      added: files.added.map(({ file }) => file),
      removed: files.removed.map(({ file }) => file),
      changed: files.changed.map((changed) => changed.after.file),
      read_otherwise: files.readOtherwise,
    },
    inputs: inputs.map((input) => ({
      name: input.name,
      before: valueJson(input.before),
      after: valueJson(input.after),
    })),
    definitions,
    figures: figures.map((figure) => ({
      name: figure.name,
      before: valueJson(figure.before),
      after: valueJson(figure.after),
      by: figure.by,
      relative: figure.relative,
      former_interval: figure.beyond,
      ...whyJson(figure),
    })),
    sheets: sheets.map((sheet) => ({
      name: sheet.name,
      there: sheet.there,
      rows: { before: sheet.rowsBefore, after: sheet.rowsAfter, added: sheet.rowsAdded, removed: sheet.rowsRemoved },
      cells: sheet.cells.map(({ row, column, before: was, after: is, by, relative, beyond }) => {
        return { row, column, before: was, after: is, by, relative, former_interval: beyond };
      }),
      ...whyJson(sheet),
    })),
  };
}
