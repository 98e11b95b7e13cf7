import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { News, Order, Plan } from './trial-process.js';

/** What became of a change: `unrun` where no test comes by it. */
export type Outcome = 'noticed' | 'too long' | 'missed' | 'unrun';

/**
 * Tries changes with the bundled test files, in one process that is replaced where a change ends it or keeps it from ending:
 * three times what a file's tests took unchanged, and 5 s, are waited for. Throws where a test fails without any change.
 */
export async function triedChanges(
  files: readonly string[],
  changes: readonly string[],
  shown: (done: number) => void,
): Promise<ReadonlyMap<string, Outcome>> {
  const outcomes = new Map<string, Outcome>();
  let plan: Plan | undefined;
  while (outcomes.size < changes.length) {
    const rest = changes.filter((change) => !outcomes.has(change));
    const order: Order = { files, changes: rest, ...(plan === undefined ? {} : { plan }) };
    await new Promise<void>((done, failed) => {
      const child = fork(fileURLToPath(new URL('./trial-process.ts', import.meta.url)), {
        execArgv: ['--import', 'tsx'],
      });
      let watch: NodeJS.Timeout | undefined;
      let trying: string | undefined;
      child.on('message', (news: News) => {
        clearTimeout(watch);
        if (news.kind === 'plan') plan = news.plan;
        else if (news.kind === 'tried') {
          outcomes.set(news.change, plan?.[news.change] === undefined ? 'unrun' : news.outcome);
          shown(outcomes.size);
        } else {
          trying = news.change;
          watch = setTimeout(
            () => {
              outcomes.set(news.change, 'too long');
              child.kill('SIGKILL');
            },
            5000 + 3 * news.milliseconds,
          );
        }
      });
      child.on('exit', (code) => {
        clearTimeout(watch);
        if (code !== 0 && trying === undefined) failed(new Error(`the trials ended with ${code}`));
        // A change that brings the whole process down is noticed.
        if (code !== 0 && trying !== undefined && !outcomes.has(trying)) outcomes.set(trying, 'noticed');
        done();
      });
      child.send(order);
    });
  }
  return outcomes;
}
