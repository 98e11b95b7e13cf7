import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The checkout's folder. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

/** What a command line gave. */
export interface Ran {
  readonly exitCode: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs `rampbook` as a user would, from the checkout's folder. */
export function rampbook(words: readonly string[], environment: Readonly<Record<string, string>> = {}): Ran {
  const done = spawnSync(process.execPath, [join(root, 'bin/rampbook'), ...words], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, ...environment },
    maxBuffer: 256 * 1024 * 1024,
  });
  return { exitCode: done.status, out: done.stdout, err: done.stderr };
}

/** A new folder of its own for a test. */
export function newFolder(): string {
  return mkdtempSync(join(tmpdir(), 'rampbook-test-'));
}
