import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../src/formula/evaluate.js';
import { resultOf } from '../../src/formula/result-of.js';
import { sheetValue } from '../../src/formula/sheet/sheet-value.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { givenNumber } from '../../src/formula/value/number.js';
import { minutesUnit } from '../../src/formula/value/waits.js';
import { environmentOf, problemsOf, read, valueOfFormula } from './ask.js';
import { smallBook } from './small-book.js';

const full = valueOfFormula('inspections where extent is "full"');
const usual = valueOfFormula('median(minutes of inspections)');
const group = {
  sheet: 's',
  table: 'inspections',
  rows: Uint32Array.of(4, 5, 6),
  keys: new Map([['station', 'South']]),
};
const watched: Evaluated = { kind: 'list', items: [{ kind: 'text', text: 'North', accounts: [] }], accounts: [] };
const looked = [full, usual].map((_, at) => givenNumber(at * 4));
const stations = {
  fields: [smallBook.tables.get('inspections')!.fields.get('station')!],
  rows: [['North'], ['South']],
};
const sheet = sheetValue(
  's',
  stations,
  new Map([
    ['looked', { kind: kindOfValue(looked[0]!), cells: looked }],
    ['usual', { kind: kindOfValue(usual), cells: [usual, givenNumber(null, minutesUnit, 'nothing was recorded')] }],
  ]),
);
const asked = read('level * 2 + 1');
const environment = {
  ...environmentOf(
    smallBook,
    new Map([
      ['full', full],
      ['usual', usual],
      ['watched', watched],
      ['s', sheet],
      ['level', givenNumber(5)],
      ['asked', givenNumber(11)],
    ]),
    group,
  ),
  resamples: { count: 20, seed: 3 },
  definitions: {
    inputs: new Set(['level']),
    made: new Map([['asked', { formula: asked, needs: ['level'] }]]),
    values: new Map<string, Evaluated>([
      ['level', givenNumber(5)],
      ['asked', givenNumber(11)],
    ]),
  },
};

const { formula } = fc.letrec<{ formula: string; rows: string; condition: string; field: string }>((tie) => {
  const two = (join: (one: string, other: string) => string, part: 'formula' | 'condition' | 'field') =>
    fc.tuple(tie(part), tie(part)).map(([one, other]) => join(one, other));
  return {
    rows: fc.oneof(
      { maxDepth: 3 },
      fc.constantFrom('inspections', 'full', 'station_days here', 'decontaminations', 'spending', 'inspections here'),
      fc
        .tuple(fc.constantFrom('inspections', 'full', 'full here', ''), tie('condition'))
        .map(([base, condition]) => `${base} where ${condition}`),
    ),
    field: fc.oneof(
      { maxDepth: 3 },
      fc.constantFrom('length_ft', 'minutes', 'season', 'turnaround', 'staff_hours', 'amount', 'contact_temp_f', '2'),
      two((one, other) => `(${one} - ${other})`, 'field'),
      two((one, other) => `${one} / ${other}`, 'field'),
      fc.tuple(tie('condition'), tie('field'), tie('field')).map(([is, a, b]) => `if(${is}, ${a}, ${b})`),
    ),
    condition: fc.oneof(
      { maxDepth: 3 },
      fc.constantFrom(
        'outcome is "intercepted"',
        'standing_water is not "yes"',
        'station in ("North", "South")',
        'day > "2025-05-01"',
        'craft is inspector',
        'standing_water is missing',
        'day + 3 > "2025-05-04"',
        'month_of(day) in ("May", "June")',
        'station in watched',
        'contains(joined(craft, station), "aN")',
        'first_known(standing_water, outcome) is not "yes"',
      ),
      two((one, other) => `${one} <= ${other}`, 'field'),
      two((one, other) => `(${one} and not (${other}))`, 'condition'),
      two((one, other) => `(${one} or ${other})`, 'condition'),
      fc.tuple(tie('field'), tie('field')).map(([one, other]) => `${one} not between 1 and ${other}`),
      tie('formula').map((one) => `minutes < ${one}`),
    ),
    formula: fc.oneof(
      { maxDepth: 4 },
      fc.constantFrom(
        ...['0', '7', '2.5', 'usual', 'asked', 'days_between(earliest(day of inspections), "2025-06-01")'],
        ...['looked of s for station', 'usual of s for "South"', 'sum(usual of s)', 'rank_from_lowest(usual of s)'],
        ...['running_sum(looked of s)', 'count(s where looked > 2)', 'mean(looked of s here)', 'lowest(usual of s)'],
      ),
      tie('formula').map((value) => `asked with level as (${value})`),
      tie('rows').map((rows) => `count(${rows})`),
      fc
        .tuple(fc.constantFrom('sum', 'mean', 'median', 'lowest', 'highest', 'distinct'), tie('field'), tie('rows'))
        .map(([name, field, rows]) => `${name}(${field} of ${rows})`),
      fc.tuple(tie('rows'), tie('formula')).map(([rows, p]) => `quantile(length_ft of ${rows}, ${p})`),
      tie('formula').map((limit) => `share_within(turnaround of decontaminations, ${limit})`),
      two((one, other) => `rate(${one}, ${other})`, 'formula'),
      two((one, other) => `(${one} + ${other})`, 'formula'),
      two((one, other) => `${one} * ${other}`, 'formula'),
      two((one, other) => `${one} / ${other}`, 'formula'),
      two((one, other) => `if(${one} > ${other}, ${other}, ${one})`, 'formula'),
      two((one, other) => `first_known(${one}, ${other})`, 'formula'),
      tie('formula').map((one) => `-abs(${one})`),
    ),
  };
});

test('what the checker passes always has a value that is finite or null with a reason', () => {
  let passed = 0;
  fc.assert(
    fc.property(formula, (text) => {
      if (text.length > 2000 || problemsOf(text, environment).length > 0) return;
      passed += 1;
      const result = resultOf(evaluate(read(text), environment));
      if (result.kind !== 'number') throw new Error(result.kind);
      if (result.value === null) expect(result.why).not.toBeNull();
      else expect(Number.isFinite(result.value)).toBe(true);
      const { interval } = result;
      if (interval === null) return;
      expect(result.value).not.toBeNull();
      for (const limit of [interval.low, interval.high]) expect(limit === null || Number.isFinite(limit)).toBe(true);
      expect(interval.low).not.toBe(interval.high);
    }),
    { numRuns: 3000, seed: 23 },
  );
  expect(passed).toBeGreaterThan(300);
});
