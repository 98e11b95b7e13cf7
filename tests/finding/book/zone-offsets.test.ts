import { describe, expect, it } from 'vitest';
import { zoneOffsets } from '../../../src/finding/book/zone-offsets.js';

const hours = (zone: string, moment: string): number => {
  const from = Date.parse('2024-01-01T00:00Z');
  const offsetAt = zoneOffsets(zone, from, Date.parse('2025-12-31T00:00Z'));
  return offsetAt!(Date.parse(moment)) / 3_600_000;
};

describe('zone offsets', () => {
  it('change at 02:00 local time on the second Sunday of March and the first of November', () => {
    // 15 U.S.C. 260a: in 2025 on 9 March and 2 November; mountain standard time is UTC−7.
    expect(hours('America/Denver', '2025-03-09T08:59:59Z')).toBe(-7);
    expect(hours('America/Denver', '2025-03-09T09:00:00Z')).toBe(-6);
    expect(hours('America/Denver', '2025-11-02T07:59:59Z')).toBe(-6);
    expect(hours('America/Denver', '2025-11-02T08:00:00Z')).toBe(-7);
  });

  it('hold still in a zone without summer time', () => {
    expect(hours('America/Phoenix', '2025-07-01T00:00Z')).toBe(-7);
  });

  it('may be asked for moments in any order', () => {
    const from = Date.parse('2024-01-01T00:00Z');
    const offsetAt = zoneOffsets('America/Denver', from, Date.parse('2025-12-31T00:00Z'))!;
    const winterAndSummer = ['2025-07-01', '2024-01-15', '2025-12-01', '2024-07-01'].map(
      (date) => offsetAt(Date.parse(date)) / 3_600_000,
    );
    expect(winterAndSummer).toEqual([-6, -7, -7, -6]);
  });

  it('of an unknown zone are null', () => {
    expect(zoneOffsets('Quillwater/Nowhere', 0, 1)).toBeNull();
  });
});
