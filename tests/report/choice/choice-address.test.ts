import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readAddress, writeAddress } from '../../../src/report/choice/choice-address.js';

test('an address keeps the part it leads to and the choice', () => {
  expect(readAddress('#section-where?station=heron-point&with.this_season=2024')).toEqual({
    part: 'section-where',
    choice: { only: new Map([['station', 'heron-point']]), inputs: new Map([['this_season', '2024']]) },
  });
  expect(readAddress('')).toEqual({ part: '', choice: { only: new Map(), inputs: new Map() } });
  expect(readAddress('#account-%E0%A4%A')).toMatchObject({ part: 'account-%E0%A4%A' });
});

test('what is written is read again, whatever stands in it', () => {
  const name = fc.string({ minLength: 1 }).filter((text) => !text.startsWith('with.'));
  const pairs = fc.array(fc.tuple(name, fc.string())).map((list) => new Map(list));
  fc.assert(
    fc.property(fc.string(), pairs, pairs, (part, only, inputs) => {
      const address = { part, choice: { only, inputs } };
      expect(readAddress(`#${writeAddress(address)}`)).toEqual(address);
    }),
  );
});
