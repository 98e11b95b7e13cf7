import type { Element } from 'hast';
import { h } from 'hastscript';
import type { EvaluatedInput, EvaluatedSelection } from '../notebook/evaluated.js';
import { showNumber, showResult } from '../notebook/shown.js';
import { anchor, inWords } from './anchor.js';
import type { LivePage } from './page-context.js';
import { problemBox } from './problem-box.js';
import { type TableCell, tableElement } from './table.js';
import { words } from './words.js';

/**
 * The inputs of one table of the notebook, with the unit and the source of each. On a page that can count again each stands
 * in a field of its own, but for the years, which are chosen above.
 */
export function inputTable(inputs: readonly EvaluatedInput[], live?: Pick<LivePage, 'inputs' | 'years'>): Element {
  const ranged = inputs.some(({ range }) => range !== undefined);
  return tableElement({
    id: anchor('inputs', inputs[0]?.name ?? 'none'),
    caption: words.inputs,
    heads: 1,
    head: [
      { content: words.input },
      { content: words.value, number: true },
      ...(ranged ? [{ content: words.plausible }] : []),
      { content: words.unit },
      { content: words.source },
    ],
    rows: inputs.map((input) => [
      { content: [h('span', { id: anchor('input', input.name) }, [inWords(input.name)])] },
      live === undefined ? inputCell(input) : inputField(input, live),
      ...(ranged ? [{ content: input.range ?? '' }] : []),
      { content: input.unit },
      { content: input.source === '' ? words.noSource : input.source },
    ]),
  });
}

/** An input as it was decided; the words of its unit have a column of their own. */
function inputCell({ value, unit }: EvaluatedInput): TableCell {
  if (value.kind === 'problem') return { content: [problemBox(value.problems)] };
  if (value.kind !== 'number' || value.value === null) return { content: showResult(value, ''), number: true };
  return { content: showNumber(value.value, inputFormat(unit), value.unit), number: true };
}

function inputField(input: EvaluatedInput, { inputs, years }: Pick<LivePage, 'inputs' | 'years'>): TableCell {
  const written = inputs.get(input.name);
  if (written === undefined || input.value.kind === 'problem') return inputCell(input);
  if (years.some(({ name }) => name === input.name)) {
    return { content: [h('span', { dataInput: input.name }, [written])], number: true };
  }
  const field = h('input', {
    name: `with.${input.name}`,
    form: 'choice',
    value: written,
    size: Math.max(6, written.length + 1),
    readOnly: true,
    ariaLabel: inWords(input.name),
  });
  return { content: [field], number: input.value.kind === 'number' };
}

/** How an input of that unit is shown: a year without separators, a percentage as one, other numbers as they are. */
export function inputFormat(unit: string): string {
  return unit === 'year' || unit === 'percent' ? unit : '';
}

/** The selections of one table of the notebook: which rows each name stands for, and how many they are. */
export function selectionTable(selections: readonly EvaluatedSelection[]): Element {
  return tableElement({
    id: anchor('selections', selections[0]?.name ?? 'none'),
    caption: words.selections,
    heads: 1,
    head: [
      { content: words.selection },
      { content: words.formula },
      { content: words.table },
      { content: words.rows, number: true },
    ],
    rows: selections.map(({ name, formula, table, rows, problems }) => [
      { content: [h('span', { id: anchor('selection', name) }, [inWords(name)])] },
      { content: [h('code', [formula])] },
      { content: inWords(table) },
      problems.length > 0
        ? { content: [problemBox(problems)] }
        : rows === null
          ? { content: words.withheld, number: true }
          : { content: showNumber(rows, 'whole', ''), number: true, order: rows },
    ]),
  });
}
