import type { Element } from 'hast';
import { h } from 'hastscript';
import { showNumber } from '../notebook/shown.js';
import type { FileSum, ImportSum } from '../record/file-sum.js';
import { inWords } from './anchor.js';
import { mendedAndWithdrawn } from './mended-and-withdrawn.js';
import { ruleChanges } from './rule-changes.js';
import { type TableCell, tableElement } from './table.js';
import { words } from './words.js';

const whole = (value: number): TableCell => ({ content: showNumber(value, 'whole', ''), number: true, order: value });

/** What became of every row of every file: read = kept + set aside + left out by rule, with totals, and the reasons by their code. */
export function readingSum(sum: ImportSum): Element[] {
  if (sum.files.length === 0) return [h('p', [words.noFiles])];
  const total = totalOf(sum.files);
  const leavesOut = total.leftOut > 0;
  return [
    h('p', { className: ['sum'] }, [
      h('strong', [words.rowsReadKept(total.read, total.kept, total.setAside, total.leftOut)]),
      `. ${words.everyRow}`,
    ]),
    tableElement({
      id: 'files-read',
      caption: words.whatWasRead,
      heads: 1,
      head: [
        { content: words.file },
        { content: words.records },
        { content: words.read, number: true },
        { content: words.kept, number: true },
        { content: words.setAside, number: true },
        ...(leavesOut ? [{ content: words.leftOutByRule, number: true }] : []),
      ],
      rows: sum.files.map(({ file, table, read, kept, setAside, leftOut = 0 }) => [
        { content: [h('code', [file])] },
        { content: inWords(table) },
        whole(read),
        whole(kept),
        whole(setAside),
        ...(leavesOut ? [whole(leftOut)] : []),
      ]),
      foot: [
        { content: words.total },
        { content: '' },
        whole(total.read),
        whole(total.kept),
        whole(total.setAside),
        ...(leavesOut ? [whole(total.leftOut)] : []),
      ],
      sortable: sum.files.length > 1,
    }),
    ...mendedAndWithdrawn(sum),
    ...reasons(sum.files),
    ...(leavesOut ? [leftOutReasons(sum.files)] : []),
    ...ruleChanges(sum.ruleChanges ?? []),
  ];
}

function reasons(files: readonly FileSum[]): Element[] {
  const setsAside = addUp(files.map((file) => file.problems));
  const notes = addUp(files.map((file) => file.notes));
  const codes = [...new Set([...setsAside.keys(), ...notes.keys()])].sort();
  if (codes.length === 0) return [h('p', [words.nothingSetAside])];
  return [
    tableElement({
      id: 'reasons',
      caption: words.setAsideWhy,
      heads: 1,
      head: [
        { content: words.reason },
        { content: words.setsAside, number: true },
        { content: words.notes, number: true },
      ],
      rows: codes.map((code) => [
        { content: code.replaceAll('-', ' ') },
        whole(setsAside.get(code) ?? 0),
        whole(notes.get(code) ?? 0),
      ]),
      sortable: codes.length > 1,
    }),
    h('p', { className: ['note'] }, [words.severalReasons]),
  ];
}

function leftOutReasons(files: readonly FileSum[]): Element {
  const counts = addUp(files.map(({ leftOutBecause = {} }) => leftOutBecause));
  return tableElement({
    id: 'left-out-reasons',
    caption: words.leftOutWhy,
    heads: 1,
    head: [{ content: words.reason }, { content: words.leftOutByRule, number: true }],
    rows: [...counts].map(([because, times]) => [{ content: because }, whole(times)]),
    sortable: counts.size > 1,
  });
}

function addUp(counts: readonly Readonly<Record<string, number>>[]): Map<string, number> {
  const total = new Map<string, number>();
  for (const count of counts) {
    for (const [code, times] of Object.entries(count)) total.set(code, (total.get(code) ?? 0) + times);
  }
  return total;
}

function totalOf(files: readonly FileSum[]): { read: number; kept: number; setAside: number; leftOut: number } {
  const total = { read: 0, kept: 0, setAside: 0, leftOut: 0 };
  for (const file of files) {
    total.read += file.read;
    total.kept += file.kept;
    total.setAside += file.setAside;
    const leftOut = file.leftOut ?? 0;
    total.leftOut += leftOut;
    if (file.read !== file.kept + file.setAside + leftOut) throw new Error(`the rows of ${file.file} do not add up`);
  }
  return total;
}
