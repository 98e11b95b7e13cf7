import type { ImportResult } from '../intake/import-exports.js';
import { grouped, say } from './terminal.js';

/** Says how many of the kept rows are as a person mended them, and which mended rows no longer fit their files. */
export function sayMended({ store }: { readonly store: string }, { sum, mendedLost }: ImportResult): void {
  const kept = sum.files.reduce((total, { mended = 0 }) => total + mended, 0);
  if (kept > 0) {
    say();
    say(`${grouped(kept)} of the rows kept are as they were mended; they stand in ${store}/mended-rows.csv.`);
  }
  if (mendedLost.length === 0) return;
  say();
  say(`${grouped(mendedLost.length)} mended rows no longer count, since their files have changed or are gone:`);
  for (const { file, line } of mendedLost) say(`  ${file}:${line}`);
}
