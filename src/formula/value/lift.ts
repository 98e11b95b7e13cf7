import type { Environment } from '../environment.js';
import type { Unit } from '../unit/unit.js';
import { mergeAccounts } from './account.js';
import type { ClusterSpread, IntervalFound, NumberValue, Standing, TruthValue } from './evaluated.js';
import { numberFrom } from './number.js';

/** A function of up to three numbers; NaN stands for a missing one, and for a result that is not defined. */
export type EachNumber = (first: number, second: number, third: number) => number;

/** What a number or truth brings into a calculation: its value and its draws, NaN for missing. */
export interface Drawn {
  readonly value: number;
  readonly draws: (() => Float64Array) | null;
}

/** A number's part in a calculation. */
export function drawnNumber({ value, draws }: NumberValue): Drawn {
  return { value: value ?? Number.NaN, draws };
}

/** A truth's part in a calculation: 1 for true, 0 for false. */
export function drawnTruth({ truth, draws }: TruthValue): Drawn {
  return { value: truth === null ? Number.NaN : Number(truth), draws };
}

/** A calculation's draws: the function over each resample's values; null where none of them changes. */
export function liftDraws(each: EachNumber, operands: readonly Drawn[]): (() => Float64Array) | null {
  if (operands.every(({ draws }) => draws === null)) return null;
  return () => {
    const drawn = operands.map(({ draws }) => draws?.() ?? null);
    const length = drawn.find((draws) => draws !== null)!.length;
    const [first, second, third] = [0, 1, 2].map(
      (place) => drawn[place] ?? new Float64Array(length).fill(operands[place]?.value ?? Number.NaN),
    ) as [Float64Array, Float64Array, Float64Array];
    return Float64Array.from({ length }, (_, draw) => each(first[draw]!, second[draw]!, third[draw]!));
  };
}

/** The least of several numbers, or null where none is there. */
export function least(numbers: readonly (number | null)[]): number | null {
  const known = numbers.filter((number) => number !== null);
  return known.length === 0 ? null : Math.min(...known);
}

/** The spread over station-days of several parts together. */
export function joinSpreads(basis: readonly NumberValue[]): ClusterSpread | null {
  const spreads = basis.map(({ clusters }) => clusters()).filter((spread) => spread !== null);
  if (spreads.length === 0) return null;
  return {
    fewest: Math.min(...spreads.map(({ fewest }) => fewest)),
    most: Math.max(...spreads.map(({ most }) => most)),
  };
}

/** What the parts of a calculation make of its standing, when it is no ratio: the strongest of theirs. */
export function standingOf(basis: readonly NumberValue[]): Standing {
  if (basis.some(({ standing }) => standing === 'estimate')) return 'estimate';
  return basis.some(({ standing }) => standing === 'census') ? 'census' : 'given';
}

/** A calculation with numbers, and where it differs from the plain rule. */
export interface Calculation {
  readonly each: EachNumber;
  readonly operands: readonly Drawn[];
  /** The numbers that its standing, cautions and accounts come from. */
  readonly basis: readonly NumberValue[];
  readonly unit: Unit;
  /** Said when the numbers are there but the result is not. */
  readonly undefinedWhy: string;
  readonly standing?: Standing;
  readonly fewest?: number | null;
  readonly ownInterval?: (() => IntervalFound) | null;
}

/** Why what is made of an estimate that has no resamples has no interval. */
export const unseenPart = 'one of its parts cannot be resampled, such as rows that belong to no station-day';

/** The number that a calculation gives, computed again in every resample when an interval asks for it. */
export function calculate(calculation: Calculation, environment: Environment): NumberValue {
  const { each, operands, basis, unit, undefinedWhy } = calculation;
  const [first, second, third] = [0, 1, 2].map((place) => operands[place]?.value ?? Number.NaN) as [
    number,
    number,
    number,
  ];
  const result = each(first, second, third);
  // Adding 0 turns −0 into 0.
  const value = Number.isFinite(result) ? result + 0 : null;
  const missing = basis.find((part) => part.value === null)?.why ?? undefinedWhy;
  const ownInterval = calculation.ownInterval ?? null;
  const unseen = ownInterval === null && basis.some((part) => part.standing === 'estimate' && part.draws === null);
  const barred = basis.find((part) => part.barred !== null)?.barred ?? (unseen ? unseenPart : null);
  return numberFrom(
    {
      value,
      unit,
      why: value === null ? missing : null,
      standing: calculation.standing ?? standingOf(basis),
      draws: liftDraws(each, operands),
      ownInterval,
      barred,
      fewest: calculation.fewest === undefined ? least(basis.map(({ fewest }) => fewest)) : calculation.fewest,
      clusters: () => joinSpreads(basis),
      cautions: [...new Set(basis.flatMap(({ cautions }) => cautions))],
      accounts: mergeAccounts(basis.map(({ accounts }) => accounts)),
    },
    environment,
  );
}
