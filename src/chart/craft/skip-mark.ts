import type { Element } from 'hast';
import { s } from 'hastscript';
import { paint } from '../colours.js';

/** The mark of a part that is often skipped: a filled ring struck through, about 11 across. */
export function skipMark(x: number, y: number): Element {
  return s('g', { transform: `translate(${x},${y})` }, [
    s('circle', { r: 5.5, fill: paint('alert'), stroke: paint('paper'), strokeWidth: 1.2 }),
    s('path', { d: 'M -3 3 L 3 -3', stroke: paint('paper'), strokeWidth: 1.8 }),
  ]);
}
