import type { Element } from 'hast';
import { h } from 'hastscript';
import { showNumber } from '../notebook/shown.js';
import type { ImportSum } from '../record/file-sum.js';
import { words } from './words.js';

const whole = (count: number): string => showNumber(count, 'whole', '');

/** How many rows are as a person mended them, and which seasons were withdrawn with how many rows; nothing where none are. Fewer than `fewest` are “some”. */
export function mendedAndWithdrawn({ files, withdrawn }: ImportSum, fewest = 0): Element[] {
  const rowsTold = (count: number): string => (count < fewest ? words.someRows : whole(count));
  const mended = files.reduce((sum, file) => sum + (file.mended ?? 0), 0);
  const notes = mended > 0 ? [words.rowsMended(rowsTold(mended))] : [];
  if (withdrawn !== undefined) {
    const rows = withdrawn.files.reduce((sum, { read }) => sum + read, 0);
    notes.push(words.seasonsWithdrawn(withdrawn.seasons.join(', '), whole(withdrawn.files.length), rowsTold(rows)));
  }
  return notes.map((note) => h('p', { className: ['note'] }, [note]));
}
