import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ZoneClock } from '../../src/intake/time-zone.js';
import { asideOf, importSmall, valuesOf } from './small-import.js';

const crosswalk = (settings: string, pattern: string, combine = '') => `
crosswalk: times
files:
  - files: s.csv
    table: stations
    columns: { at: { field: station }, zone: { field: time_zone } }
    constants: { name: A, setting: launch }
  - files: d.csv
    table: station_days
    ${settings}
    columns:
      at: { field: station }
      day: { field: date, pattern: yyyy-MM-dd }
      ${combine === '' ? `opened: { field: opened_at, pattern: "${pattern}" }` : ''}
    ${combine}
    constants: { state: closed }
`;
const stations = 'at,zone\nA,America/Denver\nB,America/Los_Angeles\n';

async function opened(cells: readonly string[], pattern: string, settings = 'time_zone: America/Denver') {
  const rows = cells.map((cell, row) => `A,2025-05-${10 + row},${cell}\n`).join('');
  const result = await importSmall(crosswalk(settings, pattern), {
    's.csv': stations,
    'd.csv': `at,day,opened\n${rows}`,
  });
  expect(result.problems).toEqual([]);
  const moments = valuesOf(result, 'station_days', 'opened_at');
  const lines = [...result.records.station_days.origin.lineOf];
  return cells.map((_, row) => {
    const at = lines.indexOf(row + 2);
    const moment = moments[at];
    return typeof moment === 'number'
      ? new Date(moment).toISOString()
      : result.setAside.find(({ line }) => line === row + 2)!.code;
  });
}

// 15 U.S.C. 260a: in the United States clocks go forward at 02:00 on the second Sunday of March (9 March 2025) and back at
// 02:00 on the first Sunday of November (2 November 2025). Mountain time is UTC−7, and UTC−6 in summer.
describe('local times', () => {
  test('become moments by the offset of their day', async () => {
    expect(await opened(['2025-01-15 08:00', '2025-07-15 08:00'], 'yyyy-MM-dd HH:mm')).toEqual([
      '2025-01-15T15:00:00.000Z',
      '2025-07-15T14:00:00.000Z',
    ]);
  });

  test('that were skipped in spring do not exist', async () => {
    const cells = ['2025-03-09 01:59', '2025-03-09 02:00', '2025-03-09 02:59', '2025-03-09 03:00'];
    expect(await opened(cells, 'yyyy-MM-dd HH:mm')).toEqual([
      '2025-03-09T08:59:00.000Z',
      'no-such-local-time',
      'no-such-local-time',
      '2025-03-09T09:00:00.000Z',
    ]);
  });

  test('that came twice in autumn are set aside, unless the crosswalk says which is meant', async () => {
    const cells = ['2025-11-02 00:59', '2025-11-02 01:00', '2025-11-02 01:59', '2025-11-02 02:00'];
    const pattern = 'yyyy-MM-dd HH:mm';
    const zone = 'time_zone: America/Denver';
    expect(await opened(cells, pattern)).toEqual([
      '2025-11-02T06:59:00.000Z',
      'ambiguous-local-time',
      'ambiguous-local-time',
      '2025-11-02T09:00:00.000Z',
    ]);
    const first = await opened(cells, pattern, `${zone}\n    repeated: first`);
    expect(first[1]).toBe('2025-11-02T07:00:00.000Z');
    const second = await opened(cells, pattern, `${zone}\n    repeated: second`);
    expect(second[1]).toBe('2025-11-02T08:00:00.000Z');
  });

  test('on a 12-hour clock know noon from midnight', async () => {
    const cells = [
      '05/01/2025 12:00 AM',
      '05/01/2025 12:30 pm',
      '05/01/2025 01:05 PM',
      '05/01/2025 13:00 PM',
      '05/01/2025 00:10 AM',
    ];
    expect(await opened(cells, 'MM/dd/yyyy hh:mm a', 'time_zone: UTC')).toEqual([
      '2025-05-01T00:00:00.000Z',
      '2025-05-01T12:30:00.000Z',
      '2025-05-01T13:05:00.000Z',
      'not-a-time',
      'not-a-time',
    ]);
  });

  test('with an offset of their own need no zone', async () => {
    const cells = [
      '2025-05-01T08:00:00-06:00',
      '2025-05-01T08:00:00Z',
      '2025-05-01T08:00:00+05:30',
      '2025-05-01T08:00:00',
    ];
    expect(await opened(cells, "yyyy-MM-dd'T'HH:mm:ssXXX", 'decimal: point')).toEqual([
      '2025-05-01T14:00:00.000Z',
      '2025-05-01T08:00:00.000Z',
      '2025-05-01T02:30:00.000Z',
      'not-a-time',
    ]);
  });

  test('beyond the day are no times, and days beyond the month no dates', async () => {
    const cells = ['2025-05-01 24:01', '2025-05-01 08:60', '2025-05-01', '2025-02-30 08:00', '2025-05-0108:00'];
    expect(await opened(cells, 'yyyy-MM-dd HH:mm')).toEqual([
      'not-a-time',
      'not-a-time',
      'not-a-time',
      'not-a-date',
      'not-a-time',
    ]);
  });
});

test('a row may take its zone from its station', async () => {
  const result = await importSmall(crosswalk('time_zone_of: station', 'yyyy-MM-dd HH:mm'), {
    's.csv': stations,
    'd.csv':
      'at,day,opened\nA,2025-07-01,2025-07-01 08:00\nB,2025-07-01,2025-07-01 08:00\nC,2025-07-01,2025-07-01 08:00\n',
  });
  expect(valuesOf(result, 'station_days', 'opened_at')).toEqual([
    Date.parse('2025-07-01T14:00Z'),
    Date.parse('2025-07-01T15:00Z'),
  ]);
  expect(asideOf(result)).toEqual(['4 at unknown-reference']);
});

test('a time from two columns is missing when both are empty, and names the column at fault', async () => {
  const combine = 'combine: { opened_at: { columns: [on, from], pattern: dd.MM.yyyy HH:mm } }';
  const result = await importSmall(crosswalk('time_zone: UTC', '', combine), {
    's.csv': stations,
    'd.csv': `at,day,on,from
A,2025-05-01,01.05.2025,08:00
A,2025-05-02,,
A,2025-05-03,03.05.2025,
A,2025-05-04,31.02.2025,08:00
A,2025-05-05,05.05.2025,8 am
`,
  });
  expect(valuesOf(result, 'station_days', 'opened_at')).toEqual([Date.parse('2025-05-01T08:00Z'), null]);
  expect(asideOf(result)).toEqual(['4 from missing-value', '5 on not-a-date', '6 from not-a-time']);
  expect(result.setAside.map(({ seen }) => seen)).toEqual(['', '31.02.2025', '8 am']);
});

test('the clock of a zone agrees with Intl at any moment, either side of every change', () => {
  // The other road: Intl formats a moment directly; the clock must lead back from that wall time to the moment.
  const zones = [
    'America/Denver',
    'America/Los_Angeles',
    'America/Phoenix',
    'Europe/Berlin',
    'Australia/Lord_Howe',
    'UTC',
  ];
  for (const zone of zones) {
    const clock = new ZoneClock(zone);
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1990-01-02'), max: new Date('2050-12-30'), noInvalidDate: true }),
        (date) => {
          const moment = Math.floor(date.getTime() / 1000) * 1000;
          const shown = new Intl.DateTimeFormat('sv-SE', {
            timeZone: zone,
            dateStyle: 'short',
            timeStyle: 'medium',
          }).format(moment);
          const wall = Date.parse(`${shown.replace(' ', 'T')}Z`);
          const kind = clock.kindOf(wall);
          expect(kind).not.toBe('never');
          const back = [clock.momentOf(wall, 'first'), clock.momentOf(wall, 'second')];
          expect(back).toContain(moment);
          if (kind === 'once') expect(back[0]).toBe(back[1]);
        },
      ),
      { numRuns: 200 },
    );
  }
});
