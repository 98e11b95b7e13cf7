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
  const said = names.size === 1 ? '1 file' : `${names.size} files`;
  say(
    `Withdrawn until it is called back: ${seasons.join(', ')}; ${said} with ${grouped(rows)} rows ${names.size === 1 ? 'is' : 'are'} left out.`,
  );
  for (const file of names) say(`  ${file}`);
}
