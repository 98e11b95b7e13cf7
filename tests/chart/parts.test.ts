import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { colourClasses } from '../../src/chart/colour-classes.js';
import { orderedKeys } from '../../src/chart/key-text.js';
import { shownScale, tickText } from '../../src/chart/shown-scale.js';
import { thinned } from '../../src/chart/thinned.js';
import { key, missing, number, sheet, text, value } from './small-sheet.js';

describe('colour classes', () => {
  it('are of one round width and hold every value', () => {
    expect(colourClasses([0, 10.5]).edges).toEqual([0, 2, 4, 6, 8, 10, 12]);
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1 }), (values) => {
        const { edges, classOf } = colourClasses(values);
        for (const one of values) {
          const step = classOf(one);
          expect(one).toBeGreaterThanOrEqual(edges[step - 1]! - 1e-9);
          expect(one).toBeLessThanOrEqual(edges[step]! + 1e-9);
        }
      }),
      { seed: 1 },
    );
  });

  it('stand even where every value is zero', () => {
    expect(colourClasses([0, 0]).classOf(0)).toBe(1);
  });
});

describe('ordered keys', () => {
  const of = (cells: Parameters<typeof text>[0][]) =>
    orderedKeys(
      sheet(
        [key('k')],
        cells.map((cell) => [text(cell)]),
      ),
      { at: 0, column: key('k') },
    );

  it('follow the calendar, or else the sheet', () => {
    expect(of(['June', 'March', 'May'])).toEqual(['March', 'May', 'June']);
    expect(of(['Sunday', 'Monday'])).toEqual(['Monday', 'Sunday']);
    expect(of(['roadside', 'launch', 'roadside'])).toEqual(['roadside', 'launch']);
  });

  it('keep the place of an hour without a row, and put what was not recorded last', () => {
    const cells = [number(9), missing('no clock'), number(6)];
    expect(
      orderedKeys(
        sheet(
          [key('k')],
          cells.map((cell) => [cell]),
        ),
        { at: 0, column: key('k') },
      ),
    ).toEqual([...['6', '7', '8', '9', 'no clock']]);
  });
});

describe('numbers on an axis', () => {
  it('have as few digits as say them', () => {
    expect([0, 0.1 + 0.2, 1234567, -2500, 0.00001].map(tickText)).toEqual([
      '0',
      '0.3',
      '1,234,567',
      '−2,500',
      '0.00001',
    ]);
  });

  it('stand in the unit that readers see', () => {
    const from = sheet(
      [value('rate', 'per 1,000'), value('wait', 'hours')],
      [[number(0.01), number(90, { unit: 'minutes' })]],
    );
    expect(shownScale(from, { at: 0, column: from.columns[0]! })).toEqual({ times: 1000, label: 'Rate, per 1,000' });
    expect(shownScale(from, { at: 1, column: from.columns[1]! })).toMatchObject({ times: 1 / 60, label: 'Wait, h' });
  });
});

it('a thinned curve keeps its first and last step', () => {
  const many = Array.from({ length: 1130 }, (_, at) => at);
  const few = thinned(many, 160);
  expect([few.length, few[0], few.at(-1)]).toEqual([160, 0, 1129]);
  expect(thinned([1, 2], 160)).toEqual([1, 2]);
});
