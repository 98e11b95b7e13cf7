import type { DifferentLine } from '../report/desk/desk-state.js';

const mostShown = 40;

/** The lines in which two texts differ, between the beginning and the end that they share; at most forty. */
export function differentLines(here: string, inFile: string | null): readonly DifferentLine[] {
  const [mine, theirs] = [here.split(/\r?\n/), inFile === null ? [] : inFile.split(/\r?\n/)];
  let start = 0;
  while (start < mine.length && start < theirs.length && mine[start] === theirs[start]) start++;
  let end = 0;
  while (
    end < mine.length - start &&
    end < theirs.length - start &&
    mine[mine.length - 1 - end] === theirs[theirs.length - 1 - end]
  ) {
    end++;
  }
  const count = Math.max(mine.length, theirs.length) - end - start;
  return Array.from({ length: Math.min(count, mostShown) }, (_, at): DifferentLine => {
    const line = start + at;
    return {
      line: line + 1,
      here: line < mine.length - end ? mine[line]! : null,
      inFile: line < theirs.length - end ? theirs[line]! : null,
    };
  }).filter(({ here: one, inFile: other }) => one !== other);
}
