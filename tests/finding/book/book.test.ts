import { describe, expect, it } from 'vitest';
import { openBook } from '../../../src/finding/book.js';
import type { Book, BookTable } from '../../../src/record/book.js';
import { elkPoint, inspection, look, pineGate, smallRecords, smallSum } from '../small-records.js';
import { values } from './read-column.js';

const table = (book: Book, name: string): BookTable => book.tables.get(name)!;

describe('inspections in the book', () => {
  const book = openBook(
    smallRecords({
      stations: [elkPoint, pineGate],
      waterbodies: [
        { waterbody: 'tarn', name: 'Tarn Lake', status: 'suspect', status_from: '2024-05-01' },
        { waterbody: 'tarn', name: 'Tarn Lake', status: 'positive', status_from: '2025-06-01' },
      ],
      inspections: [
        inspection('a', { last_waterbody: 'tarn', last_on_water: '2025-05-30', craft: 'x' }),
        // 05:30 UTC is still the evening before, at both stations.
        inspection('b', { started_at: '2025-06-01T05:30Z', last_waterbody: 'tarn', last_on_water: '2025-06-01' }),
        inspection('c', { station: 'pine', started_at: '2025-01-01T07:15Z', finished_at: '2025-01-01T07:27Z' }),
        inspection('d', { started_at: '2025-05-20T18:00Z', craft: 'x', extent: 'paper check' }),
        inspection('e', { started_at: '2025-05-21T18:00Z', craft: 'x', finished_at: '2025-05-21T17:00Z' }),
        inspection('f', { started_at: '2024-08-01T18:00Z', craft: 'x', last_waterbody: 'tarn' }),
        inspection('g', { started_at: '2024-04-01T18:00Z', last_waterbody: 'tarn' }),
      ],
    }),
    smallSum(null),
  );
  const inspections = table(book, 'inspections');

  it('are dated by the station’s own clock, not by UTC nor by this machine’s', () => {
    expect(values(inspections, 'season')).toEqual([2025, 2025, 2024, 2025, 2025, 2024, 2024]);
    expect(values(inspections, 'month').slice(0, 3)).toEqual(['June', 'May', 'December']);
    expect(values(inspections, 'weekday').slice(0, 3)).toEqual(['Sunday', 'Saturday', 'Tuesday']);
    expect(values(inspections, 'hour').slice(0, 3)).toEqual([12, 23, 23]);
    expect(values(inspections, 'minute').slice(0, 3)).toEqual([0, 30, 15]);
    expect(values(inspections, 'date')[1]).toBe(Date.parse('2025-05-31') / 86_400_000);
  });

  it('take the status of the last water as it was on their day', () => {
    expect(values(inspections, 'last_status')).toEqual(['positive', 'suspect', null, null, null, 'suspect', null]);
  });

  it('have no days since water where the last day lies after the inspection', () => {
    expect(values(inspections, 'days_since_water').slice(0, 3)).toEqual([2, null, null]);
  });

  it('have no minutes where the finish lies before the start', () => {
    expect(values(inspections, 'minutes').slice(2, 5)).toEqual([12, null, null]);
  });

  it('are first of the season once a craft and season, and never by a paper check', () => {
    expect(values(inspections, 'first_of_season')).toEqual(['no', null, null, 'no', 'yes', 'yes', null]);
  });

  it('name stations and waters by their shown names', () => {
    expect(inspections.fields.get('station')?.labels?.get('pine')).toBe('Pine Gate');
    expect(inspections.fields.get('last_waterbody')?.codes).toEqual(['tarn']);
    expect(values(inspections, 'setting').slice(1, 3)).toEqual(['launch', 'roadside']);
  });

  it('refuse a field that is not there', () => {
    expect(() => inspections.column('colour')).toThrow('no field colour');
  });
});

describe('looks in the book', () => {
  const book = openBook(
    smallRecords({
      stations: [elkPoint],
      inspections: ['a', 'b', 'c', 'd', 'e'].map((number) => inspection(number)),
      checks: [
        look('b', 'propeller', 'clean'),
        look('b', 'bunks', 'clean', 'port'),
        look('b', 'bunks', 'not checked', 'starboard'),
        look('a', 'bunks', 'mussels', 'port'),
        look('a', 'bunks', 'mussels', 'starboard', { abundance: 'trace' }),
        look('a', 'bilge', 'absent'),
        look('c', 'bilge', 'not checked'),
        look('d', 'bilge', 'mussels', 'none', { stage: null }),
      ],
      rechecks: [look('a', 'bunks', 'clean', 'port', { inspector: 'second' })],
    }),
    smallSum(null),
  );

  it('keep absent, not checked, clean and fouled apart', () => {
    const checks = table(book, 'checks');
    expect(values(checks, 'looked')).toEqual(['yes', 'yes', 'no', 'yes', 'yes', null, 'no', 'yes']);
    expect(values(checks, 'settled')).toEqual(['no', 'no', null, 'yes', 'yes', null, null, 'yes']);
  });

  it('carry the fields of their inspection and of the part catalogue', () => {
    const checks = table(book, 'checks');
    expect(values(checks, 'season')).toEqual(Array(8).fill(2025));
    expect(values(checks, 'area').slice(0, 3)).toEqual(['propulsion', 'trailer', 'trailer']);
    expect(values(checks, 'hidden').slice(0, 6)).toEqual(['no', 'no', 'no', 'no', 'no', 'yes']);
    expect(values(table(book, 'rechecks'), 'inspector')).toEqual(['second']);
    expect(values(table(book, 'rechecks'), 'outcome')).toEqual(['cleared']);
  });

  it('sum up on their inspection, where not checked is not clean', () => {
    const inspections = table(book, 'inspections');
    expect(values(inspections, 'parts_looked')).toEqual([1, 2, 0, 1, null]);
    expect(values(inspections, 'parts_fouled')).toEqual([1, 0, null, 1, null]);
    expect(values(inspections, 'mussels_on_parts')).toEqual(['yes', 'no', null, 'yes', null]);
    expect(values(inspections, 'established')).toEqual(['yes', 'no', null, null, null]);
  });

  it('tell nothing of established mussels where stage and number were never written down', () => {
    const open = { stage: null, abundance: null };
    const told = (second: Parameters<typeof look>[4], finding: 'mussels' | 'clean' = 'mussels') => {
      const checks = [look('a', 'bunks', finding, 'port', open), look('b', 'bunks', 'clean', 'port')];
      const inspections = ['a', 'b', 'c'].map((number) => inspection(number));
      if (second !== undefined) checks.push(look('c', 'bunks', 'mussels', 'port', second));
      const one = openBook(smallRecords({ stations: [elkPoint], inspections, checks }), smallSum(null));
      return values(table(one, 'inspections'), 'established');
    };
    expect(told(undefined)).toEqual([null, null, null]);
    // Once it is told of one craft it is known how the others were told of; without any mussels it is known as well.
    expect(told({ abundance: 'trace' })).toEqual([null, 'no', 'no']);
    expect(told(undefined, 'clean')).toEqual(['no', 'no', null]);
  });

  it('of an inspection that is not there are our own mistake', () => {
    const orphan = openBook(smallRecords({ checks: [look('z', 'bilge', 'clean')] }), smallSum(null));
    expect(() => table(orphan, 'checks').column('season')).toThrow('not kept');
  });
});

describe('waits in the book', () => {
  const wash = (number: string, more: Record<string, string | null>) => ({
    wash: number,
    inspection: 'a',
    ordered_at: '2025-06-01T18:00Z',
    ...more,
  });
  const washes = table(
    openBook(
      smallRecords({
        stations: [elkPoint],
        inspections: [inspection('a')],
        decontaminations: [
          wash('done', {
            started_at: '2025-06-01T18:10Z',
            finished_at: '2025-06-01T18:40Z',
            released_at: '2025-06-01T18:45Z',
            ending: 'released',
          }),
          wash('held', { started_at: '2025-06-01T18:20Z' }),
          wash('left', { released_at: '2025-06-01T18:30Z', ending: 'left unwashed' }),
          wash('left at no recorded time', { ending: 'left unwashed' }),
          wash('start not written down', { released_at: '2025-06-01T19:00Z', ending: 'released' }),
          wash('impossible', { started_at: '2025-06-01T17:00Z', released_at: '2025-06-01T19:00Z' }),
        ],
      }),
      smallSum('2025-06-01T20:00Z'),
    ),
    'decontaminations',
  );

  it('of a craft still held are open up to the cut-off', () => {
    expect(values(washes, 'wait').slice(0, 2)).toEqual(['ended 10', 'ended 20']);
    expect(values(washes, 'washing').slice(0, 2)).toEqual(['ended 30', 'open 100']);
    expect(values(washes, 'hold').slice(0, 2)).toEqual(['ended 5', 'unknown']);
    expect(values(washes, 'turnaround').slice(0, 2)).toEqual(['ended 45', 'open 120']);
  });

  it('end otherwise where the craft left unwashed', () => {
    expect(values(washes, 'wait').slice(2, 4)).toEqual(['otherwise 30', 'otherwise 120']);
    expect(values(washes, 'turnaround').slice(2, 4)).toEqual(['otherwise 30', 'otherwise 120']);
    expect(values(washes, 'washing').slice(2, 4)).toEqual(['unknown', 'unknown']);
  });

  it('are unknown where a moment was passed but not recorded, or the order is impossible', () => {
    expect(values(washes, 'wait').slice(4)).toEqual(['unknown', 'unknown']);
    expect(values(washes, 'turnaround').slice(4)).toEqual(['ended 60', 'ended 60']);
  });
});

describe('station-days in the book', () => {
  const book = openBook(
    smallRecords({
      stations: [elkPoint],
      station_days: [
        {
          station: 'elk',
          date: '2025-06-01',
          state: 'open',
          opened_at: '2025-06-01T14:00Z',
          closed_at: '2025-06-02T00:30Z',
        },
        { station: 'elk', date: '2025-06-02', state: 'open' },
        { station: 'elk', date: '2025-06-03', state: 'closed' },
      ],
      inspections: [
        inspection('a'),
        inspection('b', { started_at: '2025-06-04T18:00Z' }),
        inspection('c', { started_at: '2024-06-04T18:00Z' }),
        inspection('d'),
      ],
      checks: [look('d', 'bilge', 'clean'), look('b', 'bilge', 'clean')],
    }),
    smallSum(null),
  );

  it('are clusters also without inspections, and shared by all rows of that day', () => {
    expect([...table(book, 'station_days').clusterOf!]).toEqual([0, 1, 2]);
    expect([...table(book, 'inspections').clusterOf!]).toEqual([0, 3, 4, 0]);
    expect([...table(book, 'checks').clusterOf!]).toEqual([0, 3]);
    expect(table(book, 'spending').clusterOf).toBeNull();
    expect(book.clusters.count).toBe(5);
  });

  it('are drawn within station and season, and never an open day for a closed one', () => {
    expect([...book.clusters.stratumOf]).toEqual([0, 0, 1, 0, 2]);
  });

  it('have open hours only where both ends were recorded', () => {
    expect(values(table(book, 'station_days'), 'open_hours')).toEqual([10.5, null, null]);
    expect(values(table(book, 'station_days'), 'weekday')).toEqual(['Sunday', 'Monday', 'Tuesday']);
  });
});

describe('the import in the book', () => {
  const book = openBook(
    smallRecords({}),
    smallSum(null, {
      files: [
        {
          file: 'lakes/checks.csv',
          fingerprint: '',
          crosswalk: 'lakes',
          table: 'checks',
          read: 13,
          kept: 8,
          setAside: 2,
          leftOut: 3,
          missing: { finding: { blank: 5, 'not applicable': 1 }, found_by: { blank: 2 } },
          folded: 0,
          problems: { 'unknown-code': 2, 'not-a-date': 1 },
          notes: { 'one-side-only': 3 },
        },
      ],
    }),
  );

  it('is a table of files whose rows read are kept, set aside or left out', () => {
    const files = table(book, 'files');
    expect(['read', 'kept', 'set_aside', 'left_out'].map((name) => values(files, name)[0])).toEqual([13, 8, 2, 3]);
  });

  it('is a table of the reasons for which cells are missing', () => {
    const missing = table(book, 'missing_cells');
    expect(values(missing, 'field')).toEqual(['finding', 'finding', 'found_by']);
    expect(values(missing, 'reason')).toEqual(['blank', 'not applicable', 'blank']);
    expect(values(missing, 'times')).toEqual([5, 1, 2]);
  });

  it('is a table of problem kinds, those that set aside before those that note', () => {
    const problems = table(book, 'problems');
    expect(values(problems, 'code')).toEqual(['not-a-date', 'unknown-code', 'one-side-only']);
    expect(values(problems, 'severity')).toEqual(['sets aside', 'sets aside', 'notes']);
    expect(values(problems, 'times')).toEqual([1, 2, 3]);
  });
});
