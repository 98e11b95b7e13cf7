import { expect, test } from 'vitest';
import { mark } from '../privacy/planted-exports.js';
import { kinds } from './kinds.js';
import { isLeaked } from './planted-season.js';
import { hold } from './trial.js';
import { runTrials } from './trials.js';

/** How many trials of each kind fit into a few seconds; whole processes are killed only by hand, with `npm run torture`. */
const few: Readonly<Record<string, number>> = {
  exports: 16,
  crosswalks: 30,
  notebooks: 3,
  formulas: 800,
  archives: 30,
  stores: 8,
  disk: 3,
};

for (const kind of kinds.filter(({ name }) => name in few)) {
  test(`spoilt ${kind.name}: nothing lost, nothing leaked, no crash, no hang`, async () => {
    const tally = await runTrials(kind, 1, few[kind.name]!);
    expect(tally.failures).toEqual([]);
    expect(tally.takenIn + tally.refused).toBe(few[kind.name]);
    expect(tally.accounted).toBeGreaterThan(0);
  });
}

test('a trial that fails is told with its seed, and the others go on', async () => {
  const kind = {
    ...{ name: 'odd', counted: 'rows', patience: 1, pace: 1 },
    run: async (random: { readonly below: (count: number) => number }) => {
      hold(random.below(2) === 0, () => 'an odd one');
      return { ended: 'taken in', accounted: 1 } as const;
    },
  };
  const { tried, takenIn, failures } = await runTrials(kind, 1, 40);
  expect(tried).toBe(40);
  expect(failures.length).toBeGreaterThan(5);
  expect(takenIn + failures.length).toBe(40);
  expect(failures[0]!.what).toContain('an odd one');
  expect([isLeaked({ seen: [`an ${mark.toUpperCase()}`] }), isLeaked({ seen: 'withheld' })]).toEqual([true, false]);
});
