import type { Point } from './points.js';

/** How to read lines that stand for intervals, and what is not drawn; empty sentences are left out. */
export function readingOf(points: readonly Point[], mark: string, intervalAs: string): string[] {
  const drawn = points.filter((point) => point.value !== null);
  const two = drawn.some((point) => point.limits === 'two');
  const upper = drawn.some((point) => point.limits === 'upper');
  const open = drawn.some((point) => point.limits === 'two' && point.high === null);
  const bare = drawn.filter((point) => point.limits === null).length;
  const absent = points.length - drawn.length;
  return [
    `${mark}${two ? `; ${intervalAs} is its interval` : ''}.`,
    upper ? 'A hollow mark with a dashed line: no case was seen, and the line ends at the one-sided upper limit.' : '',
    open ? 'A line that runs to the edge: its upper limit is not reached.' : '',
    bare > 0 && bare < drawn.length ? `${bare} of ${drawn.length} have no interval; the table says why.` : '',
    absent > 0 ? `${absent} of ${points.length} have no value and are marked so, not drawn as zero.` : '',
  ].filter((sentence) => sentence !== '');
}
