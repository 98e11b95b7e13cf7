import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import { drawings } from '../../../src/chart/craft/drawings.js';
import { drawChart } from '../../../src/chart/draw-chart.js';
import type { Drawn } from '../../../src/chart/drawn.js';
import type { EvaluatedSheet } from '../../../src/notebook/evaluated.js';
import type { Problem } from '../../../src/problem/problem.js';
import { key, missing, number, share, sheet, text, value } from '../small-sheet.js';
import { craftRequest } from './craft-sheet.js';

/** A row of a sheet by type and drive: null where it is not recorded; craft fouled on the part, fouled anywhere, and looks at it. */
type Row = readonly [
  type: string | null,
  drive: string | null,
  part: string,
  fouled: number,
  of: number,
  looks: number,
];

function byBuild(...rows: readonly Row[]): EvaluatedSheet {
  const word = (said: string | null) => (said === null ? missing('not recorded') : text(said));
  return sheet(
    [key('watercraft_type'), key('drive'), key('component'), value('share', 'percent'), value('looked', 'whole')],
    rows.map(([type, drive, part, fouled, of, looks]) => [
      word(type),
      word(drive),
      text(part),
      share(fouled, of, 0, 1),
      number(looks),
    ]),
  );
}

function asked(craft: string) {
  return { ...craftRequest(craft), options: { part: 'component', craft, value: 'share', looks: 'looked' } };
}

function drawn(craft: string, from: EvaluatedSheet): Drawn {
  const result = drawChart(asked(craft), from, 'small.md');
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result.chart;
}

function problems(craft: string, from: EvaluatedSheet): readonly Problem[] {
  const result = drawChart(asked(craft), from, 'small.md');
  return 'problems' in result ? result.problems : [];
}

const parts = ({ dataTable }: Drawn) => dataTable.rows.map(([part, place, shown]) => [part, place, shown]);

const motorboat = 'open motorboat';
const told: readonly Row[] = [
  [motorboat, 'outboard', 'propeller', 8, 40, 900],
  [motorboat, 'sterndrive', 'gimbal area', 20, 40, 900],
];
const untold: readonly Row[] = [
  [motorboat, null, 'propeller', 10, 50, 900],
  [motorboat, null, 'gimbal area', 15, 50, 300],
  [motorboat, null, 'jet intake', 0, 50, 80],
];

describe('which craft are drawn', () => {
  it('are those of the drive drawn, named in the caption; others of the type are said to be left out', () => {
    const chart = drawn('open-motorboat', byBuild(...told, ...untold));
    expect(parts(chart)).toEqual([['propeller', '1', '20.0 %']]);
    expect(chart.caption).toBe('A small chart; drive: outboard');
    expect(chart.reading.join(' ')).toMatch(/drive outboard\. Craft of this type whose drive is not recorded are not/);
    expect(drawn('open-motorboat', byBuild(...told)).reading.join(' ')).not.toContain('not recorded are not');
  });

  it('are those whose drive is not recorded where no other are, ranked together, with the parts of every drive', () => {
    const chart = drawn('open-motorboat', byBuild(...untold));
    expect(parts(chart)).toEqual([
      ['gimbal area', '1', '30.0 %'],
      ['propeller', '2', '20.0 %'],
      ['jet intake', '', 'none found'],
    ]);
    expect(chart.caption).toBe('A small chart; drive not recorded');
    const said = chart.reading.join(' ');
    expect(said).toContain(
      'Counted: craft recorded as open motorboat. Their drive is not recorded, so drives are not told apart.',
    );
    expect(said).toContain('A part that only some have is set against all.');
    expect(said).not.toContain('not on this craft');
    const html = toHtml(chart.svg, { space: 'svg' });
    for (const part of ['gimbal area', 'propeller', 'jet intake'])
      expect(html).toMatch(new RegExp(`class="words"[^>]*>${part}<`));
    expect(html).toContain('>with sterndrive<');
    expect(toHtml(drawn('open-motorboat', byBuild(...told)).svg, { space: 'svg' })).not.toContain('>with sterndrive<');
  });

  it('are those whose drive is not recorded too where the others are too few to say anything, which is said', () => {
    const few: readonly Row[] = [[motorboat, 'outboard', 'propeller', 1, 1, 3]];
    const chart = drawn('open-motorboat', byBuild(...few, ...untold));
    expect(chart.caption).toContain('drive not recorded');
    expect(chart.reading.join(' ')).toContain('Craft of this type whose drive is recorded are not counted here.');
    expect(drawn('open-motorboat', byBuild(...few)).caption).toContain('drive: outboard');
    const fewToo: readonly Row[] = [[motorboat, null, 'propeller', 1, 1, 19]];
    expect(drawn('open-motorboat', byBuild(...few, ...fewToo)).caption).toContain('drive: outboard');
  });

  it('are all of a type where its parts hang on no drive, and a problem where the sheet splits them by one', () => {
    const type = 'personal watercraft';
    const inboard: readonly Row[] = [[type, 'inboard', 'jet intake', 4, 8, 900]];
    expect(parts(drawn('personal-watercraft', byBuild(...inboard)))).toEqual([
      ['jet intake', 'too few to place', '50.0 %'],
    ]);
    const split = byBuild(...inboard, [type, null, 'jet intake', 6, 9, 900]);
    expect(problems('personal-watercraft', split).map(({ code }) => code)).toEqual(['rows-share-a-place']);
    // A sheet by type alone has them in one row.
    const [, drive, ...others] = split.columns;
    const byType = { ...split, columns: [split.columns[0]!, ...others], rows: [0].map((at) => split.rows[at]!) };
    const rows = byType.rows.map(({ cells }) => ({ cells: cells.filter((_, at) => at !== 1) }));
    const chart = drawn('personal-watercraft', { ...byType, rows });
    expect(drive!.name).toBe('drive');
    expect(chart.caption).toBe('A small chart');
    expect(chart.reading[0]).toBe('Counted: craft recorded as personal watercraft.');
  });

  it('are none, which is no mistake, where other craft are recorded, and a problem where none are', () => {
    const [absent] = problems('houseboat', byBuild(...told));
    expect(absent).toMatchObject({ code: 'no-such-craft', wanted: 'houseboat, drive sterndrive' });
    expect(absent!.remedy).toContain('says nothing of where such craft are fouled');
    const nameless = byBuild([null, null, 'propeller', 8, 40, 900]);
    expect(problems('houseboat', nameless).map(({ code }) => code)).toEqual(['nothing-to-draw']);
    expect(problems('houseboat', byBuild()).map(({ code }) => code)).toEqual(['nothing-to-draw']);
  });

  it.each(drawings.flatMap(({ name, anyDrive }) => (anyDrive === null ? [] : [[name, anyDrive.watercraftType!]])))(
    '%s is drawn from records that never ask the drive',
    (name, type) => {
      const chart = drawn(name, byBuild([type, null, 'propeller', 8, 40, 900]));
      expect(parts(chart)).toEqual([['propeller', '1', '20.0 %']]);
    },
  );
});

describe('a share of no fouled craft', () => {
  const none = (looks: number) =>
    sheet(
      [key('component'), value('share', 'percent'), value('looked', 'whole')],
      [[text('transom'), number(null, { numerator: 0, denominator: 0, why: 'none to count' }), number(looks)]],
    );

  it('is none found where enough looked, which is not too few looks', () => {
    const chart = drawn('rowboat', none(160));
    const html = toHtml(chart.svg, { space: 'svg' });
    expect(html).toMatch(/<title>transom: none found<\/title><path[^>]*class="none-found"/);
    expect(chart.dataTable.rows).toEqual([['transom', '', 'none found', '', '0 of 0', '160']]);
    expect(chart.reading.join(' ')).toContain('No craft of these was found fouled on any part');
    expect(chart.reading.join(' ')).not.toContain('upper limit');
  });

  it('is too few looks where few looked', () => {
    expect(drawn('rowboat', none(19)).dataTable.rows[0]![2]).toBe('too few looks');
  });
});

describe('a share of under five craft', () => {
  const chart = drawn(
    'rowboat',
    byBuild(['rowboat', null, 'transom', 1, 1, 900], ['rowboat', null, 'life jackets', 0, 1, 900]),
  );
  const html = toHtml(chart.svg, { space: 'svg' });

  it('is told as a count, and neither toned nor classed as a frequency', () => {
    expect(html).toContain('>1 of 1<');
    expect(html).not.toContain('100.0 %');
    expect(html).toMatch(/<title>transom[^<]*<\/title><path[^>]*class="found-on-few"/);
    expect(html).not.toMatch(/class="tone-|above 0, under|or more</);
    expect(html).toContain('found, on too few craft to say how often');
    expect(chart.reading.join(' ')).toContain('Fewer than 5 craft stand behind the figures');
  });

  it('stays none found where it is zero', () => {
    expect(html).toMatch(/<title>life jackets: none found[^<]*<\/title><path[^>]*class="none-found"/);
  });

  it('is a share from five craft up', () => {
    const five = drawn('rowboat', byBuild(['rowboat', null, 'transom', 5, 5, 900]));
    expect(toHtml(five.svg, { space: 'svg' })).toMatch(/class="tone-4"/);
    expect(five.reading.join(' ')).not.toContain('Fewer than 5');
  });
});
