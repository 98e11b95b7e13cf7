import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { linesBetween, linesOf } from '../../notebook/edit/text-lines.js';
import type { Block, EvaluatedNotebook } from '../../notebook/evaluated.js';
import type { ReadNotebook } from '../../notebook/read-document.js';
import type { WrittenPart } from '../../notebook/written.js';
import { writtenIn } from '../../record/written-numbers.js';
import { headingsOf, isTitle } from '../heading-ids.js';
import type { DrawFigure } from '../page-parts.js';
import { proseElements } from '../prose.js';
import { valueInProse } from '../value-in-prose.js';
import { blockPart } from './block-part.js';
import { rowsPart } from './rows-part.js';
import { sheetPart } from './sheet-part.js';
import { deskWords } from './words.js';
import { ProblemsByPlace, wrongElements } from './wrong.js';

/** One part of the desk: where it begins in the text, and how it looks. */
export interface DeskPart {
  /** Unique on the desk. */
  readonly key: string;
  readonly kind: Block['kind'] | 'settings' | 'rest';
  readonly first: number;
  readonly last: number;
  readonly elements: readonly ElementContent[];
}

/** A notebook's parts in their order, each to be read and changed where it stands, with its problems in it, in the notebook's locale. */
export function deskParts(
  text: string,
  read: ReadNotebook,
  notebook: EvaluatedNotebook,
  draw: DrawFigure,
): readonly DeskPart[] {
  return writtenIn(notebook.locale, () => partsInLocale(text, read, notebook, draw));
}

function partsInLocale(
  text: string,
  read: ReadNotebook,
  notebook: EvaluatedNotebook,
  draw: DrawFigure,
): readonly DeskPart[] {
  const problems = new ProblemsByPlace(notebook.problems);
  const lines = linesOf(text);
  // By kind and number, not by name or text: a part that is being renamed or rewritten must stay the same part.
  const numbers = new Map<string, number>();
  const numbered = (kind: string): string => {
    const number = (numbers.get(kind) ?? 0) + 1;
    numbers.set(kind, number);
    return `${kind}-${number}`;
  };
  const parts = notebook.blocks.map((block, at): DeskPart => {
    const written = read.written[at]!;
    const source = linesBetween(lines, written.first, written.last);
    const { first, last } = written;
    const elements = blockElements(block, source, written, notebook, problems, draw);
    return { key: numbered(block.kind), kind: block.kind, first, last, elements };
  });
  const head = settingsPart(read, lines, problems);
  const rest = wrongElements(problems.rest());
  return [
    ...(head === null ? [] : [head]),
    ...parts,
    ...(rest.length === 0 ? [] : [{ key: 'rest', kind: 'rest' as const, first: 0, last: 0, elements: rest }]),
  ];
}

function settingsPart(
  { head }: ReadNotebook,
  lines: ReturnType<typeof linesOf>,
  problems: ProblemsByPlace,
): DeskPart | null {
  if (head === null || head.last - head.first < 2) return null;
  const source = linesBetween(lines, head.first + 1, head.last - 1);
  const shown = [h('p', { className: ['note'] }, [`${deskWords.settings}: ${source.split('\n').join('; ')}`])];
  const wrong = wrongElements(problems.onLines(head.first, head.last));
  const elements = [blockPart('settings', source, shown, 1), ...wrong];
  return { key: 'settings', kind: 'settings', first: head.first, last: head.last, elements };
}

function blockElements(
  block: Block,
  source: string,
  written: WrittenPart,
  notebook: EvaluatedNotebook,
  problems: ProblemsByPlace,
  draw: DrawFigure,
): readonly ElementContent[] {
  const { first, last } = written;
  switch (block.kind) {
    case 'inputs':
    case 'selections':
    case 'figures':
      return rowsPart(block.kind, written, notebook, problems);
    case 'sheet': {
      const sheet = notebook.sheets.get(block.name);
      const sentence = source.split('\n').slice(0, sentenceLines(written)).join('\n').trimEnd();
      return sheet?.line === first || sheet?.sentence === sentence
        ? sheetPart(sheet, sentence, written, problems)
        : [blockPart('prose', sentence, [h('p', [sentence])]), ...wrongElements(problems.onLines(first, last))];
    }
    case 'chart': {
      const { element } = draw(block.chart, notebook);
      return [chartBlock(element, source), ...wrongElements(problems.onLines(first, last))];
    }
    case 'prose': {
      const wrong = wrongElements(problems.onLines(first, last));
      if (block.node.type !== 'heading') {
        const { elements } = proseElements(notebook.file, block.node, valueInProse(notebook));
        return [blockPart('prose', source, elements), ...wrong];
      }
      return [blockPart('heading', source, headingElements(block.node, notebook)), ...wrong];
    }
  }
}

// A drawing that stays the same stays in the same part, so that it is written out once.
const chartBlocks = new WeakMap<Element, { readonly source: string; readonly block: Element }>();

function chartBlock(drawn: Element, source: string): Element {
  const kept = chartBlocks.get(drawn);
  if (kept?.source === source) return kept.block;
  const block = blockPart('chart', source, [drawn]);
  chartBlocks.set(drawn, { source, block });
  return block;
}

/** How many lines of a sheet's part its sentence takes: those before the table of its columns. */
function sentenceLines({ first, last, table }: WrittenPart): number {
  return (table?.[0]?.[0]?.line ?? last + 1) - first;
}

function headingElements(
  node: Extract<Extract<Block, { kind: 'prose' }>['node'], { type: 'heading' }>,
  notebook: EvaluatedNotebook,
): readonly ElementContent[] {
  if (isTitle(node, notebook)) return [h('h1', [notebook.title])];
  const { elements } = proseElements(notebook.file, node, valueInProse(notebook));
  const id = headingsOf(notebook).get(node)?.id;
  return elements.map((element) =>
    element.type === 'element' && id !== undefined
      ? { ...element, properties: { ...element.properties, id } }
      : element,
  );
}
