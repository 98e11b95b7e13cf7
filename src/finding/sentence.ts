/** A sentence about a count, none for none: `1 paper check is`, `12 paper checks are`, and what follows. */
export function sentence(count: number, one: string, many: string, rest: string): string[] {
  if (count === 0) return [];
  return [`${count} ${count === 1 ? one : many} ${rest}`];
}
