import { type ChartKind, sharedOptions } from '../chart-kind.js';
import { drawRows } from '../rows-drawing.js';

/** A dot a row with its interval as a line, in the order of the sheet. */
export const dots: ChartKind = {
  name: 'dots',
  shows: 'One dot for each row, with its interval as a line.',
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
  draw: (asked) => drawRows(asked, 'dots'),
};
