import type { EvaluatedNotebook } from '../../notebook/evaluated.js';
import type { PageContext } from '../page-context.js';
import { carriedSheet } from './carried-sheet.js';
import { carriedValue } from './carried-value.js';
import { headline } from './headline.js';
import { type PageResults, resultsForm } from './page-results.js';

/** The digits of a file's fingerprint that a page carries. */
const fileDigits = 16;

/** What a page carries of itself: only what the page shows, so that what is withheld from it is withheld here too. */
export function resultsOfPage(notebook: EvaluatedNotebook, context: PageContext): PageResults {
  const { sum, needs, counted, resampling } = context;
  const needsOf = (name: string): readonly string[] => needs?.get(name) ?? [];
  return {
    form: resultsForm,
    name: notebook.name,
    title: notebook.title,
    audience: context.audience ?? '',
    asOf: context.date,
    headline: headline(notebook),
    program: context.program,
    notebook: notebook.fingerprint,
    records: sum.fingerprint,
    chosen: context.chosen ?? [],
    seed: resampling?.seed ?? null,
    resamples: resampling?.resamples ?? null,
    // How many rows of each file were kept is not for the public.
    files: (context.fewest === undefined ? sum.files : []).map(({ file, fingerprint, read, kept, setAside }) => ({
      file,
      fingerprint: fingerprint.slice(0, fileDigits),
      read,
      kept,
      setAside,
    })),
    inputs: [...notebook.inputs.values()].map(({ name, value, unit, source }) => {
      return { name, ...carriedValue(value), unit, source };
    }),
    selections: [...notebook.selections.values()].map(({ name, formula, table, rows }) => {
      return { name, formula, table, rows, needs: needsOf(name) };
    }),
    figures: [...notebook.figures.values()].map(({ name, formula, shownAs, result }) => ({
      name,
      formula,
      shownAs,
      ...carriedValue(result),
      needs: needsOf(name),
      records: counted?.get(name) ?? [],
    })),
    sheets: [...notebook.sheets.values()].map((sheet) => carriedSheet(sheet, needsOf(sheet.name))),
  };
}
