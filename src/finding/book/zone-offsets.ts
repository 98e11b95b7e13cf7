import { millisecondsPerDay } from './calendar.js';

/** The offset of one zone's clocks from UTC, in milliseconds to add to a moment to read them. */
export type OffsetAt = (moment: number) => number;

/** No zone has kept a change of its clocks for less than this. */
const stride = 10 * millisecondsPerDay;

/** The wall clock of a zone by the platform's zone data, or null for a zone it does not know. */
function clockOf(zone: string): OffsetAt | null {
  let format: Intl.DateTimeFormat;
  try {
    format = new Intl.DateTimeFormat('en-US', {
      timeZone: zone,
      calendar: 'gregory',
      numberingSystem: 'latn',
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
  } catch {
    return null;
  }
  return (moment) => {
    const part: Record<string, number> = {};
    for (const { type, value } of format.formatToParts(moment)) part[type] = Number(value);
    const shown = Date.UTC(part.year!, part.month! - 1, part.day!, part.hour!, part.minute!, part.second!);
    return shown - Math.floor(moment / 1000) * 1000;
  };
}

/** The first second of a changed offset, between a moment before the change and one after it. */
function changeBetween(clock: OffsetAt, before: number, after: number): number {
  const old = clock(before);
  let low = before;
  let high = after;
  while (high - low > 1000) {
    const middle = Math.floor((low + high) / 2000) * 1000;
    if (middle <= low) break;
    if (clock(middle) === old) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * The offsets of an IANA zone between two moments, or null for an unknown zone. Changes are found once, so that reading
 * an offset costs nothing; the machine's own zone and locale play no part.
 */
export function zoneOffsets(zone: string, from: number, to: number): OffsetAt | null {
  const clock = clockOf(zone);
  if (clock === null) return null;
  const first = Math.floor(from / millisecondsPerDay) * millisecondsPerDay;
  const starts = [first];
  const offsets = [clock(first)];
  for (let moment = first; moment <= to; moment += stride) {
    const next = clock(moment + stride);
    if (next === offsets.at(-1)) continue;
    starts.push(changeBetween(clock, moment, moment + stride));
    offsets.push(next);
  }
  let segment = 0;
  return (moment) => {
    if (moment < starts[segment]!) segment = 0;
    while (segment + 1 < starts.length && moment >= starts[segment + 1]!) segment++;
    return offsets[segment]!;
  };
}
