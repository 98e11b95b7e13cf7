import type { PageResults } from '../results/page-results.js';
import type { ChangedFiles } from './comparison.js';

/** Which source files came, went or changed; a file that stayed the same may still give other rows under another crosswalk. */
export function changedFiles(before: PageResults, after: PageResults): ChangedFiles {
  const was = new Map(before.files.map((file) => [file.file, file]));
  const is = new Map(after.files.map((file) => [file.file, file]));
  const changed = after.files.flatMap((file) => {
    const former = was.get(file.file);
    return former === undefined || former.fingerprint === file.fingerprint ? [] : [{ before: former, after: file }];
  });
  const added = after.files.filter(({ file }) => !was.has(file));
  const removed = before.files.filter(({ file }) => !is.has(file));
  const readOtherwise = before.records !== after.records && added.length + removed.length + changed.length === 0;
  return { added, removed, changed, readOtherwise };
}
