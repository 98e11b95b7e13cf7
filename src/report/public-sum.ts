import type { Element } from 'hast';
import { h } from 'hastscript';
import { showNumber } from '../notebook/shown.js';
import type { ImportSum } from '../record/file-sum.js';
import { mendedAndWithdrawn } from './mended-and-withdrawn.js';
import { ruleChanges } from './rule-changes.js';
import { words } from './words.js';

/**
 * What became of all rows together, as a page for the public says it: no file, no reason, and no number of fewer rows than
 * `fewest`, nor one from which such a number would follow.
 */
export function publicSum(sum: ImportSum, fewest: number): Element[] {
  if (sum.files.length === 0) return [h('p', [words.noFiles])];
  const total = (of: (file: ImportSum['files'][number]) => number): number =>
    sum.files.reduce((rows, file) => rows + of(file), 0);
  const parts = [total(({ kept }) => kept), total(({ setAside }) => setAside), total(({ leftOut = 0 }) => leftOut)];
  const [kept, setAside, leftOut] = told(parts, fewest);
  return [
    h('p', { className: ['sum'] }, [
      h('strong', [
        words.publicSum(whole(total(({ read }) => read)), kept!, setAside!, parts[2] === 0 ? null : leftOut!),
      ]),
      `. ${words.publicRows}`,
    ]),
    ...mendedAndWithdrawn(sum, fewest),
    ...ruleChanges(sum.ruleChanges ?? []),
  ];
}

const whole = (value: number): string => showNumber(value, 'whole', '');

/** Numbers that add up to a known one, without any that is small, nor one from which a small one would follow. */
function told(parts: readonly number[], fewest: number): readonly string[] {
  const smallFirst = parts.map((_, at) => at).sort((one, other) => parts[one]! - parts[other]!);
  const hidden = smallFirst.filter((at) => parts[at]! > 0 && parts[at]! < fewest);
  const open = smallFirst.filter((at) => parts[at]! >= fewest);
  const rows = (): number => hidden.reduce((sum, at) => sum + parts[at]!, 0);
  while (hidden.length > 0 && (hidden.length < 2 || rows() < fewest) && open.length > 0) hidden.push(open.shift()!);
  return parts.map((part, at) => (hidden.includes(at) ? words.withheld : whole(part)));
}
