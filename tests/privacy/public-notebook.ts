import { JSDOM } from 'jsdom';
import { openBook } from '../../src/finding/book.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { shownNotebook } from '../../src/notebook/withhold/shown-notebook.js';
import { renderPage } from '../../src/report/page.js';
import { randomFrom } from '../../src/statistic/random.js';
import { inspection, type SmallRow, smallRecords, smallSum } from '../finding/small-records.js';
import { sampleContext } from '../report/sample-notebook.js';

/** The fewest craft of which the page tells. */
export const fewest = 10;

const settings = new Map([
  ['alder', 'launch'],
  ['birch', 'launch'],
  ['cedar', 'roadside'],
  ['dogwood', 'border'],
]);
const months = ['June', 'July'];
const types = ['open motorboat', 'pontoon boat', 'paddlecraft'];

/** A cell of the table that nobody publishes: as fine as the page's sheets together. */
export interface Cell {
  readonly station: string;
  readonly setting: string;
  readonly month: string;
  readonly type: string;
  readonly outcome: string;
}

/** Every cell: four stations, two months, three types of craft, two outcomes. */
export const cells: readonly Cell[] = [...settings].flatMap(([station, setting]) =>
  months.flatMap((month) =>
    types.flatMap((type) => ['cleared', 'intercepted'].map((outcome) => ({ station, setting, month, type, outcome }))),
  ),
);

/** The notebook that is attacked: one table from five sides, totals above it. */
const text = `---
public: yes
withhold_under: ${fewest}
---

# For everybody

Of {inspected} craft {intercepted} carried mussels, {interception}.

| selection | rows                                      |
|-----------|-------------------------------------------|
| launched  | inspections where setting is "launch"     |

| figure       | formula                                           |
|--------------|---------------------------------------------------|
| inspected    | count(inspections)                                |
| intercepted  | count(inspections where outcome is "intercepted") |
| interception | rate(intercepted, inspected)                      |

${[
  ['by_station', 'station'],
  ['by_month', 'month'],
  ['by_setting', 'setting'],
  ['by_both', 'station and month'],
]
  .map(
    ([name, fields]) => `Sheet ${name}: each ${fields} of inspections.

| column      | formula                               |
|-------------|---------------------------------------|
| inspected   | count()                               |
| intercepted | count(where outcome is "intercepted") |
| rate        | rate(intercepted, inspected)          |
`,
  )
  .join('\n')}
Sheet by_type: each watercraft_type of inspections, highest intercepted first.

| column      | formula                               |
|-------------|---------------------------------------|
| inspected   | count()                               |
| intercepted | count(where outcome is "intercepted") |

![Interceptions, by station](bars?sheet=by_station&value=intercepted)

![Inspections, by station and month](heat?sheet=by_both&value=inspected&x=month&y=station)
`;

/** How many craft there were in each cell: many are few, some are none. */
export function drawnCounts(seed: number): readonly number[] {
  const random = randomFrom(seed);
  return cells.map(({ outcome }) =>
    outcome === 'cleared' ? random.below(random.below(3) === 0 ? 9 : 40) : random.below(random.below(3) === 0 ? 15 : 3),
  );
}

/** The page of the notebook for those counts, as a reader has it. */
export function publicPage(counts: readonly number[]): Document {
  const inspections = cells.flatMap((cell, at) =>
    Array.from({ length: counts[at]! }, (_, number): SmallRow => {
      const { station, month, type, outcome } = cell;
      const started_at = month === 'June' ? '2025-06-01T18:00Z' : '2025-07-01T18:00Z';
      return inspection(`form ${at} ${number}`, { station, started_at, watercraft_type: type, outcome });
    }),
  );
  const stations = [...settings].map(([station, setting]) => ({ station, name: station, setting, time_zone: 'UTC' }));
  const book = openBook(smallRecords({ stations, inspections }), smallSum('2025-11-30T18:00Z'));
  const workings = computeNotebook(readDocument('all.md', text), book, 'f');
  if (workings.notebook.problems.length > 0) throw new Error(JSON.stringify(workings.notebook.problems));
  const { notebook } = shownNotebook(workings);
  return new JSDOM(renderPage(notebook, { ...sampleContext, fewest }).html).window.document;
}
