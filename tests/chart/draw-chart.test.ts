import fc from 'fast-check';
import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import { chartKinds } from '../../src/chart/chart-kinds.js';
import { drawChart } from '../../src/chart/draw-chart.js';
import type { Drawn } from '../../src/chart/drawn.js';
import { funnelCurves } from '../../src/chart/funnel-curves.js';
import type { ChartRequest, EvaluatedSheet } from '../../src/notebook/evaluated.js';
import { key, missing, number, request, share, sheet, text, value } from './small-sheet.js';

function drawn(asked: ChartRequest, from: EvaluatedSheet): Drawn {
  const result = drawChart(asked, from, 'small.md');
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result.chart;
}

function problemsOf(asked: ChartRequest, from: EvaluatedSheet) {
  const result = drawChart(asked, from, 'small.md');
  return 'problems' in result ? result.problems : [];
}

function elements(root: Element, name: string): Element[] {
  return root.children.flatMap((child) =>
    child.type !== 'element' ? [] : [...(child.tagName === name ? [child] : []), ...elements(child, name)],
  );
}

const svgText = (chart: Drawn): string => toHtml(chart.svg, { space: 'svg' });

const rates = sheet(
  [key('station'), value('rate', 'per 1,000')],
  [
    [text('Heron'), share(10, 1000, 0.005, 0.02)],
    [text('Slate'), share(20, 1000, 0.01, 0.03)],
    [text('Weir'), number(null, { why: 'closed all season' })],
    [text('Bittern'), share(0, 500, 0, 0.006)],
  ],
);

const crossed = sheet(
  [key('season'), key('month'), value('rate', 'percent'), value('low'), value('high')],
  [2023, 2024].flatMap((season) =>
    ['June', 'May'].map((month, at) => [
      number(season),
      text(month),
      share(1 + at, 10, 0.05, 0.6),
      number(0.05),
      number(0.6),
    ]),
  ),
);

const askedOf: Readonly<Record<string, [Record<string, string>, EvaluatedSheet]>> = {
  dots: [{ value: 'rate' }, rates],
  bars: [{ value: 'rate' }, rates],
  columns: [{ value: 'rate' }, rates],
  lines: [{ value: 'rate', x: 'month', by: 'season' }, crossed],
  steps: [{ value: 'rate', x: 'low' }, crossed],
  funnel: [{ value: 'rate', around: 'low' }, crossed],
  heat: [{ value: 'rate', x: 'month', y: 'season' }, crossed],
  pairs: [{ value: 'rate', x: 'low' }, crossed],
  swings: [{ value: 'rate', from: 'rate', to: 'rate' }, rates],
  bridge: [{ value: 'rate' }, rates],
};

/** Kinds that any sheet may fill; a drawn craft takes parts of the catalogue, and is held to the same in craft/. */
const anySheet = chartKinds.map(({ name }) => name).filter((name) => name !== 'craft');

describe('every kind of chart', () => {
  it.each(anySheet)('%s can stand in a page under its policy, and says what it is', (name) => {
    const [options, from] = askedOf[name]!;
    const chart = drawn(request(name, options), from);
    const html = svgText(chart);
    expect(html).not.toMatch(/<style|\sstyle=|\bon\w+=|<script|href="(?!#)/);
    expect(chart.svg.properties.role).toBe('img');
    expect(html).toContain(`<title id="${name}-small-title">A small chart</title>`);
    for (const [, id] of html.matchAll(/\bid="([^"]*)"/g)) expect(id).toMatch(new RegExp(`^${name}-small-`));
    for (const [, id] of html.matchAll(/url\(#([^)]*)\)/g)) expect(html).toContain(`id="${id}"`);
    expect(html).not.toMatch(/NaN|undefined|Infinity/);
    expect(chart.dataTable.rows).toHaveLength(from.rows.length);
  });

  it.each(anySheet)('%s draws whatever names and numbers a sheet holds', (name) => {
    const finite = fc.oneof(
      fc.constant(null),
      fc.double({ min: -1e9, max: 1e9, noNaN: true }),
      fc.integer({ min: 0, max: 9 }),
    );
    const row = fc.record({ name: fc.string(), number: finite, other: finite });
    fc.assert(
      fc.property(fc.uniqueArray(row, { minLength: 1, maxLength: 8, selector: (one) => one.name.trim() }), (rows) => {
        const from = sheet(
          [key('name'), value('number'), value('low'), value('high'), key('second')],
          rows.map((one, at) => [
            one.name === '' ? missing('not recorded') : text(one.name),
            number(one.number, { denominator: at + 1 }),
            number(one.number === null ? null : one.number - 1),
            number(one.other),
            text('same'),
          ]),
        );
        const options: Record<string, Record<string, string>> = {
          dots: { value: 'number', y: 'name' },
          bars: { value: 'number', y: 'name' },
          columns: { value: 'number', x: 'name' },
          lines: { value: 'number', x: 'name', low: 'low', high: 'high' },
          steps: { value: 'number', x: 'high', by: 'second' },
          funnel: { value: 'number', x: 'high', around: 'low' },
          heat: { value: 'number', x: 'name', y: 'second' },
          pairs: { value: 'number', x: 'high' },
          swings: { value: 'number', from: 'low', to: 'high' },
          bridge: { value: 'number' },
        };
        const result = drawChart(request(name, options[name]!), from, 'small.md');
        if ('chart' in result) expect(svgText(result.chart)).not.toMatch(/NaN|undefined|Infinity/);
        else
          expect(result.problems.map((problem) => problem.code)).toEqual([
            expect.stringMatching(/not-numbers|not-rates|several-middles|share-a-place|nothing-to-draw/),
          ]);
      }),
      { numRuns: 30, seed: 1 },
    );
  });
});

describe('a funnel', () => {
  const around = (cases: number, trials: number) =>
    sheet(
      [key('station'), value('rate', 'per 1,000'), value('all')],
      [
        [text('Heron'), share(cases, trials, 0, 1), number(0.004)],
        [text('Slate'), share(8, 2000, 0.001, 0.008), number(0.004)],
      ],
    );
  const filled = (from: EvaluatedSheet) =>
    elements(drawn(request('funnel', { value: 'rate', around: 'all' }), from).svg, 'circle').filter(
      ({ properties }) => properties.fill === 'var(--accent)',
    ).length;

  it('has the exact interpolated limits at every size, the table’s own among them', () => {
    // tests/reference/statistics.json, funnel-rare: target 0.004, n = 1000; Spiegelhalter 2005 by R’s qbinom and pbinom.
    const [outerLow, innerLow, innerHigh, outerHigh] = funnelCurves(0.004, 1000, 2000).map(({ points }) => points[0]!);
    expect([outerLow, innerLow, innerHigh, outerHigh].map((at) => at!.trials)).toEqual([1000, 1000, 1000, 1000]);
    expect([outerLow!, innerLow!, innerHigh!, outerHigh!].map(({ proportion }) => proportion)).toEqual(
      [0, 9.36107077875826e-5, 0.00786932286302387, 0.0109409515667174].map((limit) => expect.closeTo(limit, 12)),
    );
  });

  it('fills a mark outside the inner limits, and none of fewer than five cases', () => {
    // At 1,000 the upper inner limit is 7.87 per 1,000 (as above); at 100, 4 of 100 lies far above its own.
    expect(filled(around(8, 1000))).toBe(1);
    expect(filled(around(7, 1000))).toBe(0);
    expect(filled(around(4, 100))).toBe(0);
    expect(filled(around(5, 100))).toBe(1);
  });

  it('draws no limits without one rate to lie around, and says so', () => {
    const none = sheet(
      [key('station'), value('rate', 'per 1,000'), value('all')],
      [[text('Heron'), share(0, 100, 0, 0.03), number(0)]],
    );
    const chart = drawn(request('funnel', { value: 'rate', around: 'all' }), none);
    expect(chart.reading[0]).toMatch(/there are no limits to draw/);
    expect(svgText(chart)).not.toMatch(/stroke-dasharray/);
  });

  it('claims no limits where what was counted from is no whole number', () => {
    const hours = sheet(
      [key('station'), value('rate'), value('hours'), value('all')],
      [[text('Heron'), number(0.2), number(10.5), number(0.1)]],
    );
    const chart = drawn(request('funnel', { value: 'rate', x: 'hours', around: 'all' }), hours);
    expect(chart.reading[0]).toMatch(/there are no limits to draw/);
  });

  it('is not drawn around several rates', () => {
    const several = sheet(
      [key('station'), value('rate'), value('all')],
      [
        [text('Heron'), share(1, 100, 0, 0.1), number(0.1)],
        [text('Slate'), share(1, 100, 0, 0.1), number(0.2)],
      ],
    );
    expect(problemsOf(request('funnel', { value: 'rate', around: 'all' }), several).map(({ code }) => code)).toEqual([
      'several-middles',
    ]);
  });
});

describe('a chart that cannot be drawn as asked', () => {
  it('tells every mistake at once, at the place of the request, with the nearest name', () => {
    const problems = problemsOf(request('dots', { value: 'rat', colour: 'red' }), rates);
    expect(problems.map(({ code, seen }) => [code, seen])).toEqual([
      ['unknown-column', 'rat'],
      ['unknown-chart-option', 'colour'],
    ]);
    expect(problems[0]).toMatchObject({
      place: { file: 'small.md', line: 7, column: 3 },
      remedy: 'Did you mean "rate"?',
    });
  });

  it.each([
    ['an unknown kind', request('dot', { value: 'rate' }), rates, 'unknown-chart'],
    ['no value named', request('dots', {}), rates, 'lacking-chart-option'],
    ['a column of texts', request('dots', { value: 'station' }), rates, 'not-numbers'],
    ['two rows in one place', request('dots', { value: 'rate', y: 'month' }), crossed, 'rows-share-a-place'],
    [
      'a bad number',
      request('heat', { value: 'rate', x: 'month', y: 'season', fewest: 'few' }),
      crossed,
      'bad-chart-option',
    ],
    [
      'a break that is no place',
      request('lines', { value: 'rate', x: 'month', breaks: '2025' }),
      crossed,
      'bad-chart-option',
    ],
    ['an empty sheet', request('dots', { value: 'rate' }), sheet(rates.columns, []), 'nothing-to-draw'],
    [
      'more lines than can be told apart',
      request('lines', { value: 'n', x: 'month' }),
      sheet(
        [key('season'), key('month'), value('n')],
        [1, 2, 3, 4, 5, 6].map((season) => [number(season), text('May'), number(1)]),
      ),
      'too-many-lines',
    ],
  ])('says so of %s', (_, asked, from, code) => {
    expect(problemsOf(asked, from).map((problem) => problem.code)).toEqual([code]);
  });
});

describe('what is absent', () => {
  it('is marked and told with its reason, and never drawn at zero', () => {
    const chart = drawn(request('dots', { value: 'rate' }), rates);
    expect(elements(chart.svg, 'circle')).toHaveLength(3);
    expect(svgText(chart).match(/>no value</g)).toHaveLength(1);
    expect(chart.dataTable.head).toEqual(['station', 'Rate, per 1,000', 'Interval', 'Counted', 'Why not']);
    expect(chart.dataTable.rows[2]).toEqual(['Weir', 'no value', '', '', 'closed all season']);
  });

  it('has no bar, though its place is kept', () => {
    const chart = drawn(request('bars', { value: 'rate' }), rates);
    expect(elements(chart.svg, 'rect')).toHaveLength(3);
    expect(svgText(chart)).toContain('>Weir<');
  });

  it('breaks a line', () => {
    const from = sheet(
      [key('hour'), value('n')],
      [6, 7, 8, 10, 11].map((hour) => [number(hour), number(hour)]),
    );
    const path = elements(drawn(request('lines', { value: 'n' }), from).svg, 'path').find(
      ({ properties }) => properties.fill !== undefined || /L/.test(String(properties.d)),
    );
    expect(String(path?.properties.d).match(/M/g)).toHaveLength(2);
  });

  it('is hatched in a heat chart, as is what was counted from too few', () => {
    const from = sheet(
      [key('a'), key('b'), value('rate', 'percent')],
      [
        [text('x'), text('y'), share(5, 100, 0, 1)],
        [text('x'), text('z'), share(1, 3, 0, 1)],
        [text('w'), text('y'), missing('closed')],
        [text('w'), text('z'), share(0, 60, 0, 0.05)],
      ],
    );
    const chart = drawn(request('heat', { value: 'rate', x: 'a', y: 'b', fewest: '10' }), from);
    const html = svgText(chart);
    // Two fields and the legend's swatch.
    expect(html.match(/fill="url\(#heat-small-hatch\)"/g)).toHaveLength(3);
    expect(html).toContain('>none<');
    expect(html).not.toContain('>0.0<');
    expect(html).not.toContain('>33.3<');
  });
});

describe('geometry', () => {
  it('draws bars from zero, as long as their values', () => {
    const from = sheet(
      [key('station'), value('n')],
      [10, 20, 40].map((n, at) => [text(`station ${at}`), number(n)]),
    );
    const widths = elements(drawn(request('bars', { value: 'n' }), from).svg, 'rect').map((bar) =>
      Number(bar.properties.width),
    );
    expect(widths[1]! / widths[0]!).toBeCloseTo(2, 2);
    expect(widths[2]! / widths[0]!).toBeCloseTo(4, 2);
  });

  it('keeps the order of the sheet in dots, and of the calendar in lines', () => {
    const names = (chart: Drawn) =>
      elements(chart.svg, 'text').flatMap(({ children: [first] }) => (first?.type === 'text' ? [first.value] : []));
    expect(
      names(drawn(request('dots', { value: 'rate' }), rates)).filter((name) => /^[A-Z][a-z]+$/.test(name)),
    ).toEqual([...['Heron', 'Slate', 'Weir', 'Bittern']]);
    const months = names(drawn(request('lines', { value: 'rate', x: 'month', by: 'season' }), crossed));
    expect(months.filter((name) => /^(May|Jun)$/.test(name))).toEqual(['May', 'Jun']);
  });

  it('ends the line of no case at its upper limit, hollow at its beginning', () => {
    const chart = drawn(request('dots', { value: 'rate' }), rates);
    const hollow = elements(chart.svg, 'circle').filter(({ properties }) => properties.fill === 'var(--paper)');
    expect(hollow).toHaveLength(1);
    expect(chart.reading.join(' ')).toContain('one-sided upper limit');
  });

  it('ends the line of a lower limit alone at its mark, whatever the kind of chart', () => {
    const limited = (high: number | null) => {
      const interval = { low: 0.2, high, confidence: 0.95, sides: 'lower', method: 'invented limit' } as const;
      const rows = [
        [text('Heron'), number(0.4, { interval })],
        [text('Slate'), number(0.9)],
      ];
      return sheet([key('station'), value('rate')], rows);
    };
    const kinds = ['dots', 'bars', 'columns', 'lines whiskers', 'lines band'];
    for (const [kind, intervals] of kinds.map((words) => words.split(' ') as [string, string | undefined])) {
      const asked = request(kind, { value: 'rate', ...(intervals === undefined ? {} : { intervals }) });
      const [open, atMark, atTop] = [null, 0.4, 0.9].map((high) => drawn(asked, limited(high)));
      expect(svgText(open!), `${kind} ${intervals}`).toBe(svgText(atMark!));
      expect(svgText(open!), `${kind} ${intervals}`).not.toBe(svgText(atTop!));
      expect(open!.reading.join(' ')).toContain('begins at the one-sided lower limit');
    }
  });

  it('ends a curve where it is asked to, level, and says what lies beyond', () => {
    const from = sheet(
      [value('minutes'), value('held')],
      [
        [number(0), number(1)],
        [number(30), number(0.5)],
        [number(9000), number(0)],
      ],
    );
    const chart = drawn(request('steps', { value: 'held', x: 'minutes', until: '100' }), from);
    const path = elements(chart.svg, 'path').map(({ properties }) => String(properties.d));
    // From the left margin to the right edge, never down to the last step.
    expect(path.at(-1)).toMatch(/^M58,34L.*L654,167$/);
    expect(chart.reading.join(' ')).toContain('1 steps lie beyond 100');
  });

  it('stops a line where a definition changed', () => {
    const from = sheet(
      [key('season'), value('n')],
      [2023, 2024, 2025].map((season) => [number(season), number(5)]),
    );
    const lines = (options: Record<string, string>) =>
      elements(drawn(request('lines', { value: 'n', ...options }), from).svg, 'path')
        .map(({ properties }) => String(properties.d))
        .filter((path) => /^M[\d.]+,[\d.]+(L|Z)/.test(path));
    expect(lines({})).toEqual([expect.stringMatching(/^M.*L.*L/)]);
    expect(lines({ breaks: '2025' })[0]).toMatch(/^M[^L]*L[^L]*$/);
  });
});

describe('changes and swings', () => {
  const changes = sheet(
    [key('what'), value('change', 'dollars')],
    [
      [text('wages'), number(30, { unit: 'dollars' })],
      [text('travel'), number(-12, { unit: 'dollars' })],
      [text('tools'), number(null, { why: 'not booked' })],
    ],
  );

  it('a bridge ends at what its changes come to, and says what has no value', () => {
    const chart = drawn(request('bridge', { value: 'change' }), changes);
    const words = elements(chart.svg, 'text').map((one) => toHtml(one.children));
    expect(words).toEqual(expect.arrayContaining(['in all', '+30', '−12', '+18']));
    expect(chart.reading.join(' ')).toContain('1 of 3 without a value: not drawn, and not zero.');
  });

  it('a bridge tells a small change as more than none', () => {
    const small = sheet(
      [key('item'), value('change')],
      [
        [text('first'), number(0.44)],
        [text('second'), number(-0.14)],
      ],
    );
    const words = elements(drawn(request('bridge', { value: 'change' }), small).svg, 'text');
    expect(words.map((one) => toHtml(one.children))).toEqual(expect.arrayContaining(['+0.44', '−0.14', '+0.3']));
  });

  it('swings mark the threshold and leave out what has no value at one end', () => {
    const moved = sheet(
      [key('input'), value('as_is'), value('low'), value('high')],
      [
        [text('wage'), number(200), number(-400), number(800)],
        [text('hours'), number(200), number(null, { why: 'nothing' }), number(300)],
      ],
    );
    const chart = drawn(request('swings', { value: 'as_is', from: 'low', to: 'high' }), { ...moved, turnsAt: 150 });
    expect(chart.reading.join(' ')).toContain(
      'the figure as it is, 200; the dashed one is where the conclusion turns, 150',
    );
    expect(chart.reading.at(-1)).toBe('1 of 2 have no value at one end and are not drawn.');
    expect(elements(chart.svg, 'circle').length + elements(chart.svg, 'path').length).toBeGreaterThanOrEqual(2);
  });

  it('swings take their threshold in the figure’s own unit, as the sheet does', () => {
    const moved = sheet(
      [key('input'), value('as_is', 'percent'), value('low', 'percent'), value('high', 'percent')],
      [[text('wage'), number(0.8), number(0.5), number(1.4)]],
    );
    const chart = drawn(request('swings', { value: 'as_is', from: 'low', to: 'high' }), { ...moved, turnsAt: 0.05 });
    expect(chart.reading.join(' ')).toContain(
      'the figure as it is, 80; the dashed one is where the conclusion turns, 5',
    );
  });
});
