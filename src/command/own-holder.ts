import { hostname } from 'node:os';
import type { OwnHolder } from '../store/holder.js';

/** This run as the holder of a store: its process, its machine, and the moment. */
export function ownHolder(): OwnHolder {
  return { process: process.pid, host: hostname(), since: new Date().toISOString(), isRunning };
}

/** Whether a process of this machine runs; one that belongs to somebody else does. */
function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (mistake) {
    return mistake instanceof Error && 'code' in mistake && mistake.code === 'EPERM';
  }
}
