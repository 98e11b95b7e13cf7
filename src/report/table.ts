import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';

/** What a cell of a page's table holds: text or elements. */
export type CellContent = string | readonly ElementContent[];

/** A cell. `number` cells stand right and are compared as numbers when a reader sorts; `order` is what they sort by. */
export interface TableCell {
  readonly content: CellContent;
  readonly number?: boolean;
  readonly order?: number | null;
  /** How many columns it takes, where that is more than one. */
  readonly span?: number;
}

/** A column's head. */
export interface TableHead {
  readonly content: CellContent;
  readonly number?: boolean;
}

/** A table of the page; the first `heads` cells of each row are heads of that row. */
export interface PageTable {
  /** The address of its caption; must be the page's only one. */
  readonly id: string;
  readonly caption: CellContent;
  readonly head: readonly TableHead[];
  readonly rows: readonly (readonly TableCell[])[];
  readonly heads: number;
  readonly foot?: readonly TableCell[];
  /** Whether a reader may want another order. */
  readonly sortable?: boolean;
}

const children = (content: CellContent): ElementContent[] =>
  typeof content === 'string' ? [{ type: 'text', value: content }] : [...content];

/** A table of more rows than this scrolls within its region, under its head. */
const longest = 30;

/** A table of more columns than this is set smaller on paper, so that none is cut off at its edge. */
const widest = 10;

/** A table within a region of its own that scrolls sideways by itself, by keyboard too, so that the page never does. */
export function tableElement(table: PageTable): Element {
  const captionId = `${table.id}-caption`;
  return h(
    'div',
    {
      className: table.rows.length > longest ? ['scroll', 'long'] : ['scroll'],
      role: 'group',
      ariaLabelledBy: captionId,
      tabIndex: 0,
    },
    [
      h('table', { id: table.id, className: classesOf(table) }, [
        h('caption', { id: captionId }, [h('span', children(table.caption))]),
        h('thead', [
          h(
            'tr',
            table.head.map((head) => h('th', { scope: 'col', className: numberClass(head) }, children(head.content))),
          ),
        ]),
        h(
          'tbody',
          table.rows.map((cells) => rowElement(cells, table.heads)),
        ),
        ...(table.foot === undefined ? [] : [h('tfoot', [rowElement(table.foot, table.heads)])]),
      ]),
    ],
  );
}

function classesOf({ sortable, head }: PageTable): string[] | undefined {
  const classes = [...(sortable === true ? ['sortable'] : []), ...(head.length > widest ? ['wide'] : [])];
  return classes.length === 0 ? undefined : classes;
}

function rowElement(cells: readonly TableCell[], heads: number): Element {
  return h(
    'tr',
    cells.map((cell, column) => {
      const properties = {
        className: numberClass(cell),
        colSpan: cell.span,
        dataOrder: orderOf(cell),
      };
      return column < heads
        ? h('th', { scope: 'row', ...properties }, children(cell.content))
        : h('td', properties, children(cell.content));
    }),
  );
}

/** What a cell is sorted by, where that is not the whole number that it shows; digits beyond the ninth tell no rows apart. */
function orderOf({ order, number, content }: TableCell): string | undefined {
  if (order === undefined || order === null || (number === true && content === String(order))) return undefined;
  return String(Number.isInteger(order) ? order : Number(order.toPrecision(9)));
}

function numberClass(cell: { readonly number?: boolean }): string[] | undefined {
  return cell.number === true ? ['number'] : undefined;
}
