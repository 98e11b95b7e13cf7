import { grouped } from './terminal.js';

/** How far a step of some work has come. */
export interface Reached {
  readonly step: string;
  /** Of all the work, from 0 to 1. */
  readonly share: number;
  /** Rows read in all; null where none are counted. */
  readonly rows: number | null;
  /** Since the work began. */
  readonly seconds: number;
}

const barWidth = 24;
/** Before this much is done, the time left is anybody's guess. */
const tellsTime = 0.05;

/** Rows so far, rows a second and the time left, as far as each is known: `1,204,000 rows, 980,000 a second, about 4 s left`. */
export function saidOf({ share, rows, seconds }: Reached): string {
  const parts: string[] = [];
  if (rows !== null) parts.push(`${grouped(rows)} rows`);
  if (rows !== null && seconds >= 1) parts.push(`${grouped(threeFigures(rows / seconds))} a second`);
  if (share > tellsTime && share < 1) parts.push(`about ${duration((seconds / share) * (1 - share))} left`);
  return parts.join(', ');
}

/** A bar, the step and what is said of it, cut to a width. */
export function barLine(reached: Reached, width: number): string {
  const full = Math.round(Math.min(1, Math.max(0, reached.share)) * barWidth);
  const said = saidOf(reached);
  const line = `${'█'.repeat(full)}${'░'.repeat(barWidth - full)} ${reached.step}${said === '' ? '' : `: ${said}`}`;
  return line.slice(0, width);
}

function threeFigures(number: number): number {
  const unit = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, number))) - 2);
  return Math.round(number / unit) * unit;
}

function duration(seconds: number): string {
  const whole = Math.ceil(seconds);
  return whole < 90 ? `${whole} s` : `${Math.round(whole / 60)} min`;
}
