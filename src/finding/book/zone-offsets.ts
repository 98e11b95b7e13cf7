import { isTimeZone, ZoneClock } from '../../intake/time-zone.js';
import { millisecondsPerDay } from './calendar.js';

/** The offset of one zone's clocks from UTC, in milliseconds to add to a moment to read them. */
export type OffsetAt = (moment: number) => number;

/** No zone has kept a change of its clocks for less than this. */
const stride = 10 * millisecondsPerDay;

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
  if (!isTimeZone(zone)) return null;
  const reading = new ZoneClock(zone);
  const clock: OffsetAt = (moment) => reading.offsetAt(moment);
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
