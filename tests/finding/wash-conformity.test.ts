import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { contactEstimate } from '../../src/finding/contact-estimate.js';
import { washConformity } from '../../src/finding/wash-conformity.js';
import { ask, cells } from './read-finding.js';
import { elkPoint, inspection, type SmallRow, smallRecords, smallSum } from './small-records.js';

const wash = (number: string, more: SmallRow = {}): SmallRow => ({
  wash: number,
  inspection: 'a',
  ordered_at: '2025-06-01T18:00Z',
  started_at: '2025-06-01T18:10Z',
  finished_at: '2025-06-01T18:30Z',
  method: 'hot spray',
  ...more,
});

describe('wash conformity', () => {
  const washes = [
    wash('1', { contact_temp_f: 140, contact_seconds: 12 }),
    wash('2', { contact_temp_f: 139.9, contact_seconds: 9 }),
    // Not recorded, with an estimate: 200 − 30 to 200 − 25 lies above 140; 167 − 30 to 167 − 25 across; 150 below.
    wash('3', { nozzle_temp_f: 200, stand_off_ft: 1 }),
    wash('4', { nozzle_temp_f: 167, stand_off_ft: 1 }),
    wash('5', { nozzle_temp_f: 150, stand_off_ft: 1 }),
    wash('6'),
    wash('7', { method: 'hand removal' }),
    wash('8', { finished_at: null, contact_temp_f: 150 }),
    wash('9', { method: null, contact_temp_f: 150 }),
    wash('10', { method: 'flush', flush_exit_temp_f: 141 }),
  ];
  const records = smallRecords({ stations: [elkPoint], inspections: [inspection('a')], decontaminations: washes });
  const book = openBook(records, smallSum(null));

  it('judges nothing unless a table is named', () => {
    const found = ask(washConformity, book);
    expect(found.rows).toEqual([]);
    expect(found.said?.[0]).toContain('No table was selected, so nothing is judged.');
  });

  it('tells met, short and not recorded apart, and estimates from all three', () => {
    const found = ask(washConformity, book, [], undefined, { standard: 'western hull 2016' });
    const names = ['washes', 'met', 'short', 'not_recorded', 'estimated_above', 'estimated_across', 'estimated_below'];
    expect(cells(found, 'asked', ...names)).toEqual([
      ['contact, degrees F at least 140', 6, 1, 1, 4, 1, 1, 1],
      ['contact, seconds at least 10', 6, 1, 1, 4, null, null, null],
      ['flush exit, degrees F at least 140', 1, 1, 0, 0, null, null, null],
    ]);
    expect(cells(found, 'met_share', 'recorded_share')[0]).toEqual([0.5, expect.closeTo(2 / 6, 12)]);
    expect(found.leftOut).toEqual(['1 wash has no recorded end: left out.', '1 finished wash has no method recorded.']);
    expect(found.said?.[0]).toMatch(/second-hand.*not advice/);
  });

  it('says a contact temperature from nozzle and distance as a range', () => {
    // A loss of 25 to 30 °F a foot: common practice, no source.
    expect(contactEstimate(170, 2)).toEqual({ low: 110, high: 120 });
  });
});
