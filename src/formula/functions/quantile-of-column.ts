import { quantile } from '../../statistic/quantile.js';
import type { Environment } from '../environment.js';
import { columnNumbers, commonBasis } from '../sheet/column-numbers.js';
import type { NumberValue } from '../value/evaluated.js';
import { numberFrom } from '../value/number.js';
import type { ColumnGiven } from './declaration.js';

/**
 * The p-quantile (type 7) of a sheet's column over the rows that have a value, in the column's unit. The rows are all there
 * are and no sample, so that it is a census where its numbers are; over estimates it is worked out again in every resample.
 */
export function quantileOfColumn(column: ColumnGiven, p: number, environment: Environment): NumberValue {
  const { numbers, cautions } = columnNumbers(column);
  const basis = commonBasis(numbers);
  const of = (values: Float64Array): number | null => quantile(values.sort(), p);
  const value = of(Float64Array.from(numbers, (number) => number.value!));
  const draws = (): Float64Array => {
    const drawn = numbers.map((number) => number.draws?.() ?? number.value!);
    return Float64Array.from({ length: environment.resamples.count }, (_, draw) => {
      const values = Float64Array.from(drawn, (own) => (typeof own === 'number' ? own : own[draw]!));
      // A row that has no value in a resample leaves the whole undefined there.
      return values.some(Number.isNaN) ? Number.NaN : (of(values) ?? Number.NaN);
    });
  };
  return numberFrom(
    {
      ...basis,
      value,
      unit: column.unit,
      why: value === null ? `no row of ${column.sheet.name} has a value there` : null,
      draws: numbers.some((number) => number.draws !== null) ? draws : null,
      cautions: [...new Set([...basis.cautions, ...cautions])],
    },
    environment,
  );
}
