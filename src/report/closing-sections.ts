import type { Element } from 'hast';
import { h } from 'hastscript';
import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import { writtenDays } from '../record/written-numbers.js';
import { inWords } from './anchor.js';
import { definitionChanges } from './definition-changes.js';
import { definitionList } from './definition-list.js';
import { fileName } from './file-name.js';
import { type Methods, methodList } from './methods.js';
import { methodsPageName } from './methods-page-name.js';
import { methodsWords } from './methods-words.js';
import type { PageContext } from './page-context.js';
import { publicSum } from './public-sum.js';
import { readingSum } from './reading-sum.js';
import { standingNotes, washCautions } from './standing-notes.js';
import { words } from './words.js';

/** A section that stands on every page after the notebook's own. */
export interface ClosingSection {
  readonly id: string;
  readonly text: string;
  readonly element: Element;
}

/** What every page says at its end: the sum of rows, changed definitions, definitions, methods, cautions, and its origin. */
export function closingSections(
  notebook: EvaluatedNotebook,
  context: PageContext,
  methods: Methods,
): readonly ClosingSection[] {
  const { sum, fewest } = context;
  return [
    closingSection('what-was-read', words.whatWasRead, fewest === undefined ? readingSum(sum) : publicSum(sum, fewest)),
    closingSection('changed-definitions', words.definitionChanges, [definitionChanges(sum.definitionChanges)]),
    closingSection('definitions', words.definitions, [noteList(standingNotes)]),
    closingSection('methods', words.methods, [methodList(methods), methodsLink()]),
    closingSection('cautions', words.cautions, [noteList([...washCautions, ...new Set(cautionsOf(notebook))])]),
    closingSection('provenance', words.provenance, provenance(notebook, context)),
  ];
}

/** A section under its head. */
export function closingSection(id: string, text: string, children: readonly Element[]): ClosingSection {
  return { id, text, element: h('section', { ariaLabelledBy: id }, [h('h2', { id }, [text]), ...children]) };
}

/** Where everything is defined: a page that stands beside this one. */
function methodsLink(): Element {
  return h('p', [h('a', { href: methodsPageName }, [methodsWords.link])]);
}

function noteList(notes: readonly string[]): Element {
  return h(
    'ul',
    notes.map((note) => h('li', [note])),
  );
}

/** The cautions that the notebook's figures carry, each with its figure; those of a sheet stand with its columns. */
function cautionsOf(notebook: EvaluatedNotebook): string[] {
  return [...notebook.figures.values()].flatMap(({ name, result }) =>
    result.kind === 'number' ? result.cautions.map((caution) => words.cautionOf(inWords(name), caution)) : [],
  );
}

function provenance(notebook: EvaluatedNotebook, { sum, program, date }: PageContext): Element[] {
  return [
    definitionList([
      [words.asOf, writtenDays(date)],
      [words.notebook, h('code', [fileName(notebook.file)])],
      [words.fingerprintOf.notebook, h('code', [notebook.fingerprint])],
      [words.fingerprintOf.records, h('code', [sum.fingerprint])],
      [words.program, `rampbook ${program.version}`],
      [words.fingerprintOf.program, h('code', [program.fingerprint])],
    ]),
    h('p', [words.samePage]),
  ];
}
