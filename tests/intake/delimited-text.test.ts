import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asideOf, importSmall, notesCrosswalk, valuesOf } from './small-import.js';

const read = (text: string | Uint8Array, chunk?: number) =>
  importSmall(notesCrosswalk, { 'notes.csv': text }, chunk === undefined ? {} : { chunk });
const notes = async (text: string | Uint8Array) => valuesOf(await read(text), 'spending', 'note');

// RFC 4180, section 2, its examples 1 to 7 with our three columns in place of aaa, bbb and ccc.
describe('RFC 4180', () => {
  test('each row stands on its own line, ended by CRLF', async () => {
    expect(await notes('no,note,dollars\r\na,x,1\r\nb,y,2\r\n')).toEqual(['x', 'y']);
  });

  test('the last row may lack its line end', async () => {
    expect(await notes('no,note,dollars\r\na,x,1\r\nb,y,2')).toEqual(['x', 'y']);
  });

  test('cells may be quoted or not, and a quoted row is the same row', async () => {
    expect(await notes('no,note,dollars\r\n"a","x","1"\r\nb,y,2\r\n')).toEqual(['x', 'y']);
  });

  test('quotes hold line ends, delimiters and doubled quotes', async () => {
    expect(await notes('no,note,dollars\r\na,"b\r\nbb",1\r\nb,"c,cc",2\r\nc,"d""dd",3\r\n')).toEqual([
      'b\r\nbb',
      'c,cc',
      'd"dd',
    ]);
  });
});

test('CR, LF and CRLF may end lines in one file, and lines are counted right', async () => {
  const result = await read('no,note,dollars\ra,x,1\nb,y,one\r\nc,z,3\r\r\nd,"q\rq\nq\r\nq",four\r\n');
  expect(valuesOf(result, 'spending', 'note')).toEqual(['x', 'z']);
  // Lines: 1 header, 2 a, 3 b, 4 c, 5 blank, 6 to 9 d.
  expect(asideOf(result)).toEqual(['3 dollars not-a-number', '6 dollars not-a-number']);
});

test('blank lines and a header said again are no rows', async () => {
  const result = await read('no,note,dollars\n\na,x,1\n  \nno,note,dollars\nb,y,2\n\n');
  expect(result.sum.files[0]).toMatchObject({ read: 2, kept: 2, setAside: 0 });
  expect([...result.records.spending.origin.lineOf]).toEqual([3, 6]);
});

test('a quote within a cell that does not begin with one is a letter like any other', async () => {
  expect(await notes('no,note,dollars\na,16" wake board,1\n')).toEqual(['16" wake board']);
});

test('a row with too few or too many cells is set aside whole, not merged', async () => {
  const result = await read('no,note,dollars\na,x\nb,y,2\nc,z,3,4\n');
  expect(asideOf(result)).toEqual(['2  ragged-row', '4  ragged-row']);
  expect(result.setAside.map(({ seen }) => seen)).toEqual(['2 fields', '4 fields']);
  expect(result.setAsideRows).toEqual([
    { file: 'notes.csv', line: 2, row: 'a,x' },
    { file: 'notes.csv', line: 4, row: 'c,z,3,4' },
  ]);
});

describe('a quote that nobody closes', () => {
  test('costs its own line only, at the end of the file', async () => {
    const result = await read('no,note,dollars\na,"x,1\nb,y,2\nc,z,3\n');
    expect(asideOf(result)).toEqual(['2  unterminated-quote']);
    expect(valuesOf(result, 'spending', 'note')).toEqual(['y', 'z']);
  });

  test('costs its own line only, before a row with sound quotes', async () => {
    const result = await read('no,note,dollars\na,"x,1\nb,y,2\nc,"z, z",3\n');
    expect(asideOf(result)).toEqual(['2  unterminated-quote']);
    expect(valuesOf(result, 'spending', 'note')).toEqual(['y', 'z, z']);
  });

  test('does not swallow rows up to a quote that would close it', async () => {
    const result = await read('no,note,dollars\na,"x,1\nb,y,2\nc,z",3\n');
    expect(asideOf(result)).toEqual(['2  unterminated-quote']);
    expect(valuesOf(result, 'spending', 'note')).toEqual(['y', 'z"']);
  });

  test('text behind a closing quote breaks the row, and no other', async () => {
    const result = await read('no,note,dollars\na,"x" y,1\nb,y,2\n');
    expect(asideOf(result)).toEqual(['2  unterminated-quote']);
    expect(valuesOf(result, 'spending', 'note')).toEqual(['y']);
  });
});

test('a byte order mark is no part of the first heading', async () => {
  expect(await notes('\uFEFFno,note,dollars\na,x,1\n')).toEqual(['x']);
});

test('one garbled row is set aside; a file in another encoding is stopped', async () => {
  const latin = (text: string) => Buffer.from(text, 'latin1');
  const sound = Array.from({ length: 200 }, (_, row) => `${row},x,1\n`).join('');
  const slip = await read(latin(`no,note,dollars\n${sound}a,caf\u00e9,1\n`));
  expect(asideOf(slip)).toEqual(['202 note not-utf-8']);
  const other = await read(latin('no,note,dollars\na,caf\u00e9,1\nb,\u00fcber,2\nc,x,3\n'));
  expect(other.problems.map(({ code }) => code)).toEqual(['not-utf-8']);
  const wide = await read(Buffer.from('\uFEFFno,note,dollars\na,x,1\n', 'utf16le'));
  expect(wide.problems.map(({ code }) => code)).toEqual(['encoding-in-doubt']);
});

test('letters beyond ASCII come through whole', async () => {
  expect(await notes('no,note,dollars\na,Größe 🛶,1\n')).toEqual(['Größe 🛶']);
});

test('other delimiters and quotes are read as declared', async () => {
  const crosswalk = notesCrosswalk.replace(
    '    columns:',
    '    dialect: { delimiter: pipe, quote: single, header_line: 3 }\n    columns:',
  );
  const result = await importSmall(crosswalk, { 'notes.csv': "Season\nmade by hand\nno|note|dollars\na|'x|y'|1\n" });
  expect(valuesOf(result, 'spending', 'note')).toEqual(['x|y']);
});

// Every kind of row that takes another path through the reader.
const awkward =
  '\uFEFFno,note,dollars\r\na,x,1\r\nb,"q\r\nq, ""q""",2\nc,"",3\r\r\nd,é,x\ne,"open,5\nf,y\r\ng,"a"b,7\nh,z,8,9\n\ni,ü,10';

test('no result depends on how many bytes are read at once', async () => {
  const whole = await read(awkward);
  expect(whole.sum.files[0]).toMatchObject({ read: 9, kept: 4, setAside: 5 });
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 64 }), async (chunk) => {
      const cut = await read(awkward, chunk);
      expect(cut.setAside).toEqual(whole.setAside);
      expect(cut.setAsideRows).toEqual(whole.setAsideRows);
      expect(cut.sum).toEqual(whole.sum);
      expect(valuesOf(cut, 'spending', 'note')).toEqual(valuesOf(whole, 'spending', 'note'));
      expect([...cut.records.spending.origin.lineOf]).toEqual([...whole.records.spending.origin.lineOf]);
    }),
    { numRuns: 64 },
  );
});

test('whatever is quoted as RFC 4180 says is read back', async () => {
  const cell = fc.string({ unit: fc.constantFrom('a', '"', ',', '\n', '\r', ' ', 'é', ';', '=') });
  await fc.assert(
    fc.asyncProperty(fc.array(cell, { minLength: 1, maxLength: 5 }), async (cells) => {
      const rows = cells.map((text, row) => `${row},"${text.replaceAll('"', '""')}",1\n`);
      const result = await read(`no,note,dollars\n${rows.join('')}`, 7);
      // A cell that itself holds a line with as many commas as a row is taken for an unclosed quote, on purpose.
      fc.pre(cells.every((text) => text.split(/\r\n|\r|\n/).every((line) => line.split(',').length < 3)));
      expect(asideOf(result)).toEqual([]);
      const plain = cells.map((text) => text.replace(/^[ \t]+|[ \t]+$/g, ''));
      expect(valuesOf(result, 'spending', 'note')).toEqual(plain.map((text) => (text === '' ? null : text)));
    }),
    { numRuns: 100 },
  );
});

test('any bytes at all give rows or problems, and the sum holds', async () => {
  const bytes = fc
    .uint8Array({ maxLength: 200 })
    .map((some) => Buffer.concat([Buffer.from('no,note,dollars\n'), some]));
  await fc.assert(
    fc.asyncProperty(bytes, fc.integer({ min: 1, max: 50 }), async (text, chunk) => {
      const result = await read(text, chunk);
      for (const { read, kept, setAside } of result.sum.files) expect(kept + setAside).toBe(read);
      if (result.problems.length === 0) expect(result.sum.files).toHaveLength(1);
    }),
    { numRuns: 150 },
  );
});

test('a row over two lines with a cell too many is set aside whole, and its second line is no row of its own', async () => {
  const broken = 'b,"two\nlines",3,5\n';
  const result = await importSmall(notesCrosswalk, { 'notes.csv': `no,note,dollars\na,x,1\n${broken}c,z,4\n` });
  expect(result.sum.files.map(({ read, kept, setAside }) => [read, kept, setAside])).toEqual([[3, 2, 1]]);
  expect(asideOf(result)).toEqual(['3  ragged-row']);
  expect(valuesOf(result, 'spending', 'entry')).toEqual(['a', 'c']);
});

test('a line of a pair of quotes is a row, a line of nothing is none', async () => {
  const stations = `
crosswalk: one
files:
  - { files: one.csv, table: wash_units, columns: { no: { field: unit } }, constants: { kind: fixed } }
`;
  const { sum } = await importSmall(stations, { 'one.csv': 'no\na\n""\n\nb\n' });
  expect(sum.files.map(({ read, kept, setAside }) => [read, kept, setAside])).toEqual([[3, 2, 1]]);
  const wide = await importSmall(notesCrosswalk, { 'notes.csv': 'no,note,dollars\na,x,1\n""\n \nb,y,2\n' });
  expect(asideOf(wide)).toEqual(['3  ragged-row']);
});
