import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import type { FileRule } from './crosswalk.js';
import { heldFiles } from './held-files.js';
import { pathPattern } from './path-pattern.js';
import { holdsFiles } from './source/container.js';

/** Every file below a folder, as paths with forward slashes, in order of their code units; null where there is no such folder. */
export async function filesBelow(folder: string): Promise<readonly string[] | null> {
  const found: string[] = [];
  const waiting = [''];
  while (waiting.length > 0) {
    const below = waiting.pop()!;
    const entries = await readdir(join(folder, below), { withFileTypes: true }).catch(() => null);
    if (entries === null) {
      if (below === '') return null;
      continue;
    }
    for (const entry of entries) {
      const path = below === '' ? entry.name : `${below}/${entry.name}`;
      if (entry.isDirectory()) waiting.push(path);
      // A link to a file counts as the file; a link to a folder may lead in a circle and is not followed.
      else if ((await stat(join(folder, path)).catch(() => null))?.isFile()) found.push(path);
    }
  }
  return found.sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
}

/** The files that a rule's patterns name, each once; patterns that name none are problems. */
export async function filesOf(
  rule: FileRule,
  from: string,
  below: readonly string[],
): Promise<{ readonly files: readonly string[]; readonly problems: readonly Problem[] }> {
  const files = new Set<string>();
  const problems: Problem[] = [];
  for (const pattern of rule.patterns) {
    const expression = pathPattern(pattern);
    const known = problems.length;
    const held = await heldFiles(pattern, from, below, problems);
    const plain = below.filter((path) => expression.test(path) && !holdsFiles(path));
    for (const path of [...plain, ...held]) files.add(path);
    if (plain.length + held.length > 0 || problems.length > known) continue;
    const isFolder = (await stat(join(from, pattern)).catch(() => null))?.isDirectory() === true;
    if (isFolder) {
      problems.push({
        code: 'is-a-folder',
        severity: 'stops',
        place: wholeFile(pattern),
        seen: 'a folder',
        wanted: 'an exported file',
        remedy: `Name the files in it, such as ${pattern}/*.csv, in the crosswalk.`,
      });
    } else {
      problems.push({
        code: 'no-such-file',
        severity: 'stops',
        place: rule.place,
        seen: pattern,
        wanted: `a file below ${from}`,
        remedy: 'Put the export there, or mend the path in the crosswalk.',
      });
    }
  }
  return { files: [...files], problems };
}
