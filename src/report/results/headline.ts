import { toString as plainText } from 'mdast-util-to-string';
import type { EvaluatedNotebook } from '../../notebook/evaluated.js';
import { showInterval, showNumber, showResult } from '../../notebook/shown.js';
import { inWords } from '../anchor.js';
import { inputText } from '../value-in-prose.js';
import { words } from '../words.js';

/**
 * A notebook in one sentence: the first of its prose that holds a figure, with every value and interval in its place; else its
 * first figure. Empty where it has no figures.
 */
export function headline(notebook: EvaluatedNotebook): string {
  for (const block of notebook.blocks) {
    if (block.kind !== 'prose') continue;
    const sentences = plainText(block.node)
      .replace(/\s+/g, ' ')
      .split(/(?<=[.!?])\s/);
    const found = sentences.find((sentence) => namesIn(sentence).some((name) => notebook.figures.has(name)));
    if (found !== undefined)
      return found.replace(/\{([^{}]*)\}/g, (whole, name: string) => said(name, notebook) ?? whole);
  }
  const [first] = notebook.figures.keys();
  return first === undefined ? '' : `${inWords(first)}: ${said(first, notebook)}`;
}

function namesIn(sentence: string): string[] {
  return [...sentence.matchAll(/\{([^{}]*)\}/g)].map(([, name]) => name!.trim());
}

function said(written: string, { figures, inputs, selections }: EvaluatedNotebook): string | null {
  const name = written.trim();
  const figure = figures.get(name);
  if (figure !== undefined) {
    const { result, shownAs } = figure;
    const beside = showInterval(result, shownAs) || ('why' in result ? (result.why ?? '') : '');
    return beside === '' ? showResult(result, shownAs) : `${showResult(result, shownAs)} (${beside})`;
  }
  const input = inputs.get(name);
  if (input !== undefined) return inputText(input.value, input.unit);
  const selection = selections.get(name);
  if (selection === undefined) return null;
  return selection.rows === null ? words.withheld : showNumber(selection.rows, 'whole', '');
}
