import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../formula/result.js';
import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import { showInterval, showNumber, showResult } from '../notebook/shown.js';
import { nearestName } from '../problem/nearest.js';
import { anchor, inWords } from './anchor.js';
import { inputFormat } from './input-table.js';
import type { ValueInProse } from './prose.js';
import { words } from './words.js';

/** What stands for `{name}` in a sentence: the value with its interval, leading to its account. */
export function valueInProse(notebook: EvaluatedNotebook): ValueInProse {
  return (name) => {
    const figure = notebook.figures.get(name);
    if (figure !== undefined) return { shown: [standing('account', name, figure.result, figure.shownAs)] };
    const input = notebook.inputs.get(name);
    if (input !== undefined) return { shown: [standing('input', name, input.value, input.unit)] };
    const selection = notebook.selections.get(name);
    if (selection !== undefined) {
      return {
        shown: [
          link('selection', name, [selection.rows === null ? words.withheld : showNumber(selection.rows, 'whole', '')]),
        ],
      };
    }
    const nearest = nearestName(name, [
      ...notebook.figures.keys(),
      ...notebook.inputs.keys(),
      ...notebook.selections.keys(),
    ]);
    return {
      problem: {
        code: 'unknown-name',
        severity: 'sets aside',
        seen: name,
        wanted: 'the name of a figure, an input or a selection',
        remedy: nearest === null ? 'Name one of this notebook’s figures.' : `Did you mean "${nearest}"?`,
      },
    };
  };
}

function standing(part: 'account' | 'input', name: string, result: Result, shownAs: string): ElementContent {
  const shown = part === 'input' ? inputText(result, shownAs) : showResult(result, shownAs);
  const interval = showInterval(result, shownAs);
  if (result.kind === 'problem') return h('mark', [link(part, name, [`${inWords(name)}: ${shown}`])]);
  const why = whyText(result);
  const beside = interval !== '' ? ` (${interval})` : why === '' ? '' : ` (${why})`;
  return link(part, name, [h('span', { className: ['shown'] }, [shown]), beside]);
}

function whyText(result: Result): string {
  if (result.kind === 'missing') return result.withheld === true ? '' : result.why;
  if (result.kind !== 'number' || result.why === null) return '';
  // The value leads to its account, which says why.
  return result.value === null ? result.why : words.intervalMissing;
}

/** An input as a sentence shows it: its number with its unit. */
export function inputText(result: Result, unit: string): string {
  if (result.kind !== 'number' || result.value === null) return showResult(result, '');
  const format = inputFormat(unit);
  if (format !== '' || unit === '') return showResult(result, format);
  return `${showNumber(result.value, '', '')} ${unit}`;
}

function link(part: string, name: string, children: (string | ElementContent)[]): ElementContent {
  return h('span', { className: ['value'] }, [h('a', { href: `#${anchor(part, name)}` }, children)]);
}
