import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { sides } from '../../src/finding/sides.js';
import { ask, cells } from './read-finding.js';
import { elkPoint, inspection, look, smallRecords, smallSum } from './small-records.js';

type State = 'clean' | 'mussels' | 'not checked';
const bunks = (craft: string, port: State, starboard: State) => [
  look(craft, 'bunks', port, 'port'),
  look(craft, 'bunks', starboard, 'starboard'),
];

describe('sides', () => {
  it('compare only craft on which both sides were looked at', () => {
    // Eight craft differ, 1 to port and 7 to starboard: mid-P 0.0390625, Bentur et al. 2009 in Fagerland et al. 2013,
    // as in tests/reference/statistics.json, mcnemar-bentur.
    const craft = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j', 'k'];
    const checks = [
      ...bunks('a', 'mussels', 'clean'),
      ...['b', 'c', 'd', 'e', 'f', 'g', 'h'].flatMap((one) => bunks(one, 'clean', 'mussels')),
      ...bunks('i', 'mussels', 'mussels'),
      ...bunks('j', 'clean', 'clean'),
      ...bunks('k', 'mussels', 'not checked'),
      look('k', 'propeller', 'mussels'),
    ];
    const book = openBook(
      smallRecords({ stations: [elkPoint], inspections: craft.map((one) => inspection(one)), checks }),
      smallSum(null),
    );
    const found = ask(sides, book);
    const names = ['component', 'both_looked', 'one_looked', 'neither', 'port_only', 'starboard_only', 'both'];
    expect(cells(found, ...names)).toEqual([['bunks', 10, 1, 1, 1, 7, 1]]);
    expect(cells(found, 'p_value')).toEqual([[expect.closeTo(0.0390625, 12)]]);
    expect(cells(found, 'p_holm')).toEqual([[expect.closeTo(0.0390625, 12)]]);
    expect(found.said).toEqual(['1 test was made; P, Holm is adjusted for their number.']);
  });
});
