import { spawn } from 'node:child_process';

/** What one whole process took. */
export interface MeasuredRun {
  readonly seconds: number;
  /** Of all its threads together. */
  readonly cpuSeconds: number;
  readonly peakMegabytes: number;
}

const tellUsage = `
import { writeSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
if (isMainThread) process.on('exit', () => writeSync(3, JSON.stringify(process.resourceUsage())));`;

/** Runs a Node process from its start to its end, and measures it whole; throws when it fails, problems of the data apart. */
export function measuredRun(words: readonly string[]): Promise<MeasuredRun> {
  return new Promise((resolve, reject) => {
    const started = process.hrtime.bigint();
    const told = `data:text/javascript,${encodeURIComponent(tellUsage)}`;
    const child = spawn(process.execPath, ['--import', told, ...words], {
      stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
    });
    let mistakes = '';
    let usage = '';
    child.stderr?.on('data', (text) => {
      mistakes += text;
    });
    child.stdio[3]?.on('data', (text) => {
      usage += text;
    });
    child.on('error', reject);
    child.on('close', (code) => {
      const seconds = Number(process.hrtime.bigint() - started) / 1e9;
      // 1 tells of problems in what was read, such as a notebook that asks for what the load does not have.
      if ((code !== 0 && code !== 1) || usage === '') {
        reject(new Error(`${words.join(' ')} gave ${code}: ${mistakes}`));
        return;
      }
      const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(usage) as NodeJS.ResourceUsage;
      resolve({ seconds, cpuSeconds: (userCPUTime + systemCPUTime) / 1e6, peakMegabytes: maxRSS / 1024 });
    });
  });
}

/** The middle of some numbers. */
export function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
