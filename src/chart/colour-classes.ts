import { rampSteps } from './colours.js';

/** Equal classes for a ramp of colours: where each begins, and which one a value falls in (1 is the least). */
export interface ColourClasses {
  /** The lower edge of each class, and the upper edge of the last. */
  readonly edges: readonly number[];
  readonly classOf: (value: number) => number;
}

/** Classes of one round width from zero (or from below the least value, if that is negative) to above the greatest. */
export function colourClasses(values: readonly number[]): ColourClasses {
  const least = values.reduce((low, value) => Math.min(low, value), 0);
  const greatest = values.reduce((high, value) => Math.max(high, value), 0);
  let width = roundUp((greatest - least) / rampSteps);
  let first = Math.floor(least / width) * width;
  while (first + rampSteps * width < greatest) {
    width = roundUp(width * 1.01);
    first = Math.floor(least / width) * width;
  }
  const edges = Array.from({ length: rampSteps + 1 }, (_, at) => Number((first + at * width).toPrecision(12)));
  return {
    edges,
    classOf: (value) => {
      const above = edges.slice(1, -1).filter((edge) => value >= edge).length;
      return above + 1;
    },
  };
}

/** The next width at or above a number that reads as round: a few digits times a power of ten. */
function roundUp(width: number): number {
  if (width < 1e-280) return 1;
  const power = Number(`1e${Math.floor(Math.log10(width))}`);
  const step = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10].find((times) => times * power >= width * (1 - 1e-12)) ?? 10;
  return step * power;
}
