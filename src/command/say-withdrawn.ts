import type { ImportResult } from '../intake/import-exports.js';
import { grouped, say } from './terminal.js';

/** Says which seasons are withdrawn from the store, and which files are left out for it. */
export function sayWithdrawn({ sum: { withdrawn } }: ImportResult): void {
  if (withdrawn === undefined) return;
  const { seasons, files } = withdrawn;
  const rows = files.reduce((sum, { read }) => sum + read, 0);
  say();
  // A file that gives several kinds of records stands once for each of them.
  const names = new Set(files.map(({ file }) => file));
  const told = `${names.size === 1 ? 'one file' : `${names.size} files`} with ${rows === 1 ? 'one row' : `${grouped(rows)} rows`}`;
  say(`Withdrawn until it is called back: ${seasons.join(', ')}; ${told} left out.`);
  for (const file of names) say(`  ${file}`);
}
