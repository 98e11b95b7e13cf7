import { type Problem, wholeFile } from '../problem/problem.js';

/** A full disk, a missing right or a file in the way as a problem; every other mistake is ours, and is thrown again. */
export function cannotWrite(where: string, mistake: unknown): Problem {
  if (!(mistake instanceof Error) || !('syscall' in mistake)) throw mistake;
  return {
    code: 'cannot-write',
    severity: 'stops',
    place: wholeFile(where),
    seen: mistake.message,
    wanted: 'a place that can be written to',
    remedy: 'Look at the rights and the space there; whatever was there before is as it was.',
  };
}
