/** What can be wrong with one cell, as small numbers that the reading loop can hand about; 0 is nothing. */
export const fault = {
  none: 0,
  missingValue: 1,
  notANumber: 2,
  notAWholeNumber: 3,
  outOfRange: 4,
  notADate: 5,
  notATime: 6,
  noSuchLocalTime: 7,
  ambiguousLocalTime: 8,
  unknownCode: 9,
  doesNotMatch: 10,
  partlyMissing: 11,
  unknownPrefix: 12,
  unknownUnit: 13,
  notAsDeclared: 14,
} as const;

/** One of the faults of a cell, or none. */
export type Fault = (typeof fault)[keyof typeof fault];

/** The name of each fault's problem, by its number. */
export const faultCodes: readonly string[] = [
  '',
  'missing-value',
  'not-a-number',
  'not-a-whole-number',
  'out-of-range',
  'not-a-date',
  'not-a-time',
  'no-such-local-time',
  'ambiguous-local-time',
  'unknown-code',
  'does-not-match',
  'missing-value',
  'unknown-prefix',
  'unknown-unit',
  'not-as-declared',
];
