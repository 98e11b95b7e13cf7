import { randomFrom } from '../random.js';

/** Sums are taken modulo this prime, whose products with itself stay exact. */
const prime = 67_108_859;
const perPrime = 1 / prime;

/** A total as random mixtures of the parts that it adds up. */
export type MixedTotal = Float64Array;

/** Totals, each the list of the parts that it adds up, as mixtures enough to tell whether one is a combination of others. */
export function mixedTotals(totals: readonly Uint32Array[], parts: number): readonly MixedTotal[] {
  const width = Math.min(totals.length, parts) + 8;
  const mixtures = randomMixtures(parts, width);
  return totals.map((total) => mixed(total, mixtures, width));
}

/**
 * Which hidden totals follow exactly from published ones: for each hidden total, the places of the published ones of which it
 * is a combination, or null where it is none. The parts they add up may have any value. Exact elimination modulo a prime over
 * random mixtures of the parts: wrong at most once in some ten million times.
 */
export function followsFrom(
  published: readonly MixedTotal[],
  hidden: readonly MixedTotal[],
): readonly (readonly number[] | null)[] {
  const basis: Row[] = [];
  published.forEach((total, place) => {
    const row = reduced({ mixed: total.slice(), of: new Map([[place, 1]]) }, basis);
    if (row.mixed.some((value) => value !== 0)) basis.push(normal(row));
  });
  return hidden.map((total) => {
    const rest = reduced({ mixed: total.slice(), of: new Map() }, basis);
    return rest.mixed.every((value) => value === 0) ? [...rest.of.keys()].sort((a, b) => a - b) : null;
  });
}

/** A combination of published totals: its mixture, the place of the first value in it, and the factor of each total. */
interface Row {
  readonly mixed: Float64Array;
  readonly of: Map<number, number>;
  readonly lead?: number;
}

function randomMixtures(parts: number, width: number): Float64Array {
  const drawn = new Uint32Array(parts * width);
  randomFrom(1).fill(drawn);
  const mixtures = new Float64Array(drawn.length);
  for (let at = 0; at < mixtures.length; at++) mixtures[at] = Math.floor((drawn[at]! / 4294967296) * prime);
  return mixtures;
}

function mixed(total: Uint32Array, mixtures: Float64Array, width: number): Float64Array {
  const sums = new Float64Array(width);
  for (let place = 0; place < total.length; place++) {
    const from = total[place]! * width;
    for (let at = 0; at < width; at++) sums[at]! += mixtures[from + at]!;
  }
  for (let at = 0; at < width; at++) sums[at] = modulo(sums[at]!);
  return sums;
}

/** A row without what the basis already has of it. */
function reduced(row: Row, basis: readonly Row[]): Row {
  const { mixed: values, of } = row;
  for (const known of basis) {
    const factor = values[known.lead!]!;
    if (factor === 0) continue;
    const { mixed: others } = known;
    for (let at = known.lead!; at < values.length; at++) {
      values[at] = modulo(values[at]! - factor * others[at]!);
    }
    for (const [place, share] of known.of) {
      const now = modulo((of.get(place) ?? 0) - factor * share);
      if (now === 0) of.delete(place);
      else of.set(place, now);
    }
  }
  return row;
}

/** The row divided by its first value. */
function normal({ mixed: values, of }: Row): Row {
  const lead = values.findIndex((value) => value !== 0);
  const inverse = power(values[lead]!, prime - 2);
  return {
    mixed: values.map((value) => modulo(value * inverse)),
    of: new Map([...of].map(([place, share]) => [place, modulo(share * inverse)])),
    lead,
  };
}

/** What is left of a whole number below the prime's square; by its quotient, since `%` of such numbers is slow. */
function modulo(value: number): number {
  const rest = value - Math.floor(value * perPrime) * prime;
  return rest < 0 ? rest + prime : rest >= prime ? rest - prime : rest;
}

function power(base: number, exponent: number): number {
  let result = 1;
  for (let square = base, rest = exponent; rest > 0; rest = Math.floor(rest / 2)) {
    if (rest % 2 === 1) result = modulo(result * square);
    square = modulo(square * square);
  }
  return result;
}
