import { ASYMMETRIC_MATCHERS_OBJECT, chai, JestAsymmetricMatchers, JestChaiExpect, JestExtend } from '@vitest/expect';

/** One test of a file, to be run as often as wanted. */
export interface Case {
  readonly name: string;
  readonly run: () => unknown;
}

for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers]) chai.use(plugin);
const asymmetric = (globalThis as unknown as Record<symbol, object>)[ASYMMETRIC_MATCHERS_OBJECT];
const expect = Object.assign(
  (found: unknown, message?: string) => chai.expect(found, message),
  chai.expect,
  asymmetric,
);

let found: Case[] = [];
let first: (() => unknown)[] = [];
let within: readonly string[] = [];

/** What was given to a test or a group of them: its name, its body and, anywhere between, settings that do not matter here. */
type Declared = readonly [string, ...unknown[]];

const bodyOf = (given: Declared) =>
  given.find((one) => typeof one === 'function') as (...row: readonly unknown[]) => unknown;

function one(...given: Declared): void {
  const body = bodyOf(given);
  found.push({ name: [...within, given[0]].join(' › '), run: () => body() });
}

function group(...given: Declared): void {
  const outer = within;
  within = [...outer, given[0]];
  bodyOf(given)();
  within = outer;
}

/** The same for every row, which is spread where it is a list. */
const forEach =
  (declare: (...given: Declared) => void) =>
  (rows: readonly unknown[]) =>
  (...given: Declared) => {
    const body = bodyOf(given);
    rows.forEach((row, at) => {
      declare(`${given[0]} (${at + 1})`, () => (Array.isArray(row) ? body(...row) : body(row)));
    });
  };

const it = Object.assign(one, { each: forEach(one) });

/** What a test file gets in place of the runner: enough for the tests of statistics and of the language, which need no more. */
export const inPlaceOfRunner = {
  it,
  test: it,
  describe: Object.assign(group, { each: forEach(group) }),
  beforeAll: (prepare: () => unknown) => first.push(prepare),
  expect,
} as unknown as Pick<typeof import('vitest'), 'it' | 'test' | 'describe' | 'beforeAll' | 'expect'>;

/** The tests that a file declares while it is loaded, ready to be run. */
export async function declaredBy(load: () => void): Promise<readonly Case[]> {
  found = [];
  first = [];
  within = [];
  load();
  for (const prepare of first) await prepare();
  return found;
}
