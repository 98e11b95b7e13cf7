import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../../formula/result.js';
import type { Cell } from '../../notebook/document.js';
import type { EvaluatedNotebook } from '../../notebook/evaluated.js';
import { showNumber } from '../../notebook/shown.js';
import type { WrittenPart } from '../../notebook/written.js';
import { anchor, inWords } from '../anchor.js';
import { cellSlot, type Holds, slotElement } from './slot.js';
import { deskWords } from './words.js';
import { worthElement } from './worth.js';
import { type ProblemsByPlace, wrongElements } from './wrong.js';

/** The kinds of live tables whose rows stand one below the other. */
export type RowsKind = 'inputs' | 'selections' | 'figures';

/** The rows of a live table as they are written, each with its value: mistaken rows too, which have none. */
export function rowsPart(
  kind: RowsKind,
  { first, last, table }: WrittenPart,
  notebook: EvaluatedNotebook,
  problems: ProblemsByPlace,
): readonly Element[] {
  const [heads = [], ...rows] = table ?? [];
  const items = rows.map((cells, row) => {
    const at = (head: string): Cell | null => cells[heads.findIndex(({ text }) => text === head)] ?? null;
    const name = cells[0]!;
    return rowElement(rowContent(kind, { name, at, row, first, notebook }, problems), name, first, problems);
  });
  const above = problems.onLines(first, (rows[0]?.[0]?.line ?? last + 1) - 1);
  return [
    h('div', { className: ['lead'] }, [
      h('p', [deskWords.heads[kind]]),
      h('button', { type: 'button', className: ['arrange'], 'data-head-line': '0' }, [
        deskWords.arrange,
        h('span', { className: ['unseen'] }, [` “${inWords(rows[0]?.[0]?.text ?? kind)}”`]),
      ]),
    ]),
    ...wrongElements(above),
    h('ul', { className: ['rows', kind] }, items),
  ];
}

interface WrittenRow {
  readonly name: Cell;
  readonly at: (head: string) => Cell | null;
  readonly row: number;
  readonly first: number;
  readonly notebook: EvaluatedNotebook;
}

function rowElement(content: readonly Element[], name: Cell, first: number, problems: ProblemsByPlace): Element {
  const rest = wrongElements(problems.onLines(name.line, name.line));
  return h('li', { className: ['row'], 'data-line': String(name.line - first) }, [...content, ...rest]);
}

function rowContent(kind: RowsKind, written: WrittenRow, problems: ProblemsByPlace): readonly Element[] {
  const { name, at, row, first, notebook } = written;
  const label = inWords(name.text);
  const place = (cell: Cell | null, holds: Holds, words: string, empty: string, number: number): Element[] => {
    if (cell === null) return [];
    const shown =
      cell.text === ''
        ? [h('em', [empty])]
        : [holds === 'formula' || holds === 'rows' ? h('code', [cell.text]) : cell.text];
    const slot = cellSlot(cell, first, { holds, label: `${words} of ${label}`, shown, at: [row, number] });
    return [slotElement(slot), ...wrongElements(problems.inCell(cell))];
  };
  const plausible = (cell: Cell | null, before: string, words: string, number: number): Element[] => {
    return cell === null ? [] : [h('span', [before]), ...place(cell, 'value', words, deskWords.noLimit, number)];
  };
  const part = kind === 'inputs' ? 'input' : kind === 'selections' ? 'selection' : 'account';
  const nameSlot = cellSlot(name, first, { holds: 'name', label: deskWords.name, shown: [label], at: [row, 0] });
  const head = h('span', { className: ['called'], id: anchor(part, name.text) }, [
    slotElement(nameSlot),
    ...wrongElements(problems.inCell(name)),
  ]);
  if (kind === 'inputs') {
    return [
      head,
      h(
        'span',
        { className: ['worth', 'given'] },
        place(at('value'), 'value', deskWords.value, deskWords.noValueYet, 1),
      ),
      h('span', { className: ['how'] }, [
        ...place(at('unit'), 'unit', deskWords.unit, deskWords.noUnit, 2),
        ...place(at('source'), 'source', deskWords.source, deskWords.noSource, 3),
        ...plausible(at('low'), deskWords.plausible, deskWords.lowest, 4),
        ...plausible(at('high'), deskWords.plausibleTo, deskWords.highest, 5),
      ]),
    ];
  }
  if (kind === 'selections') {
    const selection = notebook.selections.get(name.text);
    const own = selection?.line === name.line && selection.problems.length === 0 ? selection : null;
    const rows =
      own === null || own.rows === null ? '' : deskWords.rowsOf(showNumber(own.rows, 'whole', ''), inWords(own.table));
    return [
      head,
      h('span', { className: ['worth'] }, [h('span', { className: ['shown'] }, [rows])]),
      h('span', { className: ['how'] }, place(at('rows'), 'rows', deskWords.records, deskWords.noFormula, 1)),
    ];
  }
  const figure = notebook.figures.get(name.text);
  const result: Result | null = figure?.line === name.line ? figure.result : null;
  return [
    head,
    worthElement(result, at('shown as')?.text ?? ''),
    h('span', { className: ['how'] }, [
      ...place(at('formula'), 'formula', deskWords.formula, deskWords.noFormula, 1),
      ...place(at('shown as'), 'shown as', deskWords.shownAs, deskWords.shownByKind, 2),
    ]),
  ];
}
