import { writtenNumber } from '../record/written-numbers.js';

/** A sentence about a count, none for none: `1 paper check is` or `1,200 paper checks are`, and what follows. */
export function sentence(count: number, one: string, many: string, rest: string): string[] {
  if (count === 0) return [];
  return [`${writtenNumber(String(count))} ${count === 1 ? one : many} ${rest}`];
}
