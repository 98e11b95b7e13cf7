import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { showsTornQuote } from '../../src/intake/torn-quote.js';
import { asideOf, importSmall, notesCrosswalk, valuesOf } from './small-import.js';

// The rows are put together by RFC 4180, section 2: rule 6 quotes a cell with a delimiter, rule 7 doubles quotes within one.
const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** A row whose cells are bare, so that its delimiters alone cut it. */
function shows(cells: readonly string[]): boolean {
  const bytes = Buffer.from(cells.join(','));
  const starts: number[] = [];
  const ends: number[] = [];
  let at = 0;
  for (const cell of cells) {
    starts.push(at);
    at += Buffer.byteLength(cell);
    ends.push(at++);
  }
  return showsTornQuote(bytes, Int32Array.from(starts), Int32Array.from(ends), cells.length, 34);
}

const bare = fc.stringMatching(/^([a-z](["' a-z]{0,6}))?$/);

test('every quoted cell that lost the delimiter before it is found, whatever stands in the cells around it', () => {
  const text = fc.stringMatching(/^"{0,2}[a-z]["a-z]{0,4},["a-z ]{0,5},?["a-z]{0,3}$/);
  fc.assert(
    fc.property(
      fc.array(bare),
      fc.stringMatching(/^[a-z]["'a-z]{0,5}$/),
      text,
      fc.array(bare),
      (left, at, lost, right) => {
        const row = [...left, at + quoted(lost), ...right].join(',').split(',');
        // A cell that begins with a quote is cut elsewhere: such a row has a quote that does not end.
        fc.pre(row.every((cell) => !cell.startsWith('"')));
        expect(shows(row)).toBe(true);
      },
    ),
    { numRuns: 2000 },
  );
});

test('cells that show one by themselves show it behind any others', () => {
  fc.assert(
    fc.property(fc.array(bare), fc.array(bare, { minLength: 2 }), (left, right) => {
      fc.pre(shows(right));
      expect(shows([...left, ...right])).toBe(true);
    }),
    { numRuns: 2000 },
  );
});

const withPayee = notesCrosswalk.replace('    constants', '      payee: { private: drop }\n    constants');
const read = (crosswalk: string, rows: readonly string[], chunk = 4096) =>
  importSmall(crosswalk, { 'notes.csv': `no,note,payee,dollars\n${rows.join('\n')}\n` }, { chunk });

describe('honest quotes are letters like any other', () => {
  const honest = [
    ['one measure', '1,6" pipe,MARK,5', '6" pipe'],
    ['feet and inches', `1,22'6",MARK,5`, `22'6"`],
    ['a measure at the end of two cells', `1,22'6",8",5`, `22'6"`],
    ['a pair within one cell', '1,the "blue" one,MARK,5', 'the "blue" one'],
    ['a pair at the end of its cell', '1,called "blue",MARK,5', 'called "blue"'],
    ['a pair within each of two cells', '1,the "blue" one,called "red",5', 'the "blue" one'],
    ['a quoted cell between', '1,6" pipe,"MARK, P",5', '6" pipe'],
    ['a quoted cell with quotes', '1,6" pipe,"the ""old"" MARK",5', '6" pipe'],
    ['a quoted measure', '1,"6"" pipe",8",5', '6" pipe'],
  ] as const;
  test.each(honest)('%s', async (_, row, note) => {
    const result = await read(withPayee, [row]);
    expect(asideOf(result)).toEqual([]);
    expect(valuesOf(result, 'spending', 'note')).toEqual([note]);
  });
});

describe('a row that may have slipped is set aside', () => {
  const slipped = [
    ['a lost comma', '1,rope"MARK, P",5'],
    ['the same in a row with a quoted cell', '"1",rope"MARK, P",5'],
    ['the same with letters beyond ASCII', '1,tau é"MARK, P",5'],
    ['a text with quotes of its own', '1,rope"The ""old"" MARK, ""P"" jr",5'],
    ['a text that begins with a quote', '1,rope"""MARK"", P",5'],
    ['a measure before the lost comma', '1,6""MARK, P",5'],
    ['a pair before the lost comma', '1,the "blue" one"MARK, P",5'],
    // Nothing tells this honest row from one that lost a comma.
    ['two measures, the later at the end of its cell', '1,6" pipe,8",5'],
  ] as const;
  test.each(slipped)('%s', async (_, row) => {
    for (const chunk of [16, 4096]) {
      const result = await read(withPayee, [row, '2,wire,P,6'], chunk);
      expect(asideOf(result)).toEqual(['2  torn-quote']);
      expect(result.setAsideRows).toEqual([{ file: 'notes.csv', line: 2, row: 'withheld' }]);
      expect(valuesOf(result, 'spending', 'note')).toEqual(['wire']);
    }
  });
});

test('where no column is private, or no cell is ever quoted, such a row is read as it stands', async () => {
  const open = await read(withPayee.replace('{ private: drop }', '{ ignore: not needed }'), ['1,rope"x, y",5']);
  expect(valuesOf(open, 'spending', 'note')).toEqual(['rope"x']);
  const plain = withPayee.replace('    columns:', '    dialect: { quote: none }\n    columns:');
  expect(valuesOf(await read(plain, ['1,6" pipe,8",5']), 'spending', 'note')).toEqual(['6" pipe']);
});
