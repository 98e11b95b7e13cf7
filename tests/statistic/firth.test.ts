import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firthLogistic } from '../../src/statistic/regression/firth-logistic.js';

const close = (value: number, digits: number) => expect.closeTo(value, digits);

describe('penalised logistic model', () => {
  // The data of Heinze and Schemper 2002, Statistics in Medicine 21:2409-2419, where NV separates cases: no maximum of
  // the plain likelihood is finite. Coefficients and profile limits as R's logistf prints them (second-hand, to the 1e-5
  // at which it stops); NV again by R 4.2.2's own optim and uniroot, tests/reference/firth.R.
  const rows = readFileSync(new URL('../reference/endometrial.csv', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(',').map(Number));
  const patterns = rows.map(([nv, pi, eh, hg]) => ({
    columns: [0, 1, 2, 3],
    values: [1, nv!, pi!, eh!],
    cases: hg!,
    trials: 1,
  }));

  it('stays finite under separation, and holds to the published coefficients and profile limits', () => {
    const found = firthLogistic(patterns, 4);
    expect(found?.coefficients.map(({ value }) => value)).toEqual([
      close(3.77455951, 5),
      close(2.9292733, 5),
      close(-0.03475175, 6),
      close(-2.60416387, 5),
    ]);
    expect(found?.coefficients.map(({ interval }) => [interval.low, interval.high])).toEqual([
      [close(1.0825371, 4), close(7.2092805, 4)],
      [close(0.6097244, 5), close(7.85463171, 5)],
      [close(-0.1244587, 6), close(0.04045547, 6)],
      [close(-4.3651832, 4), close(-1.23272106, 4)],
    ]);
    const nv = found?.coefficients[1];
    expect(found?.logLikelihood).toBeCloseTo(-24.0372678007, 8);
    expect([nv?.interval.low, nv?.interval.high]).toEqual([close(0.609724436303, 5), close(7.85463171387, 5)]);
    expect(nv?.p).toBeCloseTo(0.00912366754709, 8);
  });

  it('of one column adds half a case and half another, as Firth 1993 says of a single proportion', () => {
    const found = firthLogistic([{ columns: [0], values: [1], cases: 0, trials: 9 }], 1);
    expect(found?.coefficients[0]?.value).toBeCloseTo(Math.log(0.5 / 9.5), 7);
  });

  it('gives the same whether alike trials stand apart or together', () => {
    const apart = [1, 0, 0, 1, 0, 0, 0, 0].map((cases, i) => ({
      columns: i < 4 ? [0] : [0, 1],
      values: i < 4 ? [1] : [1, 1],
      cases,
      trials: 1,
    }));
    const together = [
      { columns: [0], values: [1], cases: 2, trials: 4 },
      { columns: [0, 1], values: [1, 1], cases: 0, trials: 4 },
    ];
    const values = (some: typeof apart) =>
      firthLogistic(some, 2)!.coefficients.map(({ value, interval, p }) => [value, interval.low, interval.high, p]);
    values(together).forEach((row, i) => {
      row.forEach((value, j) => {
        expect(value).toBeCloseTo(values(apart)[i]![j]!, 5);
      });
    });
  });

  it('of two groups is the log odds ratio with ½ added to each count', () => {
    // Saturated two by two: Heinze and Schemper 2002, section 2.
    const count = fc.integer({ min: 0, max: 40 });
    fc.assert(
      fc.property(count, count, count, count, (a, b, c, d) => {
        fc.pre(a + b > 0 && c + d > 0);
        const found = firthLogistic(
          [
            { columns: [0, 1], values: [1, 1], cases: a, trials: a + b },
            { columns: [0], values: [1], cases: c, trials: c + d },
          ],
          2,
        );
        const odds = ((a + 0.5) * (d + 0.5)) / ((b + 0.5) * (c + 0.5));
        const [, ratio] = found!.coefficients;
        expect(ratio!.value).toBeCloseTo(Math.log(odds), 5);
        expect(ratio!.interval.low!).toBeLessThan(ratio!.value);
        expect(ratio!.interval.high!).toBeGreaterThan(ratio!.value);
      }),
      { numRuns: 100 },
    );
  });

  it('is nothing where two columns are the same', () => {
    expect(firthLogistic([{ columns: [0, 1], values: [1, 1], cases: 1, trials: 5 }], 2)).toBeNull();
  });
});
