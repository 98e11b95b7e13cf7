import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pageContextOf } from '../../../src/command/page-context-of.js';
import { exampleBook } from '../../../src/finding/example/example-book.js';
import { functionNames } from '../../../src/formula/functions/functions.js';
import type { Result } from '../../../src/formula/result.js';
import { computeNotebook } from '../../../src/notebook/compute-notebook.js';
import { readDocument } from '../../../src/notebook/read-document.js';
import { renderPage } from '../../../src/report/page.js';
import { root } from '../../command/run.js';
import { hostilePieces, spoilText } from '../spoil.js';
import { hold, type Kind, oneOf } from '../trial.js';

const book = exampleBook();
const folder = join(root, 'notebooks');
const shipped = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .sort()
  // Fewer resamples: what is tried is whether it holds, not what it says.
  .map((name) => readFileSync(join(folder, name), 'utf8').replace(/^resamples: .*$/m, 'resamples: 20'));
const pieces = [
  ...hostilePieces,
  ...[
    'where',
    'is',
    'of',
    'and',
    'not',
    'in',
    'between',
    'with',
    'each',
    'first',
    'here',
    'as',
    '(',
    ')',
    '{',
    '}',
    '"',
  ],
  ...[
    'inspections',
    'checks',
    'station',
    'season',
    'outcome',
    'turnaround',
    'intercepted',
    'this_season',
    '0',
    '1 / 0',
  ],
  ...[
    '| |',
    '|---|',
    '# x',
    '```',
    '~~~',
    '> ',
    '- ',
    '<!--',
    '![x](dots?sheet=s)',
    '![](javascript:alert(1))',
    '[x](//y)',
  ],
  ...['per 1,000', 'percent', 'dollars', 'minutes', 'layout: brief', 'filters: []', 'resamples: -1', 'seed: x', '---'],
  ...functionNames().map((name) => `${name}(`),
];

/** The numbers of a result, which are finite or null with a reason; how many there are. */
function numbersOf(result: Result, where: string): number {
  if (result.kind === 'missing') hold(result.why !== '', () => `${where} is missing without a reason`);
  if (result.kind === 'problem') hold(result.problems.length > 0, () => `${where} is a problem without one`);
  if (result.kind !== 'number') return 0;
  const { value, interval, numerator, denominator } = result;
  for (const number of [value, interval?.low ?? null, interval?.high ?? null, numerator, denominator]) {
    hold(number === null || Number.isFinite(number), () => `${where} holds ${number}`);
  }
  hold(interval === null || value !== null, () => `${where} has limits of nothing`);
  return value === null ? 0 : 1;
}

/** Shipped notebooks with lines and words spoilt, computed over a small season, some of them rendered. */
export const notebooksKind: Kind = {
  name: 'notebooks',
  counted: 'values',
  patience: 90,
  pace: 4,
  run: async (random) => {
    const text = spoilText(oneOf(random, shipped), random, pieces, 3);
    const workings = computeNotebook(readDocument('spoilt.md', text), book, '');
    const { notebook } = workings;
    const lines = text.split('\n').length;
    for (const { place, remedy } of notebook.problems) {
      hold(place.line >= 1 && place.line <= lines && remedy !== '', () => `no such place: ${JSON.stringify(place)}`);
    }
    let accounted = 0;
    for (const { name, result } of notebook.figures.values()) accounted += numbersOf(result, name);
    for (const { name, rows, columns } of notebook.sheets.values()) {
      for (const { cells } of rows) {
        hold(cells.length === columns.length, () => `${name} has a row of another length`);
        for (const [at, cell] of cells.entries()) accounted += numbersOf(cell, `${name}.${columns[at]!.name}`);
      }
    }
    if (random.below(4) === 0) {
      const { html } = renderPage(notebook, pageContextOf(workings));
      hold(html.endsWith('</html>\n') || html.endsWith('</html>'), () => 'a page without an end');
      hold(!/>(?:NaN|undefined|Infinity|\[object Object\])</.test(html), () => 'a page shows what is no value');
      hold(!/href="\s*javascript:/i.test(html), () => 'a page has a link that runs');
    }
    return { ended: notebook.problems.length > 0 ? 'refused' : 'taken in', accounted };
  },
};
