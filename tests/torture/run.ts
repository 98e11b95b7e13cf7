// npm run torture -- [KIND...] [--seconds N] [--seed N] [--count N]: each kind of trial in a process of its own, watched.
import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { kinds } from './kinds.js';
import type { Kind } from './trial.js';
import { runTrials, type Tally } from './trials.js';

type Told = { readonly began: number } | { readonly tally: Tally };

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: 'string', default: '40' },
    seed: { type: 'string', default: '1' },
    count: { type: 'string' },
    alone: { type: 'boolean', default: false },
  },
});
const chosen = kinds.filter(({ name }) => positionals.length === 0 || positionals.includes(name));
const first = Number(values.seed);
const countOf = (kind: Kind) => Number(values.count ?? Math.max(1, Math.round(kind.pace * Number(values.seconds))));

/** Runs a kind in a child; one that says nothing for longer than a trial may take is ended, and counts as hanging. */
function watched(kind: Kind): Promise<Tally> {
  const count = countOf(kind);
  const words = [kind.name, '--alone', '--seed', `${first}`, '--count', `${count}`];
  return new Promise((done) => {
    const child = fork(fileURLToPath(import.meta.url), words, { execArgv: process.execArgv });
    let seed = first;
    const failed = (what: string) => {
      done({ kind: kind.name, tried: seed - first, takenIn: 0, refused: 0, accounted: 0, failures: [{ seed, what }] });
    };
    const hangs = () => {
      child.kill('SIGKILL');
      failed(`no end within ${kind.patience} s`);
    };
    // Twice the patience for the first one, which has to load everything.
    let watch = setTimeout(hangs, kind.patience * 2000);
    child.on('message', (told: Told) => {
      clearTimeout(watch);
      if ('tally' in told) done(told.tally);
      else {
        seed = told.began;
        watch = setTimeout(hangs, kind.patience * 1000);
      }
    });
    child.on('exit', (code, signal) => {
      clearTimeout(watch);
      failed(`the process ended with ${code ?? signal}`);
    });
  });
}

if (values.alone) {
  const [kind] = chosen;
  // Each message is awaited, so that none is lost when the process ends, and the seed that hangs is the one last told.
  const tell = (told: Told) => new Promise<void>((done) => process.send!(told, () => done()));
  const tally = await runTrials(kind!, first, countOf(kind!), (seed) => tell({ began: seed }));
  await tell({ tally });
  process.disconnect();
} else {
  console.log(`Seeds from ${first}; Node ${process.versions.node}.\n`);
  console.log('| trials of | tried | taken in | refused with reasons | accounted for | failed | s |');
  console.log('|---|---|---|---|---|---|---|');
  let failed = 0;
  for (const kind of chosen) {
    const began = performance.now();
    const { tried, takenIn, refused, accounted, failures } = await watched(kind);
    const took = Math.round((performance.now() - began) / 1000);
    const counts = [tried, takenIn, refused].map((count) => count.toLocaleString('en-US'));
    const rows = `${accounted.toLocaleString('en-US')} ${kind.counted}`;
    console.log(`| ${[kind.name, ...counts, rows, failures.length, took].join(' | ')} |`);
    failed += failures.length;
    for (const { seed, what } of failures.slice(0, 5)) {
      console.error(
        `\n${kind.name}, seed ${seed} (npm run torture -- ${kind.name} --seed ${seed} --count 1):\n${what}\n`,
      );
    }
  }
  console.log(failed === 0 ? '\nNothing lost, nothing leaked, no crash, no hang.' : `\n${failed} trials failed.`);
  process.exitCode = failed === 0 ? 0 : 1;
}
