import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { unitOf } from '../../src/formula/unit/unit.js';
import { unitWord } from '../../src/formula/unit/word.js';
import { scaledTo } from '../../src/formula/value/apply-each.js';
import { accountOf, type Evaluated, type NumberValue, type TruthValue } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { givenNumber } from '../../src/formula/value/number.js';
import { isPartOf } from '../../src/formula/value/proportion.js';
import { sharedWeights } from '../../src/formula/value/resamples.js';
import { saysTakenAsKnown, takenAsKnown } from '../../src/formula/value/taken-as-known.js';
import { weightedIncidence } from '../../src/formula/value/weighted-incidence.js';
import { weightedQuantile } from '../../src/formula/value/weighted-quantile.js';
import { quantile } from '../../src/statistic/quantile.js';
import { cumulativeIncidence } from '../../src/statistic/survival/cumulative-incidence.js';
import { kaplanMeier } from '../../src/statistic/survival/kaplan-meier.js';
import { survivalQuantile } from '../../src/statistic/survival/quantile.js';
import { ask, askNumber, environmentOf, valueOfFormula } from './ask.js';
import { book, numbers, table, texts, waits } from './small-book.js';

// What a resample gives is held to the plain statistic of the rows as often as they were drawn, one by one; `statistic/`
// holds that to R.

const resamples = { count: 60, seed: 5 };
const days = 12;

/** So many rows on twelve station-days, in two strata. */
function seen(rows: number) {
  const day = Array.from({ length: rows }, (_, row) => (row * 7) % days);
  const minutes = day.map((of, row) => ((row * 37) % 101) / 2 + of);
  const how = ['ended', 'ended', 'open', 'otherwise'] as const;
  const ending = day.map((_, row) => [1 + ((row * 13) % 29), how[row % 4]!] as const);
  const only = day.map((_, row) => [1 + ((row * 13) % 29), row % 5 === 0 ? 'open' : 'ended'] as const);
  const filled = [numbers('minutes', 'minutes', minutes), waits('wait', ending), waits('only', only)];
  const stratumOf = Array.from({ length: days }, (_, of) => of % 2);
  const environment = { ...environmentOf(book([table('seen', 'looks', filled, day)], stratumOf)), resamples };
  const weights = sharedWeights(environment);
  /** The rows of one resample, each as often as its station-day was drawn. */
  const drawn = (draw: number) =>
    day.flatMap((of, row) => Array.from({ length: weights[draw * days + of]! }, () => row));
  const draws = (text: string) => {
    const value = valueOfFormula(text, environment);
    if (value.kind !== 'number' || value.draws === null) throw new Error('it has no draws');
    return value.draws();
  };
  return { minutes, ending, only, drawn, draws, environment };
}

function expectDraws(found: Float64Array, wanted: (draw: number) => number | null): void {
  expect(found).toHaveLength(resamples.count);
  found.forEach((value, draw) => {
    const own = wanted(draw);
    if (own === null) expect(value).toBeNaN();
    else expect(value).toBeCloseTo(own, 9);
  });
}

describe.each([30, 199, 200, 480])('of %d rows every resample has', (rows) => {
  const { minutes, ending, only, drawn, draws } = seen(rows);

  test.each([0.02, 0.07, 0.3, 0.5, 0.9, 0.99])('the quantile of type 7 of its rows, at %d', (p) => {
    expectDraws(draws(`quantile(minutes of seen, ${p})`), (draw) =>
      quantile(
        drawn(draw)
          .map((row) => minutes[row]!)
          .sort((a, b) => a - b),
        p,
      ),
    );
  });

  test('the median of its waits by their Kaplan-Meier curve', () => {
    expectDraws(draws('median(only of seen)'), (draw) => {
      const own = drawn(draw).map((row) => only[row]!);
      const curve = kaplanMeier(
        own.map(([time]) => time),
        own.map(([, how]) => Number(how === 'ended')),
      );
      return survivalQuantile(curve, 0.5).value;
    });
  });

  test.each([1, 10, 20.5])('the share of its waits that had ended within %d minutes', (limit) => {
    expectDraws(draws(`share_within(wait of seen, ${limit})`), (draw) => {
      const own = drawn(draw).map((row) => ending[row]!);
      const causes = own.map(([, how]) => ({ ended: 1, otherwise: 2, open: 0 })[how]);
      const times = own.map(([time]) => time);
      const hoped = cumulativeIncidence(times, causes, [limit]).find(({ cause }) => cause === 1);
      return hoped === undefined ? 0 : hoped.incidence[0]!;
    });
  });
});

describe('weighted numbers', () => {
  const value = fc.integer({ min: 0, max: 20 }).map((tenths) => tenths / 2);
  const weight = fc.nat({ max: 3 });

  test('have the quantile of type 7 of each as often as it is drawn, those passed over or not', () => {
    const rows = fc.array(fc.tuple(value, weight), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(rows, fc.double({ min: 0, max: 1, noNaN: true }), fc.nat({ max: 12 }), (drawn, p, from) => {
        const sorted = [...drawn].sort(([a], [b]) => a - b);
        const all = sorted.flatMap(([number, times]) => Array.from({ length: times }, () => number));
        const numbersDrawn = {
          sorted: Float64Array.from(sorted, ([number]) => number),
          clusterOf: Uint32Array.from(sorted, (_, at) => at),
          // Another resample stands before this one.
          weights: Uint8Array.from([7, 7, 7, ...sorted.map(([, times]) => times)]),
        };
        const found = weightedQuantile(numbersDrawn, 3, all.length, p);
        if (all.length === 0) {
          expect(found).toBeNaN();
          return;
        }
        // By definition: the place p (n − 1) between the two numbers around it; Hyndman and Fan (1996), type 7.
        const place = p * (all.length - 1);
        const [below, above] = [all[Math.floor(place)]!, all[Math.ceil(place)]!];
        expect(found).toBeCloseTo(below + (place - Math.floor(place)) * (above - below), 12);
        const passed = sorted.slice(0, from).reduce((sum, [, times]) => sum + times, 0);
        if (from < sorted.length && passed <= Math.floor(place))
          expect(weightedQuantile(numbersDrawn, 3, all.length, p, from, passed)).toBe(found);
      }),
      { numRuns: 300 },
    );
  });

  test('have an incidence that says nothing where nobody was followed for so long', () => {
    const of = (limit: number, over = [1, 0], weights = [1, 1], all = 2) =>
      weightedIncidence(
        Float64Array.of(3, 7),
        Uint8Array.of(1, 0),
        Uint8Array.from(over),
        Uint8Array.from(weights),
        limit,
        all,
      );
    expect([of(2), of(3), of(7)]).toEqual([0, 0.5, 0.5]);
    expect(of(7.5)).toBeNaN();
    // Where the last left too, all is settled and stays so.
    expect([of(7, [1, 1]), of(9, [1, 1])]).toEqual([0.5, 0.5]);
    expect(of(9, [1, 0], [0, 0], 0)).toBeNaN();
  });
});

describe('what an interval needs', () => {
  /** Rows of a kind on some station-days: [kind, station-day] each. */
  const kinds = (rows: readonly (readonly [string, number])[], count: number) =>
    environmentOf(
      book(
        [
          table(
            'seen',
            'looks',
            [
              texts(
                'kind',
                rows.map(([kind]) => kind),
              ),
            ],
            rows.map(([, day]) => day),
          ),
          table(
            'opened',
            'station days',
            [
              numbers(
                'n',
                null,
                Array.from({ length: count }, (_, day) => 1 + (day % 3)),
              ),
            ],
            Array.from({ length: count }, (_, day) => day),
          ),
        ],
        Array.from({ length: count }, () => 0),
      ),
    );
  const spread = (of: string, count: number, over: number) =>
    Array.from({ length: count }, (_, row) => [of, row % over] as const);
  const perDay = (of: string) => `count(seen where kind is "${of}") / sum(n of opened)`;

  test('is five records in every count, on at least two station-days', () => {
    expect(askNumber(perDay('a'), kinds(spread('a', 4, 4), 30))).toMatchObject({ interval: null });
    expect(askNumber(perDay('a'), kinds(spread('a', 5, 5), 30)).interval).not.toBeNull();
    expect(askNumber(perDay('a'), kinds(spread('a', 9, 1), 30)).why).toBe(
      'all records of one of its counts are of one station-day',
    );
    expect(askNumber(perDay('a'), kinds(spread('a', 9, 2), 30)).interval).not.toBeNull();
  });

  test('is said to rest on few station-days where none of its parts has twenty', () => {
    const few = 'under 20 station-days';
    expect(askNumber(perDay('a'), kinds(spread('a', 9, 3), 19)).cautions).toContain(few);
    expect(askNumber(perDay('a'), kinds(spread('a', 9, 3), 20)).cautions).not.toContain(few);
  });

  test('is a value in every resample: where some have none it says in how many', () => {
    // On three of six station-days: a resample may leave all three out.
    const environment = kinds([...spread('a', 9, 2), ...spread('b', 9, 6)], 6);
    const found = askNumber(`count(seen) / count(seen where kind is "a")`, environment);
    expect(found).toMatchObject({ value: 2, interval: null });
    const told = /^it is not defined in (\d+) of 2,000 resamples$/.exec(found.why!);
    // Neither of two station-days in six draws from six: (4/6)⁶ = 0.0878, 175.6 of 2,000 with a deviation of 12.7.
    expect(Math.abs(Number(told![1]) - 175.6)).toBeLessThan(5 * 12.7);
  });

  test('counts the fewer of cases and others of a share', () => {
    const most = kinds([...spread('a', 97, 20), ...spread('b', 3, 3)], 20);
    const share = 'share(count(seen where kind is "a"), count(seen))';
    expect(askNumber(`${share} * ${share}`, most).why).toMatch(/rests on 3 records/);
  });
});

describe('a share', () => {
  test('is of rows that are all among the others, and a ratio where one is not', () => {
    const of = (...rows: number[]) => Uint32Array.from(rows);
    expect([isPartOf(of(), of()), isPartOf(of(), of(1)), isPartOf(of(1, 4), of(0, 1, 2, 4))]).toEqual([
      true,
      true,
      true,
    ]);
    expect([isPartOf(of(1), of()), isPartOf(of(3), of(1, 2, 4)), isPartOf(of(1, 9), of(1, 4))]).toEqual([
      ...[false, false, false],
    ]);
    const environment = environmentOf(
      book(
        [
          table('seen', 'looks', [numbers('season', null, [1, 1, 2, 2, 2, 1])], [0, 1, 2, 3, 4, 5]),
          table('also', 'looks', [numbers('season', null, [1, 1, 2])], [0, 1, 2]),
        ],
        [0, 0, 0, 0, 0, 0],
      ),
    );
    const ratio = (over: string, under: string) => askNumber(`share(count(${over}), count(${under}))`, environment);
    expect(ratio('seen where season is 1', 'seen')).toMatchObject({ numerator: 3, denominator: 6 });
    expect(ratio('seen where season is 1', 'seen where season is 2')).toMatchObject({ numerator: null, value: 1 });
    expect(ratio('also', 'seen')).toMatchObject({ numerator: null, value: 0.5 });
    expect(valueOfFormula('share(count(seen where season is 1), count(seen))', environment)).toMatchObject({
      why: null,
    });
  });
});

describe('a truth that resamples change', () => {
  const { environment } = seen(300);
  const pace = 'mean(minutes of seen)';
  const usual = askNumber(pace, environment).value!;
  const busy = valueOfFormula(`${pace} > ${usual - 1}`, environment);
  const known = new Map<string, Evaluated>([['busy', busy]]);
  const asked = (text: string) => valueOfFormula(text, { ...environment, known }) as NumberValue;

  test('decides again in each, by its name as where it is written out', () => {
    const named = asked('if(busy, 1, 0)');
    const written = asked(`if(${pace} > ${usual - 1}, 1, 0)`);
    expect([...named.draws!()]).toEqual([...written.draws!()]);
    expect(new Set(named.draws!())).toEqual(new Set([0, 1]));
    expect([...asked('if(busy and 1 < 2, 1, 0)').draws!()]).toEqual([...named.draws!()]);
    expect([...asked('if(not busy, 0, 1)').draws!()]).toEqual([...named.draws!()]);
  });

  test('has no draws where nothing in it changes, and unknown stays unknown in all', () => {
    expect((valueOfFormula('1 < 2', environment) as TruthValue).draws).toBeNull();
    expect((valueOfFormula('"a" is "b"', environment) as TruthValue).draws).toBeNull();
    const unknown = valueOfFormula(`${pace} > 0 * ${pace} / 0`, environment) as TruthValue;
    expect(unknown.truth).toBeNull();
    expect([...unknown.draws!()].every(Number.isNaN)).toBe(true);
    expect(kindOfValue(busy)).toEqual({ kind: 'truth' });
  });
});

test('accounts go with whatever is made of counts, dates and truths too', () => {
  const { environment } = seen(30);
  const tables = (text: string) => accountOf(valueOfFormula(text, environment)).map(({ table: of }) => of);
  expect(tables('quantile(minutes of seen, 0.5)')).toEqual(['seen']);
  expect(tables('median(wait of seen)')).toEqual(['seen']);
  expect(tables('share_within(wait of seen, 5)')).toEqual(['seen']);
  expect(tables('sum(minutes of seen)')).toEqual(['seen']);
  expect(tables('count(seen) > 5')).toEqual(['seen']);
  expect(tables('if(count(seen) > 5, date_of(2025, 5, 1), date_of(2025, 5, 2)) + 1')).toEqual(['seen']);
  expect(tables('seen where minutes > 5')).toEqual(['seen']);
  expect(accountOf({ kind: 'problem', problems: [] })).toEqual([]);
  expect(kindOfValue({ kind: 'list', items: [], accounts: [] })).toEqual({ kind: 'list', of: { kind: 'unknown' } });
  expect(ask('count(seen) > 5', environment)).toEqual({ kind: 'truth', truth: true });
});

test('a number in another unit keeps its limits, its draws and whatever it stands on', () => {
  const { environment } = seen(300);
  const median = valueOfFormula('median(only of seen)', environment) as NumberValue;
  const hours = scaledTo(median, unitOf(unitWord('hours')!), environment);
  expect(hours.value).toBeCloseTo(median.value! / 60, 12);
  const [own, scaled] = [median.interval().interval!, hours.interval().interval!];
  expect([scaled.low, scaled.high]).toEqual([expect.closeTo(own.low! / 60, 12), expect.closeTo(own.high! / 60, 12)]);
  expect(scaled.method).toBe(own.method);
  expect(hours.draws!()[7]).toBeCloseTo(median.draws!()[7]! / 60, 12);
  expect(hours).toMatchObject({ standing: 'estimate', cautions: median.cautions, accounts: median.accounts });
  expect(scaledTo(median, unitOf(unitWord('minutes')!), environment)).toBe(median);
  const warm = scaledTo(givenNumber(60, unitOf(unitWord('degrees C')!)), unitOf(unitWord('degrees F')!), environment);
  expect(warm.value).toBeCloseTo(140, 12);
  const feet = unitOf(unitWord('feet')!);
  expect(() => scaledTo(median, feet, environment)).toThrow('units were not checked');
});

test('the caution that something is taken as known is told from others', () => {
  expect(saysTakenAsKnown(takenAsKnown('usual'))).toBe(true);
  expect(saysTakenAsKnown(takenAsKnown('usual', 'rows of s are taken'))).toBe(true);
  expect(saysTakenAsKnown('under 20 station-days')).toBe(false);
});

test('a limit or a share asked for that comes from records is taken as known, and that is said', () => {
  const { environment } = seen(300);
  const cautions = (text: string) => askNumber(text, environment).cautions.filter(saysTakenAsKnown);
  expect(cautions('share_within(only of seen, median(only of seen))')).toEqual([
    'the limit comes from records, and is taken as known',
  ]);
  const share = 'share(count(seen where minutes > 20), count(seen))';
  expect(cautions(`quantile(minutes of seen, ${share})`)).toEqual([
    'the share comes from records, and is taken as known',
  ]);
  expect(cautions('share_within(only of seen, 10)')).toEqual([]);
  expect(cautions('quantile(minutes of seen, 1 / 2)')).toEqual([]);
});
