import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cumulativeIncidence } from '../../src/statistic/survival/cumulative-incidence.js';
import { incidenceAt } from '../../src/statistic/survival/incidence-at.js';

describe('incidenceAt', () => {
  const times = [3, 5, 5, 8, 11, 11, 14, 20, 21, 30, 34, 40];
  const causes = [1, 1, 2, 0, 1, 1, 2, 0, 1, 1, 2, 1];
  const clusters = [1, 1, 1, 2, 2, 3, 3, 3, 4, 4, 5, 5];

  it('has the shares and standard errors of R’s survival library', () => {
    // tests/reference/incidence.R: survfit of a factor, R 4.2.2, survival 3.5-3; times 5, 12, 25, 40.
    const shares = [0.16666666666667, 0.35416666666667, 0.47135416666667, 0.70572916666667];
    const errors = [0.10758287072798, 0.14326861830401, 0.15719207462648, 0.14472564973065];
    [5, 12, 25, 40].forEach((time, i) => {
      const found = incidenceAt(times, causes, 1, time);
      expect(found.value).toBeCloseTo(shares[i]!, 12);
      expect(found.standardError).toBeCloseTo(errors[i]!, 12);
    });
    expect(incidenceAt(times, causes, 2, 25).standardError).toBeCloseTo(0.114009770282671, 12);
  });

  it('adds the influences of a cluster before it squares them', () => {
    // The same script, from the library's own influences.
    const errors = [0.140270901921696, 0.131021764740245, 0.121081206880995, 0.095489933438332];
    [5, 12, 25, 40].forEach((time, i) => {
      expect(incidenceAt(times, causes, 1, time, clusters).standardError).toBeCloseTo(errors[i]!, 12);
    });
  });

  it('has limits on the log-log scale, as R’s survfit with conf.type log-log would', () => {
    // By hand at 12: 0.35416666666667 to the power exp(± 1.959963984540054 × 0.14326861830401 ÷ (0.35416666666667 ×
    // 1.0379872…)), with R 4.2.2's exp and log: 0.10774031529068 and 0.61657571781869.
    const { interval } = incidenceAt(times, causes, 1, 12);
    expect(interval?.low).toBeCloseTo(0.10774031529068, 10);
    expect(interval?.high).toBeCloseTo(0.61657571781869, 10);
  });

  it('is 1 and no less where all have left for the cause, however many steps are added up', () => {
    for (let many = 1; many <= 200; many++) {
      const steps = Array.from({ length: many }, (_, at) => at + 1);
      const found = incidenceAt(
        steps,
        steps.map(() => 1),
        1,
        many,
      );
      expect([many, found.value, found.interval]).toEqual([many, 1, null]);
    }
    // One that left for another cause, and one still open, keep it below.
    expect(incidenceAt([1, 2, 3], [1, 2, 1], 1, 3).value).toBeCloseTo(2 / 3, 12);
    expect(incidenceAt([1, 2, 3], [1, 1, 0], 1, 3).value).toBeCloseTo(2 / 3, 12);
  });

  it('without open cases or another cause is the binomial share with its standard error', () => {
    const found = incidenceAt([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], [1, 1, 1, 1, 1, 1, 1, 1, 1, 1], 1, 3.5);
    expect(found.value).toBeCloseTo(0.3, 12);
    expect(found.standardError).toBeCloseTo(Math.sqrt((0.3 * 0.7) / 10), 12);
  });

  it('is the share of cumulativeIncidence, and past the longest follow-up nothing while some are open', () => {
    const entry = fc.record({ time: fc.integer({ min: 0, max: 20 }), cause: fc.constantFrom(0, 1, 2) });
    fc.assert(
      fc.property(fc.array(entry, { minLength: 1, maxLength: 30 }), fc.integer({ min: 0, max: 24 }), (all, at) => {
        const [t, c] = [all.map(({ time }) => time), all.map(({ cause }) => cause)];
        const [expected] = cumulativeIncidence(t, c, [at], [1]);
        const { value } = incidenceAt(t, c, 1, at);
        const share = expected!.incidence[0] ?? null;
        if (share === null) expect(value).toBeNull();
        else expect(value).toBeCloseTo(share, 12);
      }),
    );
  });
});
