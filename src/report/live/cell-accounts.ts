import { inflated } from './inflate.js';

/** What a page carries of a sheet's cells and their accounts. */
export interface CellAccounts {
  /** The words around them. */
  readonly say: { readonly head: string; readonly row: string; readonly column: string };
  /** The columns that have accounts: their place in the table, and what stands at their head. */
  readonly columns: readonly (readonly [place: number, head: string])[];
  /** Their `CellTexts` as JSON, as DEFLATE in base64: many cells stand on records told in nearly the same words. */
  readonly packed: string;
}

/** The accounts of a sheet's cells, every text once. */
export interface CellTexts {
  readonly texts: readonly string[];
  /** What many cells stand on alike, each as texts by their number: a term, what is said of it, and so on. */
  readonly alike: readonly (readonly number[])[];
  /** By column and row: what the cell stands on, by its number among `alike`, then the texts of its own; empty without an account. */
  readonly cells: readonly (readonly (readonly number[])[])[];
}

/** What a page carries of a sheet's cells where their accounts are asked for one by one. */
export interface AskedCells extends Pick<CellAccounts, 'say' | 'columns'> {
  readonly sheet: string;
  /** The columns by the names that formulas use. */
  readonly names: readonly string[];
}

/** The account of a cell as texts, a term and what is said of it in turn; null where nobody answers. */
export type AskForCell = (sheet: string, column: string, row: number) => Promise<readonly string[] | null>;

type TextsOf = (column: number, row: number) => Promise<readonly string[] | null>;

/**
 * Lets a reader open how any cell of a sheet was made: by choosing its row and column, or by clicking on it. Where a page
 * does not carry the accounts, each is asked for when it is opened.
 */
export function addCellAccounts(root: ParentNode, ask: AskForCell = async () => null): void {
  for (const carried of root.querySelectorAll<HTMLScriptElement>('script.cells')) {
    const sheet = carried.closest('.sheet');
    const table = sheet?.querySelector('table');
    const account = sheet?.querySelector<HTMLDetailsElement>('details.account');
    if (table == null || account == null) continue;
    const accounts = JSON.parse(carried.textContent) as CellAccounts | AskedCells;
    if ('packed' in accounts && typeof DecompressionStream === 'undefined') continue;
    const texts = 'packed' in accounts ? carriedTexts(accounts) : askedTexts(accounts, ask);
    const textsOf: TextsOf = async (column, row) => (account.open ? texts(column, row) : null);
    addChoice(accounts, textsOf, table, account);
  }
}

function askedTexts({ sheet, names }: AskedCells, ask: AskForCell): TextsOf {
  return (column, row) => ask(sheet, names[column]!, row);
}

/** The texts that a page carries, unpacked when the first of them is opened. */
function carriedTexts({ packed }: CellAccounts): TextsOf {
  let unpacked: Promise<CellTexts> | null = null;
  return async (column, row) => {
    unpacked ??= inflated(packed).then((json) => JSON.parse(new TextDecoder().decode(json)) as CellTexts);
    const { cells, alike, texts } = await unpacked;
    const [common, ...own] = cells[column]![row]!;
    return common === undefined ? [] : [...own, ...alike[common]!].map((text) => texts[text]!);
  };
}

function addChoice(
  { say, columns }: Pick<CellAccounts, 'say' | 'columns'>,
  textsOf: TextsOf,
  table: HTMLTableElement,
  account: HTMLDetailsElement,
): void {
  // As written, before a reader sorts them.
  const rows = [...table.tBodies[0]!.rows];
  if (rows.length === 0 || columns.length === 0) return;
  const heads = rows.map((row) =>
    [...row.cells].filter((cell) => cell.tagName === 'TH').map((cell) => cell.textContent),
  );
  const row = choice(
    say.row,
    heads.map((head) => head.join(', ')),
  );
  const column = choice(
    say.column,
    columns.map(([, head]) => head),
  );
  const list = document.createElement('dl');
  list.className = 'cell';
  list.setAttribute('aria-live', 'polite');
  const head = document.createElement('p');
  head.className = 'cell-head';
  head.textContent = say.head;
  account.lastElementChild!.append(head, row.label, ' ', column.label, list);
  let latest = 0;
  const show = async (): Promise<void> => {
    latest += 1;
    const own = latest;
    const texts = await textsOf(column.select.selectedIndex, row.select.selectedIndex);
    if (texts === null || own !== latest) return;
    list.replaceChildren(
      ...texts.map((text, at) => {
        const part = document.createElement(at % 2 === 0 ? 'dt' : 'dd');
        part.textContent = text;
        return part;
      }),
    );
  };
  row.select.addEventListener('change', () => void show());
  column.select.addEventListener('change', () => void show());
  account.addEventListener('toggle', () => void show());
  account.hidden = false;
  table.classList.add('traced');
  table.addEventListener('click', (event) => {
    const target = event.target as Element;
    const cell = target.closest('td');
    const at = rows.indexOf(cell?.parentElement as HTMLTableRowElement);
    const place = columns.findIndex(([own]) => own === cell?.cellIndex);
    // Words that a reader has marked to copy, and what leads somewhere itself, are left alone.
    if (at < 0 || place < 0 || target.closest('a') !== null || getSelection()?.isCollapsed === false) return;
    row.select.selectedIndex = at;
    column.select.selectedIndex = place;
    account.open = true;
    void show();
    head.scrollIntoView({ block: 'center' });
  });
  void show();
}

function choice(words: string, texts: readonly string[]): { label: HTMLLabelElement; select: HTMLSelectElement } {
  const label = document.createElement('label');
  const select = document.createElement('select');
  for (const text of texts) select.add(new Option(text));
  label.append(`${words} `, select);
  return { label, select };
}
