import { paint } from './colours.js';

/** The looks of the lines of one chart: each has a colour, a dash and a mark of its own, so that none is told by colour alone. */
export interface Look {
  readonly stroke: string;
  readonly dash: string | null;
  readonly symbol: 'circle' | 'square' | 'triangle' | 'diamond' | 'cross';
  readonly width: number;
}

const earlier: readonly Look[] = [
  { stroke: paint('second'), dash: '7 3', symbol: 'square', width: 1.5 },
  { stroke: paint('soft'), dash: '2 3', symbol: 'triangle', width: 1.5 },
  { stroke: paint('third'), dash: '9 3 2 3', symbol: 'diamond', width: 1.5 },
  { stroke: paint('ink'), dash: '4 2', symbol: 'cross', width: 1.5 },
];

/** The most lines that one chart can tell apart. */
export const mostSeries = earlier.length + 1;

/** The look of each of some lines, by their name; the last, which is the latest of seasons, has the accent. */
export function looksOf(names: readonly string[]): ReadonlyMap<string, Look> {
  const last: Look = { stroke: paint('accent'), dash: null, symbol: 'circle', width: 2 };
  return new Map(
    names.map((name, at) => {
      const back = names.length - 1 - at;
      return [name, back === 0 ? last : earlier[back - 1]!];
    }),
  );
}
