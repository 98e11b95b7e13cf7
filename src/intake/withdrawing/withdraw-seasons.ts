import { type Problem, wholeFile } from '../../problem/problem.js';
import type { Texts } from '../key-space.js';
import type { FileReading } from '../read-file.js';
import { fileSeasons } from './file-seasons.js';

/**
 * Which readings belong to withdrawn seasons, with their seasons. A file that holds rows of other seasons too can neither
 * stay nor go: it joins the problems.
 */
export function withdrawSeasons(
  readings: readonly FileReading[],
  withdrawn: ReadonlySet<number>,
  texts: Texts,
  problems: Problem[],
): ReadonlyMap<FileReading, readonly number[]> {
  const gone = new Map<FileReading, readonly number[]>();
  if (withdrawn.size === 0) return gone;
  for (const [reading, seasons] of fileSeasons(readings, texts)) {
    const inOrder = [...seasons].sort((a, b) => a - b);
    if (!inOrder.some((season) => withdrawn.has(season))) continue;
    if (inOrder.every((season) => withdrawn.has(season))) gone.set(reading, inOrder);
    else {
      problems.push({
        code: 'seasons-share-file',
        severity: 'stops',
        place: wholeFile(reading.file),
        seen: `rows of ${inOrder.join(', ')}`,
        wanted: `a file whose rows all belong to ${[...withdrawn].join(', ')}, or none`,
        remedy: 'Export its seasons apart, or withdraw all of them.',
      });
    }
  }
  return gone;
}
