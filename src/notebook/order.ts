/** Something with a name that needs others of its kind before it can be computed. */
export interface Needing {
  readonly name: string;
  readonly needs: readonly string[];
}

/** The order in which to compute, and each loop, named whole from its first member back to it. */
export interface Order {
  /** Every name that is not in a loop, each behind all that it needs; otherwise in the order given. */
  readonly names: readonly string[];
  readonly loops: readonly (readonly string[])[];
}

/** The order of need among items; names that are not items are taken as known. */
export function orderByNeed(items: readonly Needing[]): Order {
  const itemOf = new Map(items.map((item) => [item.name, item]));
  const state = new Map<string, 'open' | 'done' | 'looped'>();
  const names: string[] = [];
  const loops: string[][] = [];
  // An explicit stack: a chain of a thousand figures must not exhaust the call stack.
  for (const first of items) {
    if (state.has(first.name)) continue;
    const path: { readonly name: string; next: number }[] = [{ name: first.name, next: 0 }];
    state.set(first.name, 'open');
    while (path.length > 0) {
      const here = path.at(-1)!;
      const need = itemOf.get(here.name)!.needs[here.next++];
      if (need === undefined) {
        path.pop();
        if (state.get(here.name) === 'open') {
          state.set(here.name, 'done');
          names.push(here.name);
        }
        continue;
      }
      if (!itemOf.has(need)) continue;
      const seen = state.get(need);
      if (seen === undefined) {
        state.set(need, 'open');
        path.push({ name: need, next: 0 });
      } else if (seen !== 'done') {
        const from = path.findIndex(({ name }) => name === need);
        if (from < 0) continue;
        const loop = path.slice(from).map(({ name }) => name);
        loops.push([...loop, need]);
        for (const name of loop) state.set(name, 'looped');
      }
    }
  }
  return { names, loops };
}
