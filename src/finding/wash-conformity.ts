import type { BookTable } from '../record/book.js';
import { numberAt } from '../record/column.js';
import { textChoice } from './choices.js';
import { countColumn, keyCells, keyColumns, shareColumn, whereNone, wordColumn } from './columns.js';
import { contactEstimate } from './contact-estimate.js';
import { countedBy, counting, type NumberRules, sharing } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { bookNumber, bookText, countRows } from './row-tests.js';
import { sentence } from './sentence.js';
import { clusterPlaces, ShareCount } from './shares.js';
import type { WashStandard } from './wash-standards/wash-standard.js';
import { washStandardOf, washStandards } from './wash-standards/wash-standards.js';

/** Of washes whose contact temperature is estimated: of nothing else that is asked there is an estimate. */
function estimatedColumn(side: 'above' | 'across' | 'below', meaning: string): FindingColumn {
  return whereNone('not estimated', countColumn(`estimated_${side}`, `estimated ${side}`, 'washes', meaning));
}

const columns: readonly FindingColumn[] = [
  wordColumn('asked', 'asked', 'What the selected table asks of a wash.'),
  countColumn('washes', 'washes', 'washes', 'Finished washes by a method to which it applies.'),
  countColumn('met', 'recorded and met', 'washes', 'What was recorded is at least what the table asks.'),
  countColumn('short', 'recorded and short', 'washes', 'What was recorded is less.'),
  countColumn('not_recorded', 'not recorded', 'washes', 'Nothing was recorded: neither met nor short.'),
  shareColumn('met_share', 'met, of those recorded', 'percent', 'Met by met and short; clustered by station-day.'),
  shareColumn('recorded_share', 'recorded', 'percent', 'Met and short by washes; clustered by station-day.'),
  estimatedColumn(
    'above',
    'Not recorded, but nozzle and distance were, and the whole estimated range lies at or above what is asked.',
  ),
  estimatedColumn('across', 'The same, and the range lies on both sides of it.'),
  estimatedColumn('below', 'The same, and the whole range lies below it.'),
];

/** One thing that a table asks: which methods it applies to, the field that holds it, and the least value. */
interface Asked {
  readonly label: string;
  readonly methods: readonly string[];
  readonly field: string;
  readonly least: number;
}

const spray = ['hot spray', 'spray and flush', 'dip tank'];
const flush = ['flush', 'spray and flush'];

function askedBy(standard: WashStandard): Asked[] {
  const { contactTemperatureF, contactSeconds, flushMinutes, flushExitTemperatureF } = standard;
  const ask = (label: string, methods: string[], field: string, least: number | null): Asked[] =>
    least === null ? [] : [{ label: `${label} ${least}`, methods, field, least }];
  return [
    ...ask('contact, degrees F at least', spray, 'contact_temp_f', contactTemperatureF),
    ...ask('contact, seconds at least', spray, 'contact_seconds', contactSeconds),
    ...ask('flush, minutes at least', flush, 'flush_minutes', flushMinutes),
    ...ask('flush exit, degrees F at least', flush, 'flush_exit_temp_f', flushExitTemperatureF),
  ];
}

/** Finished washes by one of some methods. */
function washesBy(table: BookTable, rows: Uint32Array, methods: readonly string[]): Uint32Array {
  const method = bookText(table, 'method');
  const wanted = new Set(methods.map((name) => method.dictionary.indexOf(name, 1)));
  const finished = bookNumber(table, 'finished_at');
  return rows.filter((row) => wanted.has(method.codes[row]!) && numberAt(finished, row) !== null);
}

/** Which washes stand behind each number of one thing asked; `washes` are the finished ones to which it applies. */
function rulesOf(table: BookTable, washes: Uint32Array, { label, field, least }: Asked): NumberRules {
  const [value, nozzle, distance] = [field, 'nozzle_temp_f', 'stand_off_ft'].map((name) => bookNumber(table, name));
  const some = (words: string, holds: (recorded: number | null, row: number) => boolean) => ({
    words: `finished washes ${words} (${label})`,
    within: () => washes,
    holds: (row: number) => holds(numberAt(value!, row), row),
  });
  const estimated = (words: string, holds: (low: number, high: number) => boolean) =>
    some(`not recorded, and estimated ${words}`, (recorded, row) => {
      const [from, far] = [numberAt(nozzle!, row), numberAt(distance!, row)];
      if (recorded !== null || from === null || far === null) return false;
      const { low, high } = contactEstimate(from, far);
      return holds(low, high);
    });
  const all = some('by a method to which it applies', () => true);
  const met = some('recorded and met', (recorded) => recorded !== null && recorded >= least);
  const recorded = some('with the value recorded', (own) => own !== null);
  return {
    washes: counting(all),
    met: counting(met),
    short: counting(some('recorded and short', (own) => own !== null && own < least)),
    not_recorded: counting(some('without the value recorded', (own) => own === null)),
    met_share: sharing(met, recorded),
    recorded_share: sharing(recorded, all),
    estimated_above: counting(estimated('at or above it', (low) => low >= least)),
    estimated_across: counting(estimated('on both sides of it', (low, high) => low < least && high >= least)),
    estimated_below: counting(estimated('below it', (_, high) => high < least)),
  };
}

function measure(table: BookTable, washes: Uint32Array, { label, field, least }: Asked): FindingCell[] {
  const value = bookNumber(table, field);
  const nozzle = bookNumber(table, 'nozzle_temp_f');
  const distance = bookNumber(table, 'stand_off_ft');
  const places = clusterPlaces(table, washes);
  const met = new ShareCount(places.count);
  const recorded = new ShareCount(places.count);
  let [above, across, below] = [0, 0, 0];
  washes.forEach((row, at) => {
    const own = numberAt(value, row);
    recorded.add(places.placeOf[at]!, own !== null);
    if (own !== null) met.add(places.placeOf[at]!, own >= least);
    else if (field === 'contact_temp_f') {
      const [from, far] = [numberAt(nozzle, row), numberAt(distance, row)];
      if (from === null || far === null) return;
      const { low, high } = contactEstimate(from, far);
      if (low >= least) above++;
      else if (high < least) below++;
      else across++;
    }
  });
  const estimated = field === 'contact_temp_f' ? [above, across, below] : [null, null, null];
  const short = met.trials - met.cases;
  const open = recorded.trials - recorded.cases;
  return [label, washes.length, met.cases, short, open, met.clustered(), recorded.clustered(), ...estimated];
}

/** Whether what was recorded of washes is at least what a table, that the reader selected, asks. */
export const washConformity: Finding = {
  name: 'wash conformity',
  table: 'decontaminations',
  account: {
    definition:
      'What was recorded of a wash against a table that the sheet names; without one nothing is judged. A comparison of records, no instruction: local code, permits, makers and licensed practice decide how to wash. Hot water scalds within seconds.',
    numerator: 'Finished washes whose recorded value is at least what the table asks.',
    denominator: 'Finished washes by a method to which it applies, with the value recorded.',
    leftOut:
      'Washes not finished, craft that left unwashed, washes without a method or by hand. Not recorded is neither met nor short.',
    method:
      'Exact interval at the effective sample size with station-days as clusters. Where contact temperature was not recorded but nozzle temperature and distance were, a range is estimated with a loss of 25 to 30 °F a foot (common practice, no source); it is counted apart and never as met.',
    source: 'The tables name their own sources; Korn and Graubard 1998, Survey Methodology 24:193-201.',
    formula: 'met share = met ÷ (met + short); estimate = nozzle − 30 × feet to nozzle − 25 × feet',
    example: { by: [], options: { standard: 'western hull 2016' } },
  },
  options: [
    {
      name: 'standard',
      kind: 'text',
      unit: null,
      choices: washStandards.map(({ name }) => name),
      usual: null,
      meaning: 'The table that recorded values are compared with; none is applied unasked.',
    },
  ],
  find: (_book, table, rows, by, choices) => {
    const name = textChoice(choices, 'standard');
    const standard = name === null ? null : washStandardOf(name);
    const head = [...keyColumns(table, by), ...columns];
    if (standard === null) {
      const known = washStandards.map((one) => `"${one.name}"`).join(', ');
      return {
        columns: head,
        rows: [],
        leftOut: [],
        said: [`No table was selected, so nothing is judged. Known: ${known}.`],
      };
    }
    const asked = askedBy(standard);
    const method = bookText(table, 'method');
    const finished = bookNumber(table, 'finished_at');
    const found = groupRows(table, rows, by).flatMap(({ key, rows: own }) =>
      asked.map((one) => {
        const washes = washesBy(table, own, one.methods);
        const cells = [...keyCells(table, by, key), ...measure(table, washes, one)];
        return { cells, rows: own, rules: rulesOf(table, washes, one) };
      }),
    );
    return {
      columns: head,
      rows: found.map(({ cells }) => cells),
      counted: countedBy((row) => found[row]!),
      leftOut: [
        ...sentence(
          countRows(rows, (row) => numberAt(finished, row) === null),
          'wash has',
          'washes have',
          'no recorded end: left out.',
        ),
        ...sentence(
          countRows(rows, (row) => numberAt(finished, row) !== null && method.codes[row] === 0),
          'finished wash has',
          'finished washes have',
          'no method recorded.',
        ),
      ],
      said: [
        `Compared with “${standard.name}”: ${standard.source} (${standard.tag}). Selected by this page’s author; not advice.`,
      ],
    };
  },
};
