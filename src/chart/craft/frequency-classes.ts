/** Up to four classes of frequency, each with its own tone and hatching, so that neither colour nor order is needed. */
export interface FrequencyClasses {
  /** Where the second, third and fourth class begin, on the scale that readers see. */
  readonly edges: readonly number[];
  /** 1 for the least to 4 for the most often. */
  readonly classOf: (value: number) => number;
}

/** How many classes there are at most. */
export const mostClasses = 4;

/** Classes that begin at the edges given, or at quarters of a round number above the greatest value. */
export function frequencyClasses(values: readonly number[], given: readonly number[] | null): FrequencyClasses {
  const edges = given ?? quarters(values.reduce((greatest, value) => Math.max(greatest, value), 0));
  return { edges, classOf: (value) => 1 + edges.filter((edge) => value >= edge).length };
}

/** The edges written in an address, `10,20,40`; null where they are not one to three rising numbers above zero. */
export function readEdges(written: string): readonly number[] | null {
  const edges = written.split(',').map(Number);
  const rising = edges.every((edge, at) => Number.isFinite(edge) && edge > (at === 0 ? 0 : edges[at - 1]!));
  return edges.length < mostClasses && rising ? edges : null;
}

function quarters(greatest: number): readonly number[] {
  if (greatest === 0) return [1, 2, 3];
  const power = Number(`1e${Math.floor(Math.log10(greatest / mostClasses))}`);
  const step = [1, 2, 2.5, 5, 10].map((times) => times * power).find((width) => width * mostClasses >= greatest)!;
  return [1, 2, 3].map((times) => Number((times * step).toPrecision(12)));
}
