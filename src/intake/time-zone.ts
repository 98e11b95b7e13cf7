import { dayLength } from './calendar.js';

/** A stretch of a zone's wall clock during which it ran in one way. */
interface Stretch {
  /** Milliseconds of the wall clock; `to` is exclusive. */
  readonly from: number;
  readonly to: number;
  readonly kind: 'once' | 'never' | 'twice';
  /** Milliseconds east of Greenwich: before the clock was changed, and after. */
  readonly before: number;
  readonly after: number;
}

const sampling = 7 * dayLength;

/** Whether the machine's time zone data know a zone of that name. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en-US', { timeZone: name });
    return /^[A-Za-z]/u.test(name);
  } catch {
    return false;
  }
}

/**
 * Turns a zone's wall clock into moments. The zone's changes of offset are asked of the machine's time zone data once for
 * each year met, and found to the second; two changes within one week would be missed.
 */
export class ZoneClock {
  readonly #parts: Intl.DateTimeFormat;
  readonly #years = new Map<number, readonly Stretch[]>();
  #last: Stretch = { from: 0, to: 0, kind: 'once', before: 0, after: 0 };

  constructor(zone: string) {
    this.#parts = new Intl.DateTimeFormat('en-US', {
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
  }

  /** What the wall clock showed then: that time `once`, `never` (skipped in spring), or `twice` (repeated in autumn). */
  kindOf(wall: number): 'once' | 'never' | 'twice' {
    return this.#stretchOf(wall).kind;
  }

  /** The moment, in milliseconds since 1970, at which the wall clock showed that; `occasion` decides between two. */
  momentOf(wall: number, occasion: 'first' | 'second'): number {
    const stretch = this.#stretchOf(wall);
    return wall - (occasion === 'first' ? stretch.before : stretch.after);
  }

  /** Milliseconds east of Greenwich at a moment. */
  offsetAt(moment: number): number {
    const shown: Record<string, number> = {};
    for (const { type, value } of this.#parts.formatToParts(moment)) shown[type] = Number(value);
    const { year, month, day, hour, minute, second } = shown as Record<string, number>;
    return Date.UTC(year!, month! - 1, day!, hour!, minute!, second!) - Math.floor(moment / 1000) * 1000;
  }

  #stretchOf(wall: number): Stretch {
    if (wall >= this.#last.from && wall < this.#last.to) return this.#last;
    const year = new Date(wall).getUTCFullYear();
    let stretches = this.#years.get(year);
    if (stretches === undefined) {
      stretches = this.#stretchesOf(year);
      this.#years.set(year, stretches);
    }
    this.#last = stretches.find(({ from, to }) => wall >= from && wall < to)!;
    return this.#last;
  }

  #stretchesOf(year: number): readonly Stretch[] {
    const start = new Date(0).setUTCFullYear(year, 0, 1);
    const end = new Date(0).setUTCFullYear(year + 1, 0, 1);
    const stretches: Stretch[] = [];
    let moment = start - 2 * dayLength;
    let offset = this.offsetAt(moment);
    let from = Number.NEGATIVE_INFINITY;
    while (moment < end + 2 * dayLength) {
      const next = moment + sampling;
      const later = this.offsetAt(next);
      if (later !== offset) {
        const change = this.#changeBetween(moment, next, offset);
        const early = change + Math.min(offset, later);
        const late = change + Math.max(offset, later);
        stretches.push({ from, to: early, kind: 'once', before: offset, after: offset });
        stretches.push({
          from: early,
          to: late,
          kind: later > offset ? 'never' : 'twice',
          before: offset,
          after: later,
        });
        from = late;
        offset = later;
      }
      moment = next;
    }
    stretches.push({ from, to: Number.POSITIVE_INFINITY, kind: 'once', before: offset, after: offset });
    // Clipped to the year, so that a stretch kept from one year is never used for another.
    return stretches
      .map((stretch) => ({ ...stretch, from: Math.max(stretch.from, start), to: Math.min(stretch.to, end) }))
      .filter((stretch) => stretch.from < stretch.to);
  }

  #changeBetween(early: number, late: number, offset: number): number {
    let before = early;
    let after = late;
    while (after - before > 1000) {
      const middle = Math.floor((before + after) / 2000) * 1000;
      if (this.offsetAt(middle) === offset) before = middle;
      else after = middle;
    }
    return after;
  }
}
