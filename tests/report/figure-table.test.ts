import { toHtml } from 'hast-util-to-html';
import { expect, test } from 'vitest';
import type { Result } from '../../src/formula/result.js';
import type { Trace } from '../../src/notebook/trace.js';
import { figureTable } from '../../src/report/figure-table.js';

const count = (value: number): Result => ({
  kind: 'number',
  value,
  unit: '',
  interval: null,
  why: null,
  numerator: null,
  denominator: null,
  cautions: [],
});

function tableOf(value: number, unknown: number): string {
  const figure = {
    name: 'high_risk',
    formula: 'count(full where risk is "high")',
    shownAs: 'whole',
    result: count(value),
    line: 1,
  };
  const counted = {
    table: 'inspections',
    description: '',
    counted: value,
    considered: 2_000,
    leftOut: { otherwise: 0, unknown, missing: 0 },
    files: [],
    setAside: [],
    model: null,
  };
  const trace: Trace = { ...figure, inputs: [], standsOn: [], counts: [counted] };
  return toHtml(figureTable([figure], new Map(), new Map([['high_risk', trace]])));
}

test('a zero of records that lack what was asked is not called counted in full', () => {
  const open = tableOf(0, 1_539);
  expect(open).toContain('1,539 more are left open');
  expect(open).not.toContain('counted in full');
});

test('a few records that are left open beside many that were counted change nothing', () => {
  expect(tableOf(120, 30)).toContain('counted in full');
  expect(tableOf(120, 30)).not.toContain('left open');
});
