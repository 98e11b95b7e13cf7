import { expect, test } from 'vitest';
import { lineStretches, stretchWords } from '../../src/notebook/line-ranges.js';
import { orderByNeed } from '../../src/notebook/order.js';

test('what is needed comes first, whatever the order on the page', () => {
  const items = [
    { name: 'cost_each', needs: ['spent', 'intercepted'] },
    { name: 'intercepted', needs: ['full'] },
    { name: 'spent', needs: [] },
    { name: 'full', needs: ['inspections'] },
  ];
  expect(orderByNeed(items)).toEqual({ names: ['spent', 'full', 'intercepted', 'cost_each'], loops: [] });
});

test('a loop is named whole and does not take its neighbours with it', () => {
  const items = [
    { name: 'a', needs: ['b'] },
    { name: 'b', needs: ['c'] },
    { name: 'c', needs: ['a', 'd'] },
    { name: 'd', needs: [] },
    { name: 'e', needs: ['d'] },
  ];
  expect(orderByNeed(items)).toEqual({ names: ['d', 'e'], loops: [['a', 'b', 'c', 'a']] });
});

test('a figure that needs itself is a loop of one', () => {
  expect(orderByNeed([{ name: 'a', needs: ['a'] }])).toEqual({ names: [], loops: [['a', 'a']] });
});

test('a chain of ten thousand figures is ordered without exhausting the stack', () => {
  const items = Array.from({ length: 10_000 }, (_, at) => ({ name: `f${at}`, needs: [`f${at + 1}`] }));
  expect(orderByNeed(items).names[0]).toBe('f9999');
});

test('line numbers are told as ranges', () => {
  const words = (...lines: number[]) => stretchWords(lineStretches(Uint32Array.from(lines)));
  expect(words(9, 2, 3, 4, 12, 11, 3)).toEqual(['2-4', '9', '11-12']);
  expect(words()).toEqual([]);
});
