import { describe, expect, test } from 'vitest';
import { readDatePatterns } from '../../src/intake/date-pattern.js';
import { DateReader } from '../../src/intake/date-reader.js';
import { fault } from '../../src/intake/fault.js';

/** The moment that a text says by the clock that wrote it, as ISO 8601 writes it; `null` where it says none. */
function said(
  patterns: string | readonly string[],
  text: string,
  wanted: 'date' | 'instant' = 'instant',
): string | null {
  const pattern = readDatePatterns([patterns].flat(), wanted);
  if (typeof pattern === 'string') throw new Error(pattern);
  const reader = new DateReader(pattern, wanted === 'instant');
  const bytes = Buffer.from(text);
  if (reader.read(bytes, 0, bytes.length) !== fault.none) return null;
  return new Date(reader.wall - (reader.hasOffset ? reader.offset * 60_000 : 0)).toISOString();
}

describe('clocks', () => {
  test('may be written without a colon, with one or two digits for the hour', () => {
    expect(said('MM/dd/yyyy Hmm', '06/14/2025 630')).toBe('2025-06-14T06:30:00.000Z');
    expect(said('MM/dd/yyyy Hmm', '06/14/2025 0630')).toBe('2025-06-14T06:30:00.000Z');
    expect(said('MM/dd/yyyy Hmm', '06/14/2025 1830')).toBe('2025-06-14T18:30:00.000Z');
    expect(said('MM/dd/yyyy Hmm', '06/14/2025 30')).toBeNull();
    expect(said('Mddyyyy Hmm', '6142025 630')).toBe('2025-06-14T06:30:00.000Z');
  });

  // NIST, Times of Day FAQ: 12 a.m. is midnight and 12 p.m. noon where they are used at all.
  test('of twelve hours take AM and PM with or without space and points', () => {
    for (const text of ['6:30 PM', '6:30PM', '6:30 pm', '6:30 p.m.']) {
      expect(said('yyyy-MM-dd h:mm a', `2025-06-14 ${text}`), text).toBe('2025-06-14T18:30:00.000Z');
    }
    expect(said('yyyy-MM-dd h:mm a', '2025-06-14 12:05 AM')).toBe('2025-06-14T00:05:00.000Z');
    expect(said('yyyy-MM-dd h:mm a', '2025-06-14 12:05 PM')).toBe('2025-06-14T12:05:00.000Z');
    expect(said('yyyy-MM-dd h:mm a', '2025-06-14 18:30 PM')).toBeNull();
    expect(said('yyyy-MM-dd h:mm a', '2025-06-14 6:30 XM')).toBeNull();
  });

  // ISO 8601-1:2019/Amd 1:2022: 24:00:00 is the end of the day, and the beginning of the next.
  test('may end a day at 24:00, and not a minute later', () => {
    expect(said('yyyy-MM-dd HH:mm', '2025-12-31 24:00')).toBe('2026-01-01T00:00:00.000Z');
    expect(said('yyyy-MM-dd HH:mm', '2025-12-31 24:01')).toBeNull();
    expect(said('yyyy-MM-dd HH:mm', '2025-12-31 25:00')).toBeNull();
  });

  test('may show thousandths of a second and offsets of three forms', () => {
    // RFC 3339, section 5.8, its example of an offset.
    expect(said("yyyy-MM-dd'T'HH:mm:ssXXX", '1996-12-19T16:39:57-08:00')).toBe('1996-12-20T00:39:57.000Z');
    expect(said("yyyy-MM-dd'T'HH:mm:ss.SSSXX", '2025-06-14T06:30:00.250-0700')).toBe('2025-06-14T13:30:00.250Z');
    expect(said("yyyy-MM-dd'T'HH:mmX", '2025-06-14T06:30-07')).toBe('2025-06-14T13:30:00.000Z');
    expect(said("yyyy-MM-dd'T'HH:mmX", '2025-06-14T06:30-0700')).toBeNull();
  });

  test('may show no offset that no clock ever had', () => {
    // The farthest since 1900, after IANA's time zone database: Pacific/Kiritimati and Etc/GMT+12.
    expect(said("yyyy-MM-dd'T'HH:mmXXX", '2025-06-14T06:30+14:00')).toBe('2025-06-13T16:30:00.000Z');
    expect(said("yyyy-MM-dd'T'HH:mmXXX", '2025-06-14T06:30-12:00')).toBe('2025-06-14T18:30:00.000Z');
    for (const offset of ['+14:01', '+15:00', '-24:00', '+99:00']) {
      expect(said("yyyy-MM-dd'T'HH:mmXXX", `2025-06-14T06:30${offset}`), offset).toBeNull();
    }
  });
});

describe('dates', () => {
  test('may name their month in English', () => {
    expect(said('d-MMM-yyyy', '5-Jun-2025', 'date')).toBe('2025-06-05T00:00:00.000Z');
    expect(said('d-MMM-yyyy', '5-JUN-2025', 'date')).toBe('2025-06-05T00:00:00.000Z');
    expect(said('MMMM d, yyyy', 'September 30, 2025', 'date')).toBe('2025-09-30T00:00:00.000Z');
    expect(said('d-MMM-yyyy', '5-Juny-2025', 'date')).toBeNull();
    expect(said('d-MMM-yyyy', '31-Jun-2025', 'date')).toBeNull();
  });

  // 5 July 1998 is day 35981 from 1900 and day 34519 from 1904: the vendor's article on the two date systems (Q180162).
  test('may be counted in days, with the time of day behind the point', () => {
    expect(said('serial 1900', '35981', 'date')).toBe('1998-07-05T00:00:00.000Z');
    expect(said('serial 1904', '34519', 'date')).toBe('1998-07-05T00:00:00.000Z');
    expect(said('serial 1900', '35981.75')).toBe('1998-07-05T18:00:00.000Z');
    expect(said('serial 1900', '35981,75')).toBe('1998-07-05T18:00:00.000Z');
    // 6:30 rounded to five places is still 6:30.
    expect(said('serial 1900', '35981.27083')).toBe('1998-07-05T06:30:00.000Z');
    expect(said('serial 1900', '60', 'date')).toBeNull();
    expect(said('serial 1900', '-1', 'date')).toBeNull();
    expect(said('serial 1900', '07/05/1998', 'date')).toBeNull();
  });
});

describe('several forms in one column', () => {
  test('are each read by their own pattern', () => {
    const forms = ['sheet date', 'MM/dd/yyyy HH:mm', 'serial 1900'];
    expect(said(forms, '2025-06-14T06:30:00')).toBe('2025-06-14T06:30:00.000Z');
    expect(said(forms, '06/14/2025 06:30')).toBe('2025-06-14T06:30:00.000Z');
    expect(said(forms, '45822.25')).toBe('2025-06-14T06:00:00.000Z');
    expect(said(forms, '14/06/2025 06:30')).toBeNull();
    // A sheet's date without a time of day is no moment.
    expect(said(forms, '2025-06-14')).toBeNull();
    expect(said(['sheet date'], '2025-06-14', 'date')).toBe('2025-06-14T00:00:00.000Z');
  });

  test('are refused where one text could be read in two ways', () => {
    expect(readDatePatterns(['MM/dd/yyyy', 'dd/MM/yyyy'], 'date')).toContain('could be read by');
    expect(readDatePatterns(['d.M.yy', 'M.d.yyyy'], 'date')).not.toBeTypeOf('string');
    expect(readDatePatterns(['yyyy-MM-dd', 'yyyyMMdd'], 'date')).not.toBeTypeOf('string');
    expect(readDatePatterns(['Hmm d M yyyy', 'dd MM yyyy'], 'date')).not.toBeTypeOf('string');
    expect(readDatePatterns(['Md yyyy'], 'date')).toContain('side by side');
  });
});

describe('names of months', () => {
  // CLDR, by the formatter of the runtime: dates as English and French write them, in full and cut short.
  test('are read in English and in French, with accents or without', () => {
    for (const locale of ['en-CA', 'fr-CA']) {
      for (const width of ['long', 'short'] as const) {
        const name = new Intl.DateTimeFormat(locale, { month: width, timeZone: 'UTC' });
        for (let month = 0; month < 12; month++) {
          const text = name.format(Date.UTC(2025, month, 5));
          const plain = text.normalize('NFD').replace(/\p{M}/gu, '');
          for (const written of [text, text.toUpperCase(), plain, text.replace('.', '')]) {
            const pattern = width === 'long' ? 'd MMMM yyyy' : 'd MMM yyyy';
            const wanted = new Date(Date.UTC(2025, month, 5)).toISOString();
            expect(said(pattern, `5 ${written} 2025`, 'date'), written).toBe(wanted);
          }
        }
      }
    }
  });

  test('are no other month that begins alike, and nothing behind them is passed over', () => {
    expect(said('d MMM yyyy', '5 juin 2025', 'date')).toBe('2025-06-05T00:00:00.000Z');
    expect(said('d MMM yyyy', '5 juillet 2025', 'date')).toBeNull();
    expect(said('d MMMM yyyy', '5 marsx 2025', 'date')).toBeNull();
    expect(said('d MMMM yyyy', '5 mars 2025', 'date')).toBe('2025-03-05T00:00:00.000Z');
    expect(said(['d MMMM yyyy', "d'er' MMMM yyyy"], '1er mai 2025', 'date')).toBe('2025-05-01T00:00:00.000Z');
  });
});
