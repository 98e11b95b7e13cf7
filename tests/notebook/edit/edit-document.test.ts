import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DocumentEdit } from '../../../src/notebook/edit/document-edit.js';
import { editDocument } from '../../../src/notebook/edit/edit-document.js';
import { readDocument } from '../../../src/notebook/read-document.js';

const lines = [
  '---',
  'seed: 1',
  '---',
  '# Small season',
  '',
  'Some **prose** about',
  'what was {seen}.',
  '',
  '| figure   | formula            | shown as |',
  '|----------|--------------------|----------|',
  '| seen     | count(inspections) | whole    |',
  '| other    | seen * 2           |          |',
  '',
  'Sheet by_station: each station of inspections.',
  '',
  '| column | formula |',
  '|---|---|',
  '| looked | count() |',
  '',
  '![A chart](dots?sheet=by_station)',
];
const text = `${lines.join('\n')}\n`;

function edited(edit: DocumentEdit, of = text): string {
  const found = editDocument(of, edit);
  if ('refused' in found) throw new Error(found.refused);
  return found.text;
}

/** The lines, from 1, that differ, where both texts have as many. */
function differing(one: string, other: string): number[] {
  const [before, after] = [one.split('\n'), other.split('\n')];
  expect(after).toHaveLength(before.length);
  return before.flatMap((line, at) => (line === after[at] ? [] : [at + 1]));
}

const cell = (line: number, was: string, now: string): DocumentEdit => {
  return { change: 'cell', line, column: lines[line - 1]!.indexOf(was) + 1, was, now };
};

describe('a cell', () => {
  test('is changed in its own line only, and the table stays straight where there is room', () => {
    const after = edited(cell(11, 'count(inspections)', 'count(full)'));
    expect(differing(text, after)).toEqual([11]);
    expect(after.split('\n')[10]).toBe('| seen     | count(full)        | whole    |');
  });

  test('that needs more room takes it, and no other row is re-aligned', () => {
    const after = edited(cell(12, 'seen * 2', 'count(inspections) * 1000'));
    expect(differing(text, after)).toEqual([12]);
    expect(after.split('\n')[11]).toBe('| other    | count(inspections) * 1000 |          |');
  });

  test('that is empty can be filled', () => {
    const read = readDocument('', text);
    const empty = read.written.find(({ first }) => first === 9)!.table![2]![2]!;
    const after = edited({ change: 'cell', line: 12, column: empty.column, was: '', now: 'whole' });
    expect(differing(text, after)).toEqual([12]);
    expect(readDocument('', after).written.find(({ first }) => first === 9)!.table![2]![2]!.text).toBe('whole');
  });

  test('holds any text in one line of one cell', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), (now) => {
        const after = edited(cell(11, 'count(inspections)', now));
        expect(differing(text, after).filter((line) => line !== 11)).toEqual([]);
        const { table } = readDocument('', after).written.find(({ first }) => first === 9)!;
        expect(table!.map((row) => row.length)).toEqual([3, 3, 3]);
        expect([table![1]![0]!.text, table![1]![2]!.text]).toEqual(['seen', 'whole']);
      }),
      { examples: [['||'], ['\\||']] },
    );
  });

  test('that holds something else by now is left alone', () => {
    const stale: DocumentEdit = { change: 'cell', line: 11, column: 14, was: 'count(full)', now: 'x' };
    expect(editDocument(text, stale)).toEqual({ refused: 'something else stands there by now' });
    expect(editDocument(text, { ...stale, line: 99 })).toHaveProperty('refused');
  });
});

test('prose, a heading and settings are changed in their own lines only', () => {
  const after = edited({
    change: 'lines',
    first: 6,
    last: 7,
    was: lines.slice(5, 7).join('\n'),
    now: 'Some other prose about\nwhat was {seen}.\n\n',
  });
  expect(differing(text, after)).toEqual([6]);
  expect(differing(text, edited({ change: 'lines', first: 4, last: 4, was: lines[3]!, now: '# Title' }))).toEqual([4]);
});

describe('a row', () => {
  test('is added below another, with a name that nobody has', () => {
    const after = edited({ change: 'add row', below: 12 }).split('\n');
    expect(after.slice(0, 12)).toEqual(lines.slice(0, 12));
    expect(after[12]).toBe('| new_figure | 0                  |          |');
    expect(after.slice(13, -1)).toEqual(lines.slice(12));
    const again = edited({ change: 'add row', below: 9 }, after.join('\n'));
    expect(again.split('\n')[10]).toContain('new_figure_2');
  });

  test('is taken out, and moved by changing places', () => {
    const out = edited({ change: 'take row', line: 11 });
    expect(out.split('\n').slice(0, -1)).toEqual(lines.filter((_, at) => at !== 10));
    expect(differing(text, edited({ change: 'move row', line: 11, down: true }))).toEqual([11, 12]);
    expect(edited({ change: 'move row', line: 11, down: true })).toBe(
      edited({ change: 'move row', line: 12, down: false }),
    );
  });

  test('at the edge of its table stays there, and heads are no rows', () => {
    expect(editDocument(text, { change: 'move row', line: 11, down: false })).toHaveProperty('refused');
    expect(editDocument(text, { change: 'move row', line: 12, down: true })).toHaveProperty('refused');
    expect(editDocument(text, { change: 'take row', line: 9 })).toHaveProperty('refused');
  });
});

describe('a part', () => {
  test.each(['paragraph', 'heading', 'inputs', 'records', 'figures', 'sheet', 'chart'] as const)(
    'of kind %s is added between others and is read as one',
    (part) => {
      for (const below of [0, 7, 12, 18, 20]) {
        const after = edited({ change: 'add part', below, part }).split('\n');
        const found = readDocument('', after.join('\n'));
        if (below > 0) expect(found.problems).toEqual([]);
        // At the top the settings are no head any more; anywhere else one part more is there.
        if (below > 0) expect(found.written).toHaveLength(readDocument('', text).written.length + 1);
        expect(after.filter((line) => line !== '')).toEqual(
          expect.arrayContaining(lines.filter((line) => line !== '')),
        );
      }
    },
  );

  test('is taken out with its table, and moved past its neighbour', () => {
    const out = edited({ change: 'take part', first: 14, last: 18 });
    expect(out.split('\n').slice(0, -1)).toEqual([...lines.slice(0, 13), ...lines.slice(19)]);
    const moved = edited({ change: 'move part', first: 14, down: false }).split('\n').slice(0, -1);
    expect(moved).toEqual([
      ...lines.slice(0, 8),
      ...lines.slice(13, 18),
      '',
      ...lines.slice(8, 12),
      ...lines.slice(18),
    ]);
    expect(edited({ change: 'move part', first: 9, down: true })).toBe(`${moved.join('\n')}\n`);
  });
});

test('line ends, and a last line without one, stay as they are', () => {
  for (const [end, last] of [
    ['\r\n', '\r\n'],
    ['\r\n', ''],
    ['\n', ''],
  ] as const) {
    const own = lines.join(end) + last;
    const after = edited({ change: 'move row', line: 11, down: true }, own);
    expect(after.split(end)).toHaveLength(own.split(end).length);
    expect(after.endsWith(end)).toBe(last !== '');
    const swapped = [...lines.slice(0, 10), lines[11], lines[10], ...lines.slice(12)].join(end) + last;
    expect(after).toBe(swapped);
    const added = edited({ change: 'add part', below: 20, part: 'paragraph' }, own);
    expect(added.startsWith(lines.join(end))).toBe(true);
    expect(added.replaceAll('\r\n', '').includes(end === '\r\n' ? '\n' : '\r')).toBe(false);
  }
});
