import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type Problem, wholeFile } from '../../problem/problem.js';
import type { Crosswalk } from '../crosswalk.js';
import { readAliasFile } from './read-alias-file.js';

/** A crosswalk with the aliases of the file it names, which lies beside it; its fingerprint then covers both. */
export async function withAliasFile(path: string, crosswalk: Crosswalk, problems: Problem[]): Promise<Crosswalk> {
  if (crosswalk.aliasFile === null) return crosswalk;
  const file = join(dirname(path), crosswalk.aliasFile);
  const bytes = await readFile(file).catch(() => null);
  if (bytes === null) {
    problems.push({
      code: 'no-such-file',
      severity: 'stops',
      place: wholeFile(path),
      seen: crosswalk.aliasFile,
      wanted: 'the file of aliases, beside the crosswalk',
      remedy: 'Put it there, or mend the path under aliases.',
    });
    return crosswalk;
  }
  const read = readAliasFile(file, bytes);
  problems.push(...read.problems);
  const { aliases } = read;
  const fingerprint = createHash('sha256').update(crosswalk.fingerprint).update(bytes).digest('hex');
  return { ...crosswalk, files: crosswalk.files.map((rule) => ({ ...rule, aliases })), fingerprint };
}
