import { access, constants, readFile, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import type { Crosswalk, FileRule } from './crosswalk.js';
import { filesBelow, filesOf } from './exported-files.js';
import { readCrosswalk } from './read-crosswalk.js';
import { sheetDialect } from './read-dialect.js';
import { locate } from './source/container.js';
import { withAliasFile } from './waters/with-alias-file.js';

/** One file to be read, by one rule of one crosswalk. */
export interface Task {
  readonly file: string;
  readonly crosswalk: Crosswalk;
  readonly rule: FileRule;
  /** The rule's place in its crosswalk. */
  readonly ruleNumber: number;
  readonly bytes: number;
}

/** A problem that stops an import before a file is read. */
export function stop(code: string, file: string, seen: string, wanted: string, remedy: string): Problem {
  return { code, severity: 'stops', place: wholeFile(file), seen, wanted, remedy };
}

/** The crosswalks of those paths; whatever is wrong with them joins the problems. */
export async function readCrosswalks(paths: readonly string[], problems: Problem[]): Promise<readonly Crosswalk[]> {
  const crosswalks: Crosswalk[] = [];
  for (const path of paths) {
    const found = await stat(path).catch(() => null);
    if (found === null) {
      problems.push(stop('no-such-file', path, basename(path), 'a crosswalk', 'Look at the path.'));
    } else if (found.isDirectory()) {
      problems.push(stop('is-a-folder', path, 'a folder', 'a crosswalk', 'Name the file in it.'));
    } else {
      const read = readCrosswalk(path, await readFile(path, 'utf8'));
      problems.push(...read.problems);
      if (read.crosswalk !== null) crosswalks.push(await withAliasFile(path, read.crosswalk, problems));
    }
  }
  return crosswalks;
}

/** The files that the crosswalks name, in the order of crosswalks, rules and paths; what is missing joins the problems. */
export async function findTasks(
  from: string,
  crosswalks: readonly Crosswalk[],
  problems: Problem[],
): Promise<readonly Task[]> {
  const below = await filesBelow(from);
  if (below === null) {
    problems.push(stop('no-such-file', from, 'no folder', 'the folder of exports', 'Look at the path.'));
    return [];
  }
  const tasks: Task[] = [];
  for (const crosswalk of crosswalks) {
    for (const [ruleNumber, rule] of crosswalk.files.entries()) {
      const { files, problems: missing } = await filesOf(rule, from, below);
      problems.push(...missing);
      for (const file of files) {
        const located = await locate(from, file);
        const path = join(from, located.file);
        if (
          await access(path, constants.R_OK).then(
            () => false,
            () => true,
          )
        ) {
          problems.push(stop('unreadable-file', file, 'no right to read it', 'a readable file', 'Ask for the right.'));
          continue;
        }
        const { size } = await stat(path);
        const asRead = located.isWorkbook ? { ...rule, dialect: sheetDialect(rule.dialect) } : rule;
        tasks.push({ file, crosswalk, rule: asRead, ruleNumber, bytes: size });
      }
    }
  }
  return tasks;
}
