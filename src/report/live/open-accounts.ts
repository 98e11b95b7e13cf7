import { readAddress } from '../choice/choice-address.js';

/** Opens the account that an address leads to, and what paper shows while the page is printed: not accounts that are closed. */
export function openAccounts(): void {
  addEventListener('hashchange', openAddressed);
  openAddressed();
  let closed: HTMLDetailsElement[] = [];
  addEventListener('beforeprint', () => {
    closed = [...document.querySelectorAll<HTMLDetailsElement>('details:not(.account, .accounts)')].filter(
      (details) => !details.open,
    );
    for (const details of closed) details.open = true;
  });
  addEventListener('afterprint', () => {
    for (const details of closed) details.open = false;
    closed = [];
  });
}

function openAddressed(): void {
  const target = document.getElementById(readAddress(location.hash).part);
  let details = target?.closest('details') ?? null;
  for (; details !== null; details = details.parentElement?.closest('details') ?? null) details.open = true;
  target?.scrollIntoView();
}
