import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { s } from 'hastscript';
import { expect, test } from 'vitest';
import { craftStyle } from '../../../src/chart/craft/craft-style.js';
import { drawings } from '../../../src/chart/craft/drawings.js';
import { hatchedWithLines, lineStyle } from '../../../src/chart/craft/hatch-lines.js';
import { hatchings, hatchSheet, patternStyle } from '../../../src/chart/craft/hatching.js';
import { written } from '../../../src/chart/craft/path.js';
import { drawChart } from '../../../src/chart/draw-chart.js';
import { craftRequest, inventedSites } from './craft-sheet.js';

/** The drawing of a region in a drawing under that name, as paper has it. */
function onPaper(name: string, ...regions: readonly Element[]): string {
  return toHtml(hatchedWithLines(s('g', { id: name, className: ['drawn'] }, [...regions])), { space: 'svg' });
}

test('every hatching that the style names is in the sheet, once for the page and once for handouts', () => {
  const html = toHtml(hatchSheet(), { space: 'svg' });
  const named = [...patternStyle.matchAll(/url\(#([^)]*)\)/g)].map(([, id]) => id);
  expect(named.length).toBe(2 * hatchings.size);
  for (const id of named) expect(html.split(`id="${id}"`).length - 1, id).toBe(1);
});

test('every mark that is drawn by its class has a rule on the screen and on paper', () => {
  const unstyled = new Set([
    'drawing',
    'craft',
    'part',
    'drawn',
    'legend',
    'words',
    'label',
    'leader',
    'skipped',
    'few',
  ]);
  for (const drawing of drawings) {
    const made = drawChart(craftRequest(drawing.name), inventedSites(drawing, 'usual'), 'small.md');
    if ('problems' in made) throw new Error(drawing.name);
    const classes = [...toHtml(made.chart.svg).matchAll(/class="([^"]*)"/g)].flatMap(([, names]) => names!.split(' '));
    for (const name of new Set(classes)) {
      if (unstyled.has(name)) continue;
      for (const hatched of [patternStyle, lineStyle]) expect(craftStyle + hatched, name).toMatch(`.${name}`);
    }
  }
});

test('level lines stand where the pattern has them, a square apart from the first half square on, and end beyond the region', () => {
  const html = onPaper('boat', s('path', { d: 'M2 1L19 1L19 18L2 18Z', className: ['tone-1'] }));
  expect(html).toContain('<path d="M0 4H24M0 12H24M0 20H24" class="tone-1-lines">');
  expect(html).toContain('<clipPath id="boat-region-1"><path d="M2 1L19 1L19 18L2 18Z">');
  expect(html).toContain('<g clip-path="url(#boat-region-1)">');
});

test('turned lines cover all of a region: each point of it is no farther from one than half their distance', () => {
  const corners = [
    [3, 40],
    [61, 12],
    [30, -9],
  ] as const;
  const d = `M${corners.map(([x, y]) => `${x} ${y}`).join('L')}Z`;
  const html = onPaper('boat', s('path', { d, className: ['tone-3'] }));
  const lines = [...html.matchAll(/M(-?[\d.]+) (-?[\d.]+)V(-?[\d.]+)/g)].map((found) => found.slice(1).map(Number));
  for (const [x, y] of corners) {
    const [across, down] = [(x + y) * Math.SQRT1_2, (y - x) * Math.SQRT1_2];
    const near = lines.some(([at, from, to]) => Math.abs(at! - across) <= 1.81 && from! <= down && to! >= down);
    expect(near, `${x} ${y}`).toBe(true);
  }
});

test('a region that is not hatched stays as it is, and each that is has a clip of its own', () => {
  const region = (name: string) => s('path', { d: 'M0 0L9 0L9 9Z', className: [name] });
  expect(onPaper('boat', region('none-found'))).not.toContain('clip');
  const both = onPaper('boat', region('tone-2'), region('too-few-looks'));
  expect([...both.matchAll(/<clipPath id="([^"]*)"/g)].map(([, id]) => id)).toEqual(['boat-region-1', 'boat-region-2']);
});

test('a path is written without the spaces that it can be read without', () => {
  expect(written('M 268 100 L 26.5 -84 C 1 2 3 4 5 6 Z M 1 2')).toBe('M268 100L26.5-84C1 2 3 4 5 6ZM1 2');
});
