import type { Element } from 'hast';
import { h } from 'hastscript';
import { definitionList, type Entry } from '../definition-list.js';
import type { PageResults } from '../results/page-results.js';
import type { Comparison } from './comparison.js';
import { comparisonWords as words } from './comparison-words.js';

/** The digits of a fingerprint that a reader compares by eye. */
const digits = 12;

/** What differs between two renderings that may move a value: records by file, program, choice and resampling. */
export function causesList(comparison: Comparison): Element {
  const { before, after } = comparison;
  const program = ({ program: { version, fingerprint } }: PageResults): string =>
    words.programIs(version, fingerprint.slice(0, digits));
  const choice = ({ chosen }: PageResults): string => (chosen.length === 0 ? words.allRecords : chosen.join(' '));
  const resampling = ({ seed, resamples }: PageResults): string => words.resamplingOf(seed, resamples);
  const differing = (term: string, said: (page: PageResults) => string): Entry[] =>
    said(before) === said(after) ? [] : [[term, words.programOf(said(before), said(after))]];
  return definitionList([
    [words.records, recordsSaid(comparison)],
    [
      words.program,
      before.program.fingerprint === after.program.fingerprint
        ? words.programSame
        : words.programOf(program(before), program(after)),
    ],
    ...differing(words.choice, choice),
    ...differing(words.resampling, resampling),
  ]);
}

function recordsSaid({ before, after, files }: Comparison): string | Element {
  if (before.records === after.records) return words.recordsSame;
  const said = [
    ...(before.asOf === after.asOf ? [] : [words.recordsUpTo(before.asOf, after.asOf)]),
    ...files.added.map(({ file, kept }) => words.fileAdded(file, kept)),
    ...files.removed.map(({ file, kept }) => words.fileRemoved(file, kept)),
    ...files.changed.map((file) => words.fileChanged(file.after.file, file.before.kept, file.after.kept)),
    ...(files.readOtherwise ? [words.readOtherwise] : []),
  ];
  return h(
    'ul',
    said.map((one) => h('li', [one])),
  );
}
