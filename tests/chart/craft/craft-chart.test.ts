import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import { drawings } from '../../../src/chart/craft/drawings.js';
import { drawChart } from '../../../src/chart/draw-chart.js';
import type { Drawn } from '../../../src/chart/drawn.js';
import type { ChartRequest, EvaluatedSheet } from '../../../src/notebook/evaluated.js';
import { key, missing, number, sheet, text, value } from '../small-sheet.js';
import { craftRequest, inventedSites, sitesSheet } from './craft-sheet.js';

function drawn(request: ChartRequest, from: EvaluatedSheet): Drawn {
  const result = drawChart(request, from, 'small.md');
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result.chart;
}

function codes(request: ChartRequest, from: EvaluatedSheet): readonly string[] {
  const result = drawChart(request, from, 'small.md');
  return 'problems' in result ? result.problems.map(({ code }) => code) : [];
}

const svgText = ({ svg }: Drawn): string => toHtml(svg as Element, { space: 'svg' });

const boat = sitesSheet([
  ['hull below waterline', 16, 900, 0.05],
  ['propeller', 8, 900, 0.05],
  ['transom', 8, 900, 0.05],
  ['bilge', 2, 900, 0.21],
  ['live well', 0, 640, 0.05],
  ['transducer', 3, 12, 0.5],
]);

describe('a drawn craft', () => {
  it.each(drawings.map((drawing) => [drawing.name, drawing] as const))(
    '%s can stand in a page under its policy, whatever parts have figures',
    (name, drawing) => {
      const chart = drawn(craftRequest(name), inventedSites(drawing, 'all'));
      const html = svgText(chart);
      expect(html).not.toMatch(/<style|\sstyle=|\bon\w+=|<script|href="(?!#)|NaN|undefined|Infinity/);
      // Not an image: its parts are links, which an image would hide.
      expect(chart.svg.properties.role).toBe('group');
      expect(html).toContain(`<title id="craft-${name}-title">A small chart</title>`);
      for (const [, id] of html.matchAll(/\bid="([^"]*)"/g)) expect(id).toMatch(new RegExp(`^craft-${name}-`));
      for (const [, id] of html.matchAll(/url\(#([^)]*)\)/g)) expect(html).toContain(`id="${id}"`);
      for (const [, id] of html.matchAll(/href="#([^"]*)"/g)) expect(chart.dataTable.rowIds).toContain(id);
    },
  );

  it('numbers parts by their value, equals alike in the order of the walk, and none fouled on under five craft', () => {
    const rows = drawn(craftRequest('open-motorboat'), boat).dataTable.rows;
    expect(rows.map(([part, place, shown]) => [part, place, shown])).toEqual([
      ['hull below waterline', '1', '40.0 %'],
      ['transom', '2', '20.0 %'],
      ['propeller', '2', '20.0 %'],
      ['bilge', 'too few to place', '5.0 %'],
      ['live well', '', 'none found'],
      ['transducer', '', 'too few looks'],
    ]);
  });

  it('marks a part that is withheld as neither clean nor none found, and only then explains the mark', () => {
    const at = boat.columns.findIndex(({ name }) => name === 'share');
    const rows = boat.rows.map(({ cells }, row) => ({
      cells: cells.map((cell, place) =>
        row === 3 && place === at ? { kind: 'missing' as const, why: '', withheld: true as const } : cell,
      ),
    }));
    const chart = drawn(craftRequest('open-motorboat'), { ...boat, rows });
    const html = svgText(chart);
    expect(html).toMatch(/<title>bilge: withheld, which is not clean[^<]*<\/title><path[^>]*class="withheld"/);
    expect(html).not.toContain('bilge: none found');
    expect(chart.reading.join(' ')).toContain('withheld, which is neither clean nor none found');
    expect(chart.dataTable.rows.find(([part]) => part === 'bilge')!.slice(1, 4)).toEqual(['', 'withheld', '']);
    expect(svgText(drawn(craftRequest('open-motorboat'), boat))).not.toContain('withheld');
  });

  it('fills a part with too few looks otherwise than one without finds, and one without record otherwise again', () => {
    const html = svgText(drawn(craftRequest('open-motorboat', { classes: '10,30' }), boat));
    const fillOf = (said: string): string | undefined =>
      new RegExp(`<title>${said}[^<]*</title><path[^>]*class="([^"]*)"`).exec(html)?.[1];
    expect(fillOf('hull below waterline: place 1')).toBe('tone-3');
    expect(fillOf('propeller: place 2')).toBe('tone-2');
    expect(fillOf('bilge: too few to place')).toBe('tone-1');
    expect(fillOf('transducer: too few looks to say')).toBe('too-few-looks');
    expect(fillOf('live well: none found, at most')).toBe('none-found');
    expect(fillOf('zincs: no looks recorded')).toBe('not-recorded');
  });

  it('never calls a part clean, and says which parts no form asks for and which are not on the craft', () => {
    const rudder = sitesSheet([
      ['hull below waterline', 16, 900, 0.05],
      ['rudder', 8, 900, 0.05],
    ]);
    const { reading, svg } = drawn(craftRequest('open-motorboat'), rudder);
    expect(reading.join(' ')).toContain('In the table but not on this craft: rudder.');
    expect(reading.join(' ')).toMatch(/no form of these records asks for them: .*zincs/);
    expect(toHtml(svg, { space: 'svg' })).not.toMatch(/(?<!not )clean/);
  });

  it('takes only rows of its own type and drive from a sheet split by them', () => {
    const split = sheet(
      [key('watercraft_type'), key('drive'), key('component'), value('share', 'percent')],
      [
        [text('open motorboat'), text('outboard'), text('propeller'), number(0.2)],
        [text('open motorboat'), text('sterndrive'), text('propeller'), number(0.4)],
        [text('personal watercraft'), missing('not recorded'), text('jet intake'), number(0.1)],
      ],
    );
    const partsOf = (craft: string) =>
      drawn(
        { ...craftRequest(craft), options: { part: 'component', craft, value: 'share' } },
        split,
      ).dataTable.rows.map(([part, , shown]) => [part, shown]);
    expect(partsOf('open-motorboat')).toEqual([['propeller', '20.0 %']]);
    expect(partsOf('personal-watercraft')).toEqual([['jet intake', '10.0 %']]);
    const none = { ...craftRequest('sailboat'), options: { part: 'component', craft: 'sailboat', value: 'share' } };
    expect(codes(none, split)).toEqual(['no-such-craft']);
  });

  it('is a problem where a part stands twice, classes do not rise, or the craft is not drawn', () => {
    const twice = sitesSheet([
      ['propeller', 1, 900, 0],
      ['propeller', 2, 900, 0],
    ]);
    expect(codes(craftRequest('open-motorboat'), twice)).toEqual(['rows-share-a-place']);
    expect(codes(craftRequest('open-motorboat', { classes: '20,10' }), boat)).toEqual(['bad-chart-option']);
    expect(codes(craftRequest('airship'), boat)).toEqual(['bad-chart-option']);
  });
});
