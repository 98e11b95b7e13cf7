import { carriedIn } from './carried-element.js';
import { type PageResults, resultsForm } from './page-results.js';
import { either, listOf, number, oneOf, orAbsent, orNull, shaped, text, truth } from './shape.js';

const limit = orNull(number);

const carriedValue = {
  value: orAbsent(orNull(number)),
  unit: orAbsent(text),
  interval: orAbsent(shaped({ low: limit, high: limit, confidence: number, sides: oneOf('two', 'upper', 'lower') })),
  numerator: orAbsent(number),
  denominator: orAbsent(number),
  text: orAbsent(text),
  why: orAbsent(text),
};

const pageResults = shaped({
  form: oneOf(resultsForm),
  name: text,
  title: text,
  audience: text,
  asOf: text,
  headline: text,
  program: shaped({ version: text, fingerprint: text }),
  notebook: text,
  records: text,
  chosen: listOf(text),
  seed: orNull(number),
  resamples: orNull(number),
  files: listOf(shaped({ file: text, fingerprint: text, read: number, kept: number, setAside: number })),
  inputs: listOf(shaped({ name: text, source: text, ...carriedValue })),
  selections: listOf(shaped({ name: text, formula: text, table: text, rows: orNull(number), needs: listOf(text) })),
  figures: listOf(
    shaped({
      name: text,
      formula: text,
      shownAs: text,
      needs: listOf(text),
      records: listOf(text),
      ...carriedValue,
    }),
  ),
  sheets: listOf(
    shaped({
      name: text,
      sentence: text,
      needs: listOf(text),
      columns: listOf(shaped({ name: text, key: truth, formula: text, shownAs: text, unit: text })),
      count: number,
      rows: listOf(listOf(either(number, text, (cell) => cell === null, listOf(limit)))),
      fingerprint: text,
    }),
  ),
});

/** What a page that this program wrote carries of itself; null for any other page, and for one that was tampered with. */
export function readPageResults(html: string): PageResults | null {
  const carried = carriedIn(html, 'carried-results');
  if (carried === null) return null;
  try {
    const value: unknown = JSON.parse(carried);
    return pageResults(value) ? (value as PageResults) : null;
  } catch {
    return null;
  }
}
