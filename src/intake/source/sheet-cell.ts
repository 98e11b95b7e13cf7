import { dayLength } from '../calendar.js';
import type { NumberFormat } from './number-format.js';
import { type SerialBase, serialMoment } from './serial-date.js';

function two(value: number): string {
  return String(value).padStart(2, '0');
}

function clock(second: number): string {
  return `${two(Math.floor(second / 3600))}:${two(Math.floor(second / 60) % 60)}:${two(second % 60)}`;
}

/** A number as plain decimals; a very small or large one to the fifteen digits that sheets hold. */
function decimals(value: number): string {
  const text = String(value);
  if (!text.includes('e')) return text;
  return value.toLocaleString('en-US', { useGrouping: false, maximumSignificantDigits: 15 });
}

/**
 * The text of a number in a sheet: plain decimals with the decimal mark given; a date as `2025-06-14`, with its time as
 * `2025-06-14T06:30:00`, a time of day as `06:30:00`. What its format takes for a date and the calendar does not have stays a
 * number.
 */
export function numberText(stored: string, format: NumberFormat, base: SerialBase, decimalMark: string): string {
  const value = Number(stored);
  if (stored.trim() === '' || !Number.isFinite(value)) return stored;
  const plain = decimals(value).replace('.', decimalMark);
  if (format.shows === 'number') return plain;
  if (format.shows === 'digits')
    return Number.isInteger(value) && value >= 0 ? plain.padStart(format.width, '0') : plain;
  const isTime = format.shows === 'time' && value >= 0 && value < 1;
  if (isTime || (format.shows === 'duration' && value >= 0)) return clock(Math.round((value * dayLength) / 1000));
  const moment = serialMoment(value, base);
  if (moment === null) return plain;
  const date = new Date(moment.day * dayLength).toISOString().slice(0, 10);
  return format.shows === 'date' && moment.second === 0 ? date : `${date}T${clock(moment.second)}`;
}

/** A text of a workbook with its escapes of single characters undone, such as `_x000D_`; ECMA-376 part 1, 22.9.2.19. */
export function unescaped(text: string): string {
  if (!text.includes('_x')) return text;
  return text.replace(/_x([0-9A-Fa-f]{4})_/gu, (whole, hex: string) =>
    hex === '0000' ? whole : String.fromCharCode(Number.parseInt(hex, 16)),
  );
}

/** The column of a cell's address such as `AB12`, from 0; null where it is none. */
export function columnOf(address: string): number | null {
  const letters = /^([A-Z]{1,3})\d{1,7}$/u.exec(address)?.[1];
  if (letters === undefined) return null;
  let column = 0;
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
  return column - 1;
}
