import { bestShifts } from '../allocation/best-shifts.js';
import { dividedShifts } from '../allocation/divided-shifts.js';
import { spreadPrice, yearsToPay } from '../money/spread-price.js';
import { replayWaits } from '../queue/replay.js';
import type { StatisticAccount } from './statistic-account.js';

/** Statistics of plans and of money over years. */
export const planAccounts: readonly StatisticAccount[] = [
  {
    name: 'Waits replayed',
    gives:
      'The wait of every arrival for the first unit that is free, with any number of units, for the same services.',
    formula:
      'wait = max(0, the first moment at which a unit is free − arrival); that unit is then taken for the service',
    source: 'Kiefer and Wolfowitz 1955, Trans Am Math Soc 78:1-18.',
    example: () => {
      const [arrivals, services] = [
        [0, 5, 7],
        [10, 10, 10],
      ] as const;
      const mean = (units: number): number =>
        replayWaits(arrivals, services, units).reduce((sum, own) => sum + own, 0) / 3;
      return {
        given: 'arrivals at 0, 5 and 7, ten minutes each',
        found: [
          ['one unit, mean wait', mean(1)],
          ['two units, mean wait', mean(2)],
        ],
      };
    },
  },
  {
    name: 'Whole shifts within a sum of hours',
    gives:
      'The shifts that bring most, where each further one in a place brings less; and what one hour more would bring.',
    formula: 'max Σ gain of taken shifts, Σ hours ≤ the sum; shadow price: gain by hours of the shift cut at the sum',
    source:
      'Bellman 1957, Dynamic Programming, chapter 1; Dantzig 1957, Operations Research 5:266-277; checked by HiGHS, Huangfu and Hall 2018, Math Prog Comp 10:119-142.',
    example: () => {
      const blocks = [
        { group: 0, size: 10, gains: [5, 3] },
        { group: 1, size: 8, gains: [3.2, 1] },
      ];
      const limits = { most: 22, groups: [0, 1].map(() => ({ least: 0, most: 22 })) };
      return {
        given: 'ten hours for 5 and then 3, eight hours for 3.2 and then 1; 22 hours',
        found: [
          ['whole shifts bring', bestShifts(blocks, limits).at(22)?.gain ?? null],
          ['divided ones', dividedShifts(blocks, limits)?.gain ?? null],
          ['one hour more', dividedShifts(blocks, limits)?.price ?? null],
        ],
      };
    },
  },
  {
    name: 'A price over its life, and years to break even',
    gives: 'The equal yearly amount that pays a price over its life; and after how many years savings have paid it.',
    formula: 'yearly = price × r ÷ (1 − (1 + r)^−life); years = −ln(1 − price × r ÷ saved) ÷ ln(1 + r)',
    source: 'Grant, Ireson and Leavenworth 1990, Principles of Engineering Economy, 8th ed., chapter 4.',
    example: () => ({
      given: '40,000 dollars, 8 years, 3 percent; 7,000 saved a year',
      found: [
        ['yearly', spreadPrice(40_000, 8, 0.03)],
        ['years', yearsToPay(40_000, 7_000, 0.03)],
      ],
    }),
  },
];
