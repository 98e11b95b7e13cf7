import { fromMarkdown } from 'mdast-util-from-markdown';
import type { NumberResult, Result } from '../../src/formula/result.js';
import type {
  Block,
  ChartRequest,
  EvaluatedFigure,
  EvaluatedNotebook,
  EvaluatedSheet,
  SheetColumn,
} from '../../src/notebook/evaluated.js';
import type { PageContext } from '../../src/report/page-context.js';

/** A number as a formula gives it; whatever is not named is absent. */
export function number(value: number | null, more: Partial<NumberResult> = {}): NumberResult {
  return {
    kind: 'number',
    value,
    unit: '',
    numerator: null,
    denominator: null,
    interval: null,
    why: null,
    cautions: [],
    ...more,
  };
}

/** A share with invented limits: the page shows what it is given, and these tests are about showing. */
export function share(cases: number, trials: number, low: number | null, high: number | null): NumberResult {
  return number(cases / trials, {
    numerator: cases,
    denominator: trials,
    interval: {
      low,
      high,
      confidence: 0.95,
      sides: cases === 0 ? 'upper' : 'two',
      method:
        cases === 0
          ? 'Exact one-sided upper limit for no cases: 1 − 0.05^(1/n)'
          : 'Clopper-Pearson on the effective sample size, station-days as clusters (Korn and Graubard)',
    },
  });
}

export const text = (words: string): Result => ({ kind: 'text', text: words });

export function column(
  name: string,
  role: SheetColumn['role'],
  shownAs = '',
  label = name.replaceAll('_', ' '),
): SheetColumn {
  return { name, label, role, formula: role === 'value' ? `formula of ${name}` : '', shownAs, meaning: '' };
}

const stations: readonly (readonly [string, number, number, number, number])[] = [
  ['Heron Landing', 3120, 31, 0.0064, 0.0146],
  ['Slate Narrows', 2210, 12, 0.0026, 0.0101],
  ['Quill Ferry Ramp', 2984, 9, 0.0013, 0.0061],
  ['Upper Teasel Reservoir, north ramp and dry storage', 1408, 3, 0.0004, 0.0066],
  ['Cinder Pass border station', 6011, 11, 0.0008, 0.0035],
  ['Marrow Gap roadside', 5230, 5, 0.0003, 0.0024],
  ['Little Bittern', 611, 0, 0, 0.0049],
];

const byStation: EvaluatedSheet = {
  name: 'by_station',
  sentence: 'Sheet by_station: each station of full inspections, highest interception first.',
  columns: [
    column('station', 'key'),
    column('inspected', 'value', 'whole'),
    column('interception', 'value', 'per 1,000'),
    column('target', 'value', 'per 1,000'),
  ],
  rows: [
    ...stations.map(([name, inspected, intercepted, low, high]) => ({
      cells: [
        text(name),
        number(inspected, { unit: 'inspections' }),
        share(intercepted, inspected, low, high),
        number(0.0033),
      ],
    })),
    {
      cells: [
        text('Old Weir'),
        number(0, { unit: 'inspections' }),
        number(null, { why: 'no full inspection was recorded there' }),
        number(null, { why: 'no full inspection was recorded there' }),
      ],
    },
  ],
  notes: ['412 paper checks are left out: nobody looked at the craft.'],
  problems: [],
  line: 30,
};

const months = ['March', 'April', 'May', 'June', 'July', 'August', 'September', 'October'];

const byMonth: EvaluatedSheet = {
  name: 'by_month',
  sentence: 'Sheet by_month: each season, month of full inspections.',
  columns: [
    column('season', 'key'),
    column('month', 'key'),
    column('inspected', 'value', 'whole'),
    column('interception', 'value', 'per 1,000'),
  ],
  rows: [2023, 2024, 2025].flatMap((season, year) =>
    months.flatMap((month, at) => {
      if (season === 2023 && at === 0) return [];
      const inspected = [180, 900, 2600, 4700, 6100, 5200, 2300, 600][at]! + year * 120;
      const cases = Math.max(
        1,
        Math.round(inspected * ([5, 3.1, 1.4, 0.9, 0.7, 0.6, 0.8, 1.1][at]! / 1000) * (1 + year * 0.2)),
      );
      const rate = cases / inspected;
      const cell =
        season === 2024 && month === 'October'
          ? number(null, { why: 'every station was closed by fire' })
          : share(cases, inspected, rate * 0.5, rate * 1.8);
      return [{ cells: [number(season), text(month), number(inspected, { unit: 'inspections' }), cell] }];
    }),
  ),
  notes: [],
  problems: [],
  line: 50,
};

const hours = [6, 7, 8, 9, 10, 11, 12, 13, 14, 16, 17, 18, 19];

const byHour: EvaluatedSheet = {
  name: 'by_hour',
  sentence: 'Sheet by_hour: each hour of inspections.',
  columns: [column('hour', 'key'), column('inspected', 'value', 'whole')],
  rows: hours.map((hour) => ({
    cells: [number(hour), number(400 + 300 * Math.round(10 - Math.abs(hour - 11)), { unit: 'inspections' })],
  })),
  notes: [],
  problems: [],
  line: 60,
};

const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

const byWeekdayAndHour: EvaluatedSheet = {
  name: 'by_weekday_and_hour',
  sentence: 'Sheet by_weekday_and_hour: each weekday, hour of inspections.',
  columns: [column('weekday', 'key'), column('hour', 'key'), column('interception', 'value', 'per 1,000')],
  rows: weekdays.flatMap((weekday, day) =>
    hours.map((hour) => {
      const inspected = hour < 7 ? 12 : 300 + 40 * day;
      const cases = Math.abs(((day * 7 + hour * 3) % 6) - 1);
      const cell =
        hour === 19 && day < 2
          ? number(null, { why: 'closed' })
          : share(cases, inspected, cases === 0 ? 0 : (cases / inspected) * 0.4, (cases + 3) / inspected);
      return { cells: [text(weekday), number(hour), cell] };
    }),
  ),
  notes: [],
  problems: [],
  line: 70,
};

const turnaround: EvaluatedSheet = {
  name: 'turnaround',
  sentence: 'Sheet turnaround: turnaround curve of washes, by setting.',
  columns: [column('setting', 'key'), column('minutes', 'value', 'minutes'), column('still_held', 'value', 'percent')],
  rows: ['launch', 'roadside'].flatMap((setting, at) =>
    [0, 12, 20, 26, 31, 38, 47, 60, 82, 120, 190].map((minutes, step) => {
      const held = Math.exp(-step / (3 + at));
      return {
        cells: [
          text(setting),
          number(minutes, { unit: 'minutes' }),
          number(held, {
            interval: {
              low: held * 0.85,
              high: Math.min(1, held * 1.15),
              confidence: 0.95,
              sides: 'two',
              method: 'Kaplan-Meier, log-log limits',
            },
          }),
        ],
      };
    }),
  ),
  notes: ['4 craft still held when the records end are counted as unfinished.'],
  problems: [],
  line: 80,
};

const empty: EvaluatedSheet = {
  name: 'by_drive',
  sentence: 'Sheet by_drive: each drive of full inspections where craft is missing.',
  columns: [column('drive', 'key'), column('inspected', 'value', 'whole')],
  rows: [],
  notes: [],
  problems: [],
  line: 90,
};

function chart(
  kind: string,
  sheet: string,
  caption: string,
  options: Record<string, string>,
  line: number,
): ChartRequest {
  return {
    name: `${kind}-${sheet}-${Object.values(options).join('-')}`,
    kind,
    caption,
    sheet,
    options,
    line,
    column: 1,
  };
}

const figures: readonly EvaluatedFigure[] = [
  {
    name: 'inspected',
    formula: 'count(full)',
    shownAs: 'whole',
    result: number(21_574, { unit: 'inspections' }),
    line: 12,
  },
  {
    name: 'interception',
    formula: 'rate(intercepted, inspected)',
    shownAs: 'per 1,000',
    result: share(71, 21_574, 0.00241, 0.00442),
    line: 13,
  },
  {
    name: 'cost_each',
    formula: 'spent / intercepted',
    shownAs: 'dollars',
    result: number(18_413.2, {
      unit: 'dollars an interception',
      interval: {
        low: 14_020,
        high: 25_877,
        confidence: 0.95,
        sides: 'two',
        method: 'Percentile limits of 2,000 resamples of 1,204 station-days within station and season (seed 1)',
      },
      cautions: ['Spending is taken as given: its own uncertainty is not in the interval.'],
    }),
    line: 14,
  },
  {
    name: 'median_wait',
    formula: 'median(wait of washes)',
    shownAs: 'minutes',
    result: number(34, { unit: 'minutes', why: 'fewer than 2 clusters' }),
    line: 15,
  },
  {
    name: 'wrong',
    formula: 'spent + wait',
    shownAs: '',
    result: {
      kind: 'problem',
      problems: [
        {
          code: 'units-differ',
          severity: 'sets aside',
          place: { file: 'notebooks/sample.md', line: 16, column: 20, field: null },
          seen: 'spent + wait',
          wanted: 'two amounts of one unit, not dollars and minutes',
          remedy: 'Divide or multiply them, or take another figure.',
        },
      ],
    },
    line: 16,
  },
];

/** Blocks of a piece of CommonMark. */
export function prose(words: string): Block[] {
  return fromMarkdown(words).children.map((node) => ({ kind: 'prose', node }));
}

const sheets = [byStation, byMonth, byHour, byWeekdayAndHour, turnaround, empty];

/** A notebook with every kind of part in it, written by hand; its numbers are invented and prove nothing. */
export const sampleNotebook: EvaluatedNotebook = {
  file: 'notebooks/sample.md',
  name: 'sample',
  title: 'The season at the ramps of the Quillwater Basin',
  fingerprint: '5b'.repeat(32),
  blocks: [
    ...prose(`# The season at the ramps of the Quillwater Basin

Inspectors looked over {inspected} craft, of which {interception} were stopped with mussels. Each cost {cost_each}. The
median wait was {median_wait}; the [budget page](budget-request.html) asks what {seasonal_wage} more would buy.
A misspelt name stays to be seen: {interseption}; <b onclick="x()">markup</b> does not run, and
[nor does this](javascript:alert(1)). ![A drawn boat](https://example.org/boat.png) \`{interception}\`

## What was assumed
`),
    { kind: 'inputs', names: ['seasonal_wage', 'release_target'] },
    { kind: 'selections', names: ['full'] },
    ...prose('## The season in five figures\n'),
    { kind: 'figures', names: figures.map((figure) => figure.name) },
    ...prose('## Stations\n\n### Highest first\n'),
    { kind: 'sheet', name: 'by_station' },
    {
      kind: 'chart',
      chart: chart(
        'dots',
        'by_station',
        'Interceptions per 1,000 full inspections, by station',
        { value: 'interception' },
        40,
      ),
    },
    { kind: 'chart', chart: chart('bars', 'by_station', 'Full inspections, by station', { value: 'inspected' }, 41) },
    {
      kind: 'chart',
      chart: chart(
        'funnel',
        'by_station',
        'Stations against the number of craft they looked over',
        { value: 'interception', around: 'target' },
        42,
      ),
    },
    {
      kind: 'chart',
      chart: chart('dots', 'by_station', 'A chart with two mistakes', { value: 'intercepton', colour: 'red' }, 43),
    },
    ...prose('## Months\n\n### Highest first\n'),
    { kind: 'sheet', name: 'by_month' },
    {
      kind: 'chart',
      chart: chart(
        'lines',
        'by_month',
        'Interceptions per 1,000 full inspections, by month and season',
        { value: 'interception', x: 'month', by: 'season' },
        52,
      ),
    },
    ...prose('## Hours\n'),
    { kind: 'sheet', name: 'by_hour' },
    { kind: 'chart', chart: chart('columns', 'by_hour', 'Inspections by hour of the day', { value: 'inspected' }, 62) },
    {
      kind: 'chart',
      chart: chart(
        'heat',
        'by_weekday_and_hour',
        'Interceptions per 1,000 inspections, by weekday and hour',
        { x: 'hour', y: 'weekday', value: 'interception', fewest: '30' },
        72,
      ),
    },
    ...prose('## Washes\n'),
    { kind: 'sheet', name: 'turnaround' },
    {
      kind: 'chart',
      chart: chart(
        'steps',
        'turnaround',
        'Craft still held, by minutes since their wash was ordered',
        { x: 'minutes', value: 'still_held', by: 'setting' },
        82,
      ),
    },
    { kind: 'sheet', name: 'by_drive' },
  ],
  inputs: new Map([
    [
      'seasonal_wage',
      {
        name: 'seasonal_wage',
        value: number(23.4, { unit: 'dollars an hour' }),
        unit: 'dollars an hour',
        source: 'payroll office, fiscal 2026',
        line: 8,
      },
    ],
    [
      'release_target',
      { name: 'release_target', value: number(90, { unit: 'minutes' }), unit: 'minutes', source: '', line: 9 },
    ],
  ]),
  selections: new Map([
    [
      'full',
      {
        name: 'full',
        formula: 'inspections where season is 2025 and extent is "full"',
        table: 'inspections',
        rows: 21_574,
        problems: [],
        line: 10,
      },
    ],
  ]),
  figures: new Map(figures.map((figure) => [figure.name, figure])),
  sheets: new Map(sheets.map((sheet) => [sheet.name, sheet])),
  problems: figures.flatMap(({ result }) => (result.kind === 'problem' ? result.problems : [])),
};

/** What the sample page says about where it comes from. */
export const sampleContext: PageContext = {
  sum: {
    files: [
      {
        file: 'lakes/inspections-2025.csv',
        fingerprint: 'a1'.repeat(32),
        crosswalk: 'lakes',
        table: 'inspections',
        read: 17_206,
        kept: 17_148,
        setAside: 58,
        folded: 0,
        problems: { 'not-a-code': 31, 'no-such-time': 29 },
        notes: { contradiction: 12 },
      },
      {
        file: 'roads/forms-2025.csv',
        fingerprint: 'b2'.repeat(32),
        crosswalk: 'roads',
        table: 'inspections',
        read: 8_011,
        kept: 8_003,
        setAside: 8,
        folded: 240_090,
        problems: { 'not-a-code': 8 },
        notes: {},
      },
    ],
    definitionChanges: [
      {
        table: 'inspections',
        field: 'standing_water',
        season: 2025,
        was: 'water that can be poured out',
        is: 'any water, damp surfaces included',
      },
    ],
    asOf: 1_764_460_800_000,
    fingerprint: 'c3'.repeat(32),
  },
  program: { version: '0.1.0', fingerprint: 'd4'.repeat(32) },
  date: '30 November 2025',
  audience: 'analysts and the public',
  traces: new Map([
    [
      'interception',
      {
        name: 'interception',
        formula: 'rate(intercepted, inspected)',
        shownAs: 'per 1,000',
        result: share(71, 21_574, 0.00241, 0.00442),
        inputs: [],
        standsOn: [
          { name: 'full', formula: 'inspections where …', shownAs: '', result: text('21574 rows of inspections') },
        ],
        counts: [
          {
            table: 'inspections',
            description: 'full where outcome is "intercepted"',
            counted: 71,
            considered: 25_151,
            model: null,
            leftOut: { otherwise: 25_068, unknown: 12, missing: 0 },
            files: [
              {
                file: 'lakes/inspections-2025.csv',
                rows: 71,
                lines: Array.from({ length: 71 }, (_, at) => String(17 + at * 239)),
                stretches: 71,
                first: (most: number) => Array.from({ length: Math.min(most, 71) }, (_, at) => String(17 + at * 239)),
              },
            ],
            setAside: [{ file: 'lakes/inspections-2025.csv', rows: 58, problems: { 'not-a-code': 31 } }],
          },
        ],
      },
    ],
  ]),
};
