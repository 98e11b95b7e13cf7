/** The accounts of a sheet's cells as the page carries them. */
export interface CellAccounts {
  /** The words around them. */
  readonly say: { readonly head: string; readonly row: string; readonly column: string };
  /** The columns that have accounts: their place in the table, and what stands at their head. */
  readonly columns: readonly (readonly [place: number, head: string])[];
  readonly texts: readonly string[];
  /** What many cells stand on alike, each as texts by their number: a term, what is said of it, and so on. */
  readonly alike: readonly (readonly number[])[];
  /** By column and row: what the cell stands on, by its number among `alike`, then the texts of its own; empty without an account. */
  readonly cells: readonly (readonly (readonly number[])[])[];
}

/** Lets a reader open how any cell of a sheet was made: by choosing its row and column, or by clicking on it. */
export function addCellAccounts(root: ParentNode): void {
  for (const carried of root.querySelectorAll<HTMLScriptElement>('script.cells')) {
    const sheet = carried.closest('.sheet');
    const table = sheet?.querySelector('table');
    const account = sheet?.querySelector<HTMLDetailsElement>('details.account');
    if (table == null || account == null) continue;
    addChoice(JSON.parse(carried.textContent) as CellAccounts, table, account);
  }
}

function addChoice(accounts: CellAccounts, table: HTMLTableElement, account: HTMLDetailsElement): void {
  // As written, before a reader sorts them.
  const rows = [...table.tBodies[0]!.rows];
  const heads = rows.map((row) =>
    [...row.cells].filter((cell) => cell.tagName === 'TH').map((cell) => cell.textContent),
  );
  const row = choice(
    accounts.say.row,
    heads.map((head) => head.join(', ')),
  );
  const column = choice(
    accounts.say.column,
    accounts.columns.map(([, head]) => head),
  );
  const list = document.createElement('dl');
  list.className = 'cell';
  list.setAttribute('aria-live', 'polite');
  const head = document.createElement('p');
  head.className = 'cell-head';
  head.textContent = accounts.say.head;
  account.lastElementChild!.append(head, row.label, ' ', column.label, list);
  const show = (): void => {
    const [alike, ...own] = accounts.cells[column.select.selectedIndex]![row.select.selectedIndex]!;
    const texts = alike === undefined ? [] : [...own, ...accounts.alike[alike]!];
    list.replaceChildren(
      ...texts.map((text, at) => {
        const part = document.createElement(at % 2 === 0 ? 'dt' : 'dd');
        part.textContent = accounts.texts[text]!;
        return part;
      }),
    );
  };
  row.select.addEventListener('change', show);
  column.select.addEventListener('change', show);
  table.classList.add('traced');
  table.addEventListener('click', (event) => {
    const cell = (event.target as Element).closest('td');
    const at = rows.indexOf(cell?.parentElement as HTMLTableRowElement);
    const place = accounts.columns.findIndex(([own]) => own === cell?.cellIndex);
    // Words that a reader has marked to copy are left alone.
    if (at < 0 || place < 0 || getSelection()?.isCollapsed === false) return;
    row.select.selectedIndex = at;
    column.select.selectedIndex = place;
    show();
    account.open = true;
    head.scrollIntoView({ block: 'center' });
  });
  show();
}

function choice(words: string, texts: readonly string[]): { label: HTMLLabelElement; select: HTMLSelectElement } {
  const label = document.createElement('label');
  const select = document.createElement('select');
  for (const text of texts) select.add(new Option(text));
  label.append(`${words} `, select);
  return { label, select };
}
