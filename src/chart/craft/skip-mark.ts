import type { Element } from 'hast';
import { s } from 'hastscript';

/** The mark of a part that is often skipped: a filled ring struck through, about 11 across. */
export function skipMark(x: number, y: number): Element {
  return s('g', { className: ['skipped'], transform: `translate(${x},${y})` }, [
    s('circle', { r: 5.5 }),
    s('path', { d: 'M-3 3L3-3' }),
  ]);
}
