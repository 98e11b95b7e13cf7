import { say, wordOf } from './say.js';

type Order = 'ascending' | 'descending';

/** By which column a table is shown, and which way. */
export interface ShownOrder {
  readonly column: number;
  readonly order: Order;
}

/** The rows of sortable tables as they were written. */
const written = new WeakMap<HTMLTableElement, readonly HTMLTableRowElement[]>();

/** Makes the heads of every sortable table buttons: lowest first, highest first, then the page's own order again. */
export function addSorting(root: ParentNode): void {
  for (const table of root.querySelectorAll<HTMLTableElement>('table.sortable')) {
    written.set(table, [...table.tBodies[0]!.rows]);
    headsOf(table).forEach((head, column) => {
      const button = headButton(head);
      button.addEventListener('click', () => {
        const order = nextOrder(head.ariaSort);
        if (order === null) writtenOrder(table);
        else showOrder(table, { column, order });
        say(order ?? 'written', button.getAttribute('aria-label') ?? button.textContent);
      });
    });
  }
}

/** A head's label as a button; a head that holds places to write in keeps them and gets a button beside them. */
function headButton(head: HTMLTableCellElement): HTMLButtonElement {
  const label = head.firstChild!;
  const button = document.createElement('button');
  button.type = 'button';
  if (label instanceof HTMLElement) {
    button.className = 'order';
    button.textContent = wordOf('order');
    button.setAttribute('aria-label', wordOf('orderby').replace('{}', (label.dataset.text ?? '').replaceAll('_', ' ')));
    head.append(button);
  } else {
    button.textContent = label.textContent;
    label.replaceWith(button);
  }
  return button;
}

function headsOf(table: HTMLTableElement): readonly HTMLTableCellElement[] {
  return [...table.tHead!.rows[0]!.cells];
}

/** The order that a reader has chosen for a table; null for its own. */
export function orderShown(table: HTMLTableElement): ShownOrder | null {
  if (!written.has(table)) return null;
  const column = headsOf(table).findIndex(({ ariaSort }) => ariaSort !== null);
  return column < 0 ? null : { column, order: headsOf(table)[column]!.ariaSort as Order };
}

/** Shows a table's rows in another order, where it has such a column. */
export function showOrder(table: HTMLTableElement, { column, order }: ShownOrder): void {
  const rows = written.get(table);
  const head = headsOf(table)[column];
  if (rows === undefined || head === undefined) return;
  for (const other of headsOf(table)) other.removeAttribute('aria-sort');
  head.setAttribute('aria-sort', order);
  table.tBodies[0]!.append(...sorted(rows, column, order));
}

/** Shows a table's rows as they were written. */
export function writtenOrder(table: HTMLTableElement): void {
  const rows = written.get(table);
  if (rows === undefined) return;
  for (const head of headsOf(table)) head.removeAttribute('aria-sort');
  table.tBodies[0]!.append(...rows);
}

function nextOrder(order: string | null): Order | null {
  if (order === 'ascending') return 'descending';
  return order === 'descending' ? null : 'ascending';
}

/** Rows by one column; a cell without a value stays last either way, since it is neither low nor high. */
function sorted(rows: readonly HTMLTableRowElement[], column: number, order: Order): HTMLTableRowElement[] {
  const numeric = rows.some((row) => orderOf(row.cells[column]!) !== undefined);
  const way = order === 'ascending' ? 1 : -1;
  return [...rows].sort((a, b) => {
    const [one, other] = [a.cells[column]!, b.cells[column]!];
    if (!numeric) return way * compareText(one.textContent, other.textContent);
    const [low, high] = [orderOf(one), orderOf(other)];
    if (low === undefined || high === undefined) return Number(low === undefined) - Number(high === undefined);
    return way * (Number(low) - Number(high));
  });
}

/** What a cell is sorted by: as it was written beside it, or the whole number that it shows; undefined without a value. */
function orderOf({ dataset, classList, textContent }: HTMLTableCellElement): string | undefined {
  return dataset.order ?? (classList.contains('number') && /^-?\d+$/.test(textContent) ? textContent : undefined);
}

function compareText(one: string, other: string): number {
  return one === other ? 0 : one < other ? -1 : 1;
}
