import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvCell, sheetCsv } from '../../src/report/csv.js';
import { key, missing, number, share, sheet, text, value } from '../chart/small-sheet.js';

describe('a cell of CSV', () => {
  // What spreadsheets run as formulas: OWASP, "CSV Injection", https://owasp.org/www-community/attacks/CSV_Injection.
  it.each(['=1+1', '+1 555 0100', '-2+3', '@SUM(A1)', '\tx', '\rx', '=cmd|"/c calc"!A0'])('is inert: %j', (payload) => {
    expect(csvCell(payload).replace(/^"/, '')).toMatch(/^'/);
  });

  it.each(['-5', '+3.2', '-1e-7', '0.5', 'a=b', 'x - y'])('stays as it is: %j', (honest) => {
    expect(csvCell(honest)).toBe(honest);
  });

  // RFC 4180, section 2, rules 5 to 7.
  it('is quoted where it holds a comma, a quote or a line end, and quotes are doubled', () => {
    expect(csvCell('a,b')).toBe('"a,b"');
    expect(csvCell('a"b')).toBe('"a""b"');
    expect(csvCell('a\nb')).toBe('"a\nb"');
  });

  it('reads back as it was written, but for the mark of the inert', () => {
    fc.assert(
      fc.property(fc.string(), (words) => {
        const cell = csvCell(words);
        const read = cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell;
        expect([words, `'${words}`]).toContain(read);
      }),
      { seed: 1 },
    );
  });
});

describe('a sheet as CSV', () => {
  it('holds numbers unrounded, their limits and counts, and why one is missing', () => {
    const csv = sheetCsv(
      sheet(
        [key('station'), value('rate', 'per 1,000'), value('n')],
        [
          [text('Heron, north'), share(1, 3, 0.0123456789, 0.9), number(3)],
          [missing('no station'), number(null, { why: 'closed' }), number(0)],
        ],
      ),
    );
    expect(csv.split('\r\n')).toEqual([
      'station,rate,rate_low,rate_high,rate_numerator,rate_denominator,rate_why,n',
      `"Heron, north",${1 / 3},0.0123456789,0.9,1,3,,3`,
      ',,,,,,closed,0',
      '',
    ]);
  });
});
