import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import type { ChartRequest, EvaluatedSheet } from '../../../src/notebook/evaluated.js';
import { components } from '../../../src/record/components.js';
import { chartFigure } from '../../../src/report/chart-figure.js';
import { rememberedCharts } from '../../../src/report/desk/remembered-charts.js';
import { handout } from '../../../src/report/handout/handout.js';
import { tools, waysToLook } from '../../../src/report/handout/where-to-look.js';
import { craftRequest, sitesSheet } from '../../chart/craft/craft-sheet.js';
import { number, share, sheet, text as word } from '../../chart/small-sheet.js';
import { sampleNotebook } from '../sample-notebook.js';
import { untoldNotebook } from './training-notebook.js';

const boat = sitesSheet([
  ['gimbal area', 6, 900, 0.22],
  ['outdrive lower unit', 16, 900, 0.05],
  ['hull below waterline', 18, 900, 0.05],
  ['bilge', 0, 900, 0.2],
  ['transducer', 3, 12, 0.05],
]);

function asked(more: Readonly<Record<string, string>> = {}): ChartRequest {
  return { ...craftRequest('sterndrive-cruiser', more), kind: 'handout', caption: 'Where to look: cruiser' };
}

function text(of: EvaluatedSheet, more: Readonly<Record<string, string>> = {}): string {
  const made = handout(asked(more), of, sampleNotebook);
  if ('unfit' in made) throw new Error(JSON.stringify(made.unfit));
  return toHtml(made.element);
}

describe('a handout', () => {
  it('lists parts as the drawing ranks them, with how to look and what the figures say', () => {
    const rows = [
      ...text(boat).matchAll(/<tr><td>(\d+)<\/td><th scope="row">([^<]*)<\/th><td>([^<]*)<\/td><td>([^<]*)/g),
    ];
    expect(rows.map(([, place, part]) => [place, part])).toEqual([
      ['1', 'hull below waterline'],
      ['2', 'outdrive lower unit'],
      ['3', 'gimbal area'],
    ]);
    expect(rows[0]![4]).toBe('45.0 %; 18 of 40; 42.5 to 52.5');
    expect(rows[2]![3]).toBe(waysToLook['gimbal area']!.look);
  });

  it('says what makes a part easy to miss, and names the skipped parts that are not in its list', () => {
    const html = text(boat);
    expect(html).toMatch(/gimbal area.*skipped on 22\.0 %; hidden/);
    expect(html).toContain('<strong>Often skipped, and easily missed:</strong>bilge');
  });

  it('leaves out parts with too few looks, and never lists one without finds', () => {
    const listed = /<tbody>.*<\/tbody>/.exec(text(boat))![0];
    expect(listed).not.toMatch(/transducer|bilge/);
  });

  it('brings the tools that its parts ask for, and the cautions', () => {
    const html = text(boat);
    expect(html).toMatch(/Bring:<\/strong>light, mirror, bare fingertips, kneeling mat</);
    for (const caution of ['scalds', 'pressure', 'chemicals', 'wash water', 'Local code, permits']) {
      expect(html).toContain(caution);
    }
  });

  it('says so where nothing was found', () => {
    expect(text(sitesSheet([['bilge', 0, 900, 0.05]]))).toContain('that is not none there');
  });

  it('gives no place to parts fouled on under five craft, and lists them in the order of the walk', () => {
    const few = sitesSheet([
      ['bunks', 4, 900, 0.05],
      ['propeller', 2, 900, 0.05],
      ['transom', 1, 900, 0.05],
    ]);
    const places = [...text(few).matchAll(/<tr><td>([^<]*)<\/td><th scope="row">([^<]*)/g)];
    expect(places.map(([, place, part]) => [place, part])).toEqual([
      ['•', 'transom'],
      ['•', 'propeller'],
      ['•', 'bunks'],
    ]);
    expect(text(few)).toContain('fouled on fewer than 5 craft');
  });

  it('tells a share of under five craft as a count', () => {
    const [part, value, looked, skipped] = sitesSheet([]).columns;
    const rows = [[word('transom'), share(1, 2, 0.01, 0.99), number(900), number(0.05)]];
    const html = text(sheet([part!, value!, looked!, skipped!], rows));
    expect(html).toContain('<td>1 of 2; 1.0 to 99.0</td>');
    expect(html).not.toContain('50.0 %');
  });

  it('lists no more parts than asked, and names the others', () => {
    const html = text(boat, { most: '1' });
    expect(html.match(/<th scope="row">/g)).toHaveLength(1);
    expect(html).toContain('Fouled on some:</strong>outdrive lower unit, gimbal area');
  });

  it('shows the drawing of the chart beside it where that is the same, and draws its own where there is none', () => {
    const chart = { ...asked(), kind: 'craft', name: 'beside' };
    const on = (request: ChartRequest) => {
      const blocks = [{ kind: 'chart' as const, chart: request }];
      const made = handout(asked(), boat, { ...sampleNotebook, blocks });
      return 'unfit' in made ? '' : toHtml(made.element);
    };
    expect(on(chart)).toContain('<use href="#beside-drawing"></use>');
    expect(on({ ...chart, options: { ...chart.options, classes: '5,10' } })).not.toContain('<use');
    expect(on({ ...chart, sheet: 'other' })).toContain('class="drawn"');
  });

  it('of craft whose drive is not recorded names that in its title, and says what its figures are set against', () => {
    const sheets = untoldNotebook.sheets;
    const html = text({ ...sheets.get('sterndrive-cruiser')!, name: 'small' });
    expect(html).toMatch(/<h3[^>]*>Where to look: cruiser; drive not recorded<\/h3>/);
    expect(html).toMatch(
      /handout-from">[^<]*Their drive is not recorded, so drives are not told apart\. A part that only/,
    );
    expect(text(boat)).not.toMatch(/drives? (?:is|are) not/);
  });

  it('of craft of which none are recorded is a note and no problem, as is their drawing', () => {
    const others = { ...untoldNotebook.sheets.get('open-motorboat')!, name: 'small' };
    const notebook = { ...sampleNotebook, sheets: new Map([['small', others]]) };
    for (const kind of ['handout', 'craft']) {
      const { element, problems } = chartFigure({ ...asked(), kind }, notebook);
      expect(problems).toEqual([]);
      expect(toHtml(element)).toContain('No craft here is recorded as cabin motorboat, drive sterndrive');
      expect(toHtml(element)).not.toMatch(/<svg|class="problems"/);
    }
  });

  it('has an address of its own where others of the same craft stand above, on a page and on the desk', () => {
    const [first, second] = [asked(), asked({ most: '1' })].map((request, at) => ({
      ...request,
      name: `handout-${at}`,
    }));
    const other = { ...asked(), name: 'other', options: { ...asked().options, craft: 'houseboat' } };
    const on = (charts: readonly ChartRequest[], draw: typeof chartFigure) => {
      const blocks = charts.map((chart) => ({ kind: 'chart' as const, chart }));
      const notebook = { ...sampleNotebook, blocks, sheets: new Map([['small', boat]]) };
      const html = charts.map((chart) => toHtml(draw(chart, notebook).element)).join('');
      for (const [, id] of html.matchAll(/href="#(handout-[^"]*)"/g)) expect(html).toContain(`<section id="${id}"`);
      return [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id!).filter((id) => /^handout-(?!\d)/.test(id));
    };
    const remembered = rememberedCharts();
    const alone = ['handout-sterndrive-cruiser', 'handout-sterndrive-cruiser-title'];
    const behind = ['handout-sterndrive-cruiser-2', 'handout-sterndrive-cruiser-2-title'];
    for (const draw of [chartFigure, remembered]) {
      expect(on([second!], draw)).toEqual(alone);
      expect(on([first!, second!], draw)).toEqual([...alone, ...behind]);
      expect(on([second!, first!], draw)).toEqual([...alone, ...behind]);
      expect(on([other, second!], draw).slice(-2)).toEqual(alone);
    }
  });

  it('asked for wrongly is a problem at its place', () => {
    const notebook = { ...sampleNotebook, sheets: new Map([['small', boat]]) };
    const { problems } = chartFigure(asked({ colour: 'red' }), notebook);
    expect(problems).toMatchObject([
      { code: 'unknown-chart-option', seen: 'colour', place: { file: sampleNotebook.file, line: 7, column: 3 } },
    ]);
  });

  it('knows how to look at every part of the catalogue, in few words and with known tools', () => {
    expect(Object.keys(waysToLook).sort()).toEqual(components.map(({ component }) => component).sort());
    for (const [part, { look, tools: own }] of Object.entries(waysToLook)) {
      expect(look.length, part).toBeLessThan(90);
      expect(own.length, part).toBeGreaterThan(0);
      for (const tool of own) expect(tools).toContain(tool);
    }
  });
});
