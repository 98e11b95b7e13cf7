import { type AskForCell, addCellAccounts } from '../../live/cell-accounts.js';
import { addCopying } from '../../live/copy-table.js';
import { addSorting, orderShown, showOrder, writtenOrder } from '../../live/sort-table.js';

/** Makes a part as it was written, before it is changed; the function given back then readies it again. */
export type Readying = (part: HTMLElement) => () => void;

/**
 * Gives the sheets of a part what a finished page has: other orders, copying, and the accounts of cells. What the reader had
 * chosen stays when the part changes: the order of a table, the cell whose account is open, and the focus on a head.
 */
export function readying(address: string): Readying {
  const ask = askAt(address);
  return (part) => {
    const tables = [...part.querySelectorAll('table')];
    const orders = tables.map(orderShown);
    const focused = tables.flatMap((table, at) => {
      const head = table.contains(document.activeElement) ? document.activeElement!.closest('th') : null;
      return head !== null && document.activeElement!.closest('.slot') === null ? [{ at, column: head.cellIndex }] : [];
    });
    const chosen = selectsIn(part).map(({ value }) => value);
    for (const table of tables) writtenOrder(table);
    return () => {
      addCellAccounts(part, ask);
      addSorting(part);
      addCopying(part);
      const now = [...part.querySelectorAll('table')];
      orders.forEach((order, at) => {
        if (order !== null && now[at] !== undefined) showOrder(now[at], order);
      });
      for (const { at, column } of focused)
        now[at]?.tHead?.rows[0]?.cells[column]?.querySelector<HTMLButtonElement>(':scope > button')?.focus();
      choose(part, chosen);
    };
  };
}

function selectsIn(part: HTMLElement): readonly HTMLSelectElement[] {
  return [...part.querySelectorAll<HTMLSelectElement>('details.account select')];
}

/** Chooses the same cell again, as far as there is one; what is not there any more leaves the first. */
function choose(part: HTMLElement, values: readonly string[]): void {
  selectsIn(part).forEach((select, at) => {
    const value = values[at];
    if (value === undefined || value === select.value || ![...select.options].some((one) => one.value === value))
      return;
    select.value = value;
    select.dispatchEvent(new Event('change'));
  });
}

function askAt(address: string): AskForCell {
  return async (sheet, column, row) => {
    try {
      const response = await fetch(`${address}/cell`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ sheet, column, row }),
      });
      return response.ok ? ((await response.json()) as { readonly texts: readonly string[] }).texts : null;
    } catch {
      return null;
    }
  };
}
