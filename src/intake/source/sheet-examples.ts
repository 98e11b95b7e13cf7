import { readNumberFormat } from './number-format.js';
import type { SerialBase } from './serial-date.js';
import { numberText } from './sheet-cell.js';

/** A number as a sheet stores and shows it, and the text as which it is read. */
export interface SheetExample {
  readonly stored: string;
  readonly format: string;
  readonly base: SerialBase;
  readonly text: string;
}

const examples: readonly (readonly [stored: string, format: string, base: SerialBase])[] = [
  ['22.5', 'General', 1900],
  ['6.7000000000000002', '0.00', 1900],
  ['0.5', '0%', 1900],
  ['123', '00000', 1900],
  ['45822', 'mm/dd/yyyy', 1900],
  ['44360', 'mm/dd/yyyy', 1904],
  ['45822.270833333336', 'mm/dd/yyyy h:mm AM/PM', 1900],
  ['45822.270833333336', 'mm/dd/yyyy', 1900],
  ['0.27083333333333331', 'h:mm', 1900],
  ['1.5', '[h]:mm', 1900],
  ['60', 'mm/dd/yyyy', 1900],
];

/** What the numbers of a sheet are read as, by example, computed by the reader itself. */
export function sheetExamples(): readonly SheetExample[] {
  return examples.map(([stored, format, base]) => {
    return { stored, format, base, text: numberText(stored, readNumberFormat(format), base, '.') };
  });
}
