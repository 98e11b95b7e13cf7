import type { Element } from 'hast';
import { h } from 'hastscript';
import { showNumber } from '../notebook/shown.js';
import type { FileSum, ImportSum } from '../record/file-sum.js';
import { inWords } from './anchor.js';
import { ruleChanges } from './rule-changes.js';
import { type TableCell, tableElement } from './table.js';
import { words } from './words.js';

const whole = (value: number): TableCell => ({ content: showNumber(value, 'whole', ''), number: true, order: value });

/** What became of every row of every file: read = kept + set aside, with totals, and the reasons by their code. */
export function readingSum(sum: ImportSum): Element[] {
  if (sum.files.length === 0) return [h('p', [words.noFiles])];
  const total = totalOf(sum.files);
  return [
    h('p', { className: ['sum'] }, [
      h('strong', [words.rowsReadKept(total.read, total.kept, total.setAside)]),
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
      ],
      rows: sum.files.map(({ file, table, read, kept, setAside }) => [
        { content: [h('code', [file])] },
        { content: inWords(table) },
        whole(read),
        whole(kept),
        whole(setAside),
      ]),
      foot: [{ content: words.total }, { content: '' }, whole(total.read), whole(total.kept), whole(total.setAside)],
      sortable: sum.files.length > 1,
    }),
    ...reasons(sum.files),
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

function addUp(counts: readonly Readonly<Record<string, number>>[]): Map<string, number> {
  const total = new Map<string, number>();
  for (const count of counts) {
    for (const [code, times] of Object.entries(count)) total.set(code, (total.get(code) ?? 0) + times);
  }
  return total;
}

function totalOf(files: readonly FileSum[]): { read: number; kept: number; setAside: number } {
  const total = { read: 0, kept: 0, setAside: 0 };
  for (const file of files) {
    total.read += file.read;
    total.kept += file.kept;
    total.setAside += file.setAside;
    if (file.read !== file.kept + file.setAside) throw new Error(`the rows of ${file.file} do not add up`);
  }
  return total;
}
