import type { NumberValue } from './evaluated.js';

const said = 'far more rows are left open than are counted: what a condition asks for is missing in them';

/** From so many rows left open for each that was counted, the number says little. Common practice, no source. */
const farMore = 10;

/**
 * The caution of a count, or of a share's cases, that what is missing could make many times larger; none for any other
 * number. It names no number, so that a page for the public may say it too.
 */
export function leftOpen(number: NumberValue): readonly string[] {
  // Rows behind a finding's number, which is neither, are looked up when its accounts are asked for.
  const count = number.shareOf?.cases ?? (number.counted === null ? null : number);
  const account = count?.accounts[0];
  return account !== undefined && account.unknown > account.rows.length * farMore ? [said] : [];
}

/** Whether a caution is that one, which must stand where its number stands. */
export function saysLeftOpen(caution: string): boolean {
  return caution === said;
}
