import { say } from './say.js';

/** Makes the heads of every sortable table buttons: lowest first, highest first, then the page's own order again. */
export function addSorting(root: ParentNode): void {
  for (const table of root.querySelectorAll<HTMLTableElement>('table.sortable')) {
    const body = table.tBodies[0]!;
    const written = [...body.rows];
    const heads = [...table.tHead!.rows[0]!.cells];
    heads.forEach((head, column) => {
      const label = head.firstChild!;
      const button = document.createElement('button');
      button.type = 'button';
      button.textContent = label.textContent;
      label.replaceWith(button);
      button.addEventListener('click', () => {
        const order = nextOrder(head.ariaSort);
        for (const other of heads) other.removeAttribute('aria-sort');
        if (order !== null) head.setAttribute('aria-sort', order);
        body.append(...(order === null ? written : sorted(written, column, order)));
        say(order ?? 'written', button.textContent);
      });
    });
  }
}

type Order = 'ascending' | 'descending';

function nextOrder(order: string | null): Order | null {
  if (order === 'ascending') return 'descending';
  return order === 'descending' ? null : 'ascending';
}

/** Rows by one column; a cell without a value stays last either way, since it is neither low nor high. */
function sorted(rows: readonly HTMLTableRowElement[], column: number, order: Order): HTMLTableRowElement[] {
  const numeric = rows.some((row) => row.cells[column]!.dataset.order !== undefined);
  const way = order === 'ascending' ? 1 : -1;
  return [...rows].sort((a, b) => {
    const [one, other] = [a.cells[column]!, b.cells[column]!];
    if (!numeric) return way * compareText(one.textContent, other.textContent);
    const [low, high] = [one.dataset.order, other.dataset.order];
    if (low === undefined || high === undefined) return Number(low === undefined) - Number(high === undefined);
    return way * (Number(low) - Number(high));
  });
}

function compareText(one: string, other: string): number {
  return one === other ? 0 : one < other ? -1 : 1;
}
