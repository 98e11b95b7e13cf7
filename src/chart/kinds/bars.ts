import { type ChartKind, sharedOptions } from '../chart-kind.js';
import { drawRows } from '../rows-drawing.js';

/** A bar a row from zero, in the order of the sheet. */
export const bars: ChartKind = {
  name: 'bars',
  shows: 'One bar for each row, from zero, with its interval as a line.',
  options: [
    sharedOptions.value,
    {
      word: 'y',
      takes: 'column',
      needed: false,
      meaning: 'The column that names the rows; without it, the first keys that tell them apart.',
    },
    sharedOptions.low,
    sharedOptions.high,
  ],
  draw: (asked) => drawRows(asked, 'bars'),
};
