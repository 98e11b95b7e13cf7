import { seasons } from '../truth.js';
import { calendarDay } from './calendar.js';
import { randomStream } from './random.js';
import type { StationDay } from './station-days.js';
import { stations } from './stations.js';

/** An amount in the office's ledger, in dollars. */
export interface Spending {
  readonly entry: string;
  readonly year: number;
  readonly category: string;
  readonly station: string | null;
  readonly fund: string;
  readonly amount: number;
  readonly note: string;
  kept: boolean;
}

const funds = ['basin levy', 'launch sticker', 'matching grant'] as const;
const cents = (amount: number): number => Math.round(amount * 100) / 100;

/** The office's ledger for all seasons: wages by station and month as worked, then what else it takes. */
export function spendingOf(seed: number, days: readonly StationDay[]): Spending[] {
  const random = randomStream(seed, 'spending');
  const ledger: Spending[] = [];
  const book = (year: number, category: string, station: string | null, amount: number, note: string): void => {
    const entry = `E${String(year).slice(2)}-${String(ledger.length + 1).padStart(4, '0')}`;
    ledger.push({ entry, year, category, station, fund: random.pick(funds), amount: cents(amount), note, kept: true });
  };
  const wages = new Map<string, number>();
  for (const day of days) {
    const { year, month } = calendarDay(day.day);
    const key = `${year} ${month} ${day.station.station}`;
    wages.set(key, (wages.get(key) ?? 0) + (day.staffCost ?? 0));
  }
  for (const year of seasons) {
    for (let month = 3; month <= 11; month++) {
      for (const { station } of stations) {
        const paid = wages.get(`${year} ${month} ${station}`) ?? 0;
        if (paid > 0) book(year, 'personnel', station, paid * 1.18, `wages and benefits, month ${month}`);
        if (paid > 0) book(year, 'supplies', station, 90 + 260 * random.uniform(), 'fuel, filters, soap-free cleaner');
      }
    }
    for (const { station } of stations) {
      book(year, 'travel', station, 700 + 2600 * random.uniform(), 'vehicle and lodging');
      book(year, 'equipment', station, 400 + 3800 * random.uniform(), 'lights, mirrors, "borescope" camera');
      book(year, 'training', station, 250 + 700 * random.uniform(), 'course places, per person');
    }
    for (let quarter = 1; quarter <= 4; quarter++) {
      book(year, 'personnel', null, 41_000 + 6000 * random.uniform(), `office staff, quarter ${quarter}`);
      book(year, 'contracts', null, 9000 + 7000 * random.uniform(), 'station operator, data entry');
      book(year, 'indirect', null, 15_000 + 3000 * random.uniform(), `overhead, quarter ${quarter}`);
    }
    book(year, 'equipment', 'north-gate', -(800 + 900 * random.uniform()), 'refund: pump returned');
  }
  return ledger;
}
