// Tries changes one after the other in this process; run.ts starts it, and ends it where a change makes it run on for ever.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Script } from 'node:vm';
import { type Case, declaredBy, inPlaceOfRunner } from './small-runner.js';

/** What is asked of the process. */
export interface Order {
  /** Bundled test files, each by the path of its text. */
  readonly files: readonly string[];
  /** Which tests run which changes, as found by an earlier process; made first where there is none. */
  readonly plan?: Plan;
  readonly changes: readonly string[];
}

/** A test that runs a change. */
export interface Runs {
  readonly file: string;
  readonly test: number;
  /** How often the change is come by. */
  readonly times: number;
  readonly milliseconds: number;
}

/** The tests that run each change, the quickest file first. */
export type Plan = Readonly<Record<string, readonly Runs[]>>;

/** What the process tells. */
export type News =
  | { readonly kind: 'plan'; readonly plan: Plan }
  /** A change with the tests of one more file, which took so long unchanged and with all counted. */
  | { readonly kind: 'trying'; readonly change: string; readonly milliseconds: number }
  | { readonly kind: 'tried'; readonly change: string; readonly outcome: 'noticed' | 'too long' | 'missed' };

/** What the switches of the changes read and write. */
interface Switches {
  activeMutant: string | undefined;
  currentTestId: string | undefined;
  mutantCoverage: { static: Record<string, number>; perTest: Record<string, Record<string, number>> };
  hitCount: number | undefined;
  hitLimit: number | undefined;
}
const switches = {} as Switches;
Object.assign(globalThis, { __stryker__: switches });

const require = createRequire(import.meta.url);
const scripts = new Map<string, Script>();

/** A file ready to be run. Counting what is come by takes more time than anything else, and is left out where it can be. */
function scriptOf(file: string, counts: boolean): Script {
  const text = readFileSync(file, 'utf8');
  const body = counts ? text : text.replaceAll('function cover() {', 'function cover() { return;');
  return new Script(`(require) => {${body}}`, { filename: file });
}

/** Runs a file afresh and gives its tests. */
function loaded(file: string, counts = false): Promise<readonly Case[]> {
  const script = scripts.get(file) ?? scriptOf(file, counts);
  if (!counts) scripts.set(file, script);
  switches.currentTestId = undefined;
  switches.mutantCoverage = { static: {}, perTest: {} };
  return declaredBy(() => {
    script.runInThisContext()((name: string) => (name === 'vitest' ? inPlaceOfRunner : require(name)));
  });
}

/** Runs every test unchanged, which must hold, and puts down what each comes by. What loading comes by, all tests do. */
async function planned(files: readonly string[]): Promise<Plan> {
  const plan: Record<string, Runs[]> = {};
  for (const file of files) {
    const tests = await loaded(file, true);
    const took: number[] = [];
    for (const [test, { name, run }] of tests.entries()) {
      switches.currentTestId = `${test + 1}`;
      const begun = performance.now();
      try {
        await run();
      } catch (error) {
        throw new Error(`${file}: ${name} fails without any change`, { cause: error });
      }
      took[test] = performance.now() - begun;
    }
    const { static: loading, perTest } = switches.mutantCoverage;
    const changes = new Set([loading, ...Object.values(perTest)].flatMap((counts) => Object.keys(counts)));
    for (const change of changes) {
      for (const test of tests.keys()) {
        const times = (loading[change] ?? 0) + (perTest[test + 1]?.[change] ?? 0);
        if (times === 0) continue;
        plan[change] ??= [];
        plan[change].push({ file, test, times, milliseconds: took[test]! });
      }
    }
  }
  for (const runs of Object.values(plan)) {
    const whole = new Map<string, number>();
    for (const { file, milliseconds } of runs) whole.set(file, (whole.get(file) ?? 0) + milliseconds);
    runs.sort((one, other) => whole.get(one.file)! - whole.get(other.file)! || one.test - other.test);
  }
  return plan;
}

/** Tells news and waits until it has gone, since what comes next may never end. */
const tell = (news: News) => new Promise<void>((gone) => process.send!(news, undefined, undefined, () => gone()));

/** Loops that come by a change much more often than they would without it do not end. */
async function tried(change: string, runs: readonly Runs[]): Promise<'noticed' | 'too long' | 'missed'> {
  switches.activeMutant = change;
  switches.hitCount = 0;
  switches.hitLimit = Number.POSITIVE_INFINITY;
  let file: string | undefined;
  let tests: readonly Case[] = [];
  for (const { file: wanted, test, times } of runs) {
    let held = true;
    try {
      switches.hitCount = 0;
      switches.hitLimit = 2000 + 50 * times;
      if (file !== wanted) {
        const theirs = runs.filter((one) => one.file === wanted);
        await tell({ kind: 'trying', change, milliseconds: theirs.reduce((sum, one) => sum + one.milliseconds, 0) });
        tests = await loaded(wanted);
      }
      file = wanted;
      await tests[test]!.run();
    } catch {
      held = false;
    }
    if (switches.hitCount > switches.hitLimit) return 'too long';
    if (!held) return 'noticed';
  }
  return 'missed';
}

process.on('message', async ({ files, plan: known, changes }: Order) => {
  const plan = known ?? (await planned(files));
  if (known === undefined) await tell({ kind: 'plan', plan });
  // Keys of an object are the quickest to compare: every switch does it.
  const asKeys = new Map(Object.keys(plan).map((key) => [key, key]));
  for (const change of changes) {
    const runs = plan[change] ?? [];
    const outcome = await tried(asKeys.get(change) ?? change, runs);
    await tell({ kind: 'tried', change, outcome });
  }
  process.disconnect();
});
