import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { encodings } from '../../src/intake/source/encoding.js';
import { workbookOf } from './small-archive.js';
import { importSmall, notesCrosswalk } from './small-import.js';

const declared = (dialect: string, settings: string) =>
  notesCrosswalk.replace('    columns:', `    dialect: ${dialect}\n${settings}\n    columns:`);
const leaveOut = '    leave_out: [{ last_rows: 2, because: foot }, { first_cell: "T*", because: totals }]';

test('any bytes in any declared encoding give rows or problems, and the sum holds', async () => {
  const text = fc.oneof(
    fc.uint8Array({ maxLength: 120 }).map((bytes) => Buffer.from(bytes)),
    fc.string({ unit: 'binary', maxLength: 60 }).map((some) => Buffer.from(some, 'utf16le')),
  );
  const dialect = fc.record({
    encoding: fc.constantFrom(...encodings),
    line: fc.constantFrom('1', '2', '1-2', 'by name'),
    headers: fc.constantFrom('loose', 'exact'),
  });
  await fc.assert(
    fc.asyncProperty(
      text,
      dialect,
      fc.boolean(),
      fc.integer({ min: 1, max: 50 }),
      async (bytes, how, leaves, chunk) => {
        const header = how.encoding.startsWith('utf-16')
          ? Buffer.from('no,note,dollars\n', 'utf16le')
          : Buffer.from('no,note,dollars\n');
        const settings = `{ encoding: ${how.encoding}, header_line: ${how.line}, headers: ${how.headers} }`;
        const crosswalk = declared(settings, leaves ? leaveOut : '');
        const result = await importSmall(crosswalk, { 'notes.csv': Buffer.concat([header, bytes]) }, { chunk });
        for (const { read, kept, setAside, leftOut } of result.sum.files) expect(kept + setAside + leftOut!).toBe(read);
        expect(result.sum.files.length + result.problems.length).toBeGreaterThan(0);
      },
    ),
    { numRuns: 200 },
  );
});

test('a workbook with a byte changed anywhere gives rows or problems, never a crash', async () => {
  const sound = readFileSync(new URL('workbooks/dates-1900.xlsx', import.meta.url));
  const crosswalk = `
crosswalk: dates
files:
  - files: dates.xlsx
    table: spending
    columns: { what: { field: entry }, value: { field: note } }
    constants: { fiscal_year: 2025, category: supplies, amount: 1 }
`;
  await fc.assert(
    fc.asyncProperty(fc.nat(sound.length - 1), fc.nat(255), async (at, byte) => {
      const spoilt = Buffer.from(sound);
      spoilt[at] = byte;
      const result = await importSmall(crosswalk, { 'dates.xlsx': spoilt });
      for (const { read, kept, setAside } of result.sum.files) expect(kept + setAside).toBe(read);
      expect(result.sum.files.length + result.problems.length).toBeGreaterThan(0);
    }),
    { numRuns: 60 },
  );
});

test('a sheet whose XML is spoilt anywhere gives rows or problems, never a crash', async () => {
  const head = '<row r="1"><c r="A1" t="inlineStr"><is><t>no</t></is></c></row>';
  const sound = `${head}<row r="2"><c r="A2" s="0"><v>7</v></c></row><row r="4"><c r="A4" t="s"><v>0</v></c></row>`;
  const strings = '<sst><si><r><t>a</t></r><r><t>b</t></r></si></sst>';
  const crosswalk = `
crosswalk: one
files:
  - { files: book.xlsx, table: wash_units, columns: { no: { field: unit } }, constants: { kind: fixed } }
`;
  const spoil = (text: string, at: number, piece: string) => {
    const place = at % text.length;
    return text.slice(0, place) + piece + text.slice(place + piece.length);
  };
  const piece = fc.string({
    unit: fc.constantFrom('<', '>', '"', '/', '&', '1', '9', 'r', 'A', ' ', '-'),
    maxLength: 4,
  });
  await fc.assert(
    fc.asyncProperty(fc.nat(), piece, fc.boolean(), async (at, some, inStrings) => {
      const rows = inStrings ? sound : spoil(sound, at, some);
      const book = workbookOf(rows, { 'xl/sharedStrings.xml': inStrings ? spoil(strings, at, some) : strings });
      const result = await importSmall(crosswalk, { 'book.xlsx': book });
      for (const { read, kept, setAside } of result.sum.files) expect(kept + setAside).toBe(read);
      expect(result.sum.files.length + result.problems.length).toBeGreaterThan(0);
    }),
    { numRuns: 150 },
  );
});
