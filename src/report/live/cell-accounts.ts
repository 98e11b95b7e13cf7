import { inflated } from './inflate.js';

/** What a page says around the accounts of a sheet's cells. */
interface CellsAround {
  readonly say: { readonly head: string; readonly row: string; readonly column: string; readonly unable: string };
  /** The columns that have accounts: their place in the table, and what stands at their head. */
  readonly columns: readonly (readonly [place: number, head: string])[];
}

/** The accounts of a sheet's cells as the page carries them: `CellAccounts` as JSON, as DEFLATE in base64. */
export interface CarriedCells extends CellsAround {
  readonly packed: string;
}

/** An account: its terms by their number, then what is said of each in turn, as a text or by the number of one. */
export type CarriedAccount = readonly [terms: number, ...said: readonly (string | number)[]];

/** The accounts of a sheet's cells. */
export interface CellAccounts {
  /** What cells stand on; many stand on the same. */
  readonly alike: readonly CarriedAccount[];
  /** By column and row: what the cell stands on, by its number among `alike`, and its own account; null without one. */
  readonly cells: readonly (readonly (readonly [under: number, own: CarriedAccount] | null)[])[];
  readonly terms: readonly (readonly string[])[];
  /** What is said more than once. */
  readonly texts: readonly string[];
}

/** What a page carries of a sheet's cells where their accounts are asked for one by one. */
export interface AskedCells extends CellsAround {
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
    const accounts = JSON.parse(carried.textContent) as CarriedCells | AskedCells;
    const textsOf: TextsOf =
      'sheet' in accounts
        ? (column, row) => ask(accounts.sheet, accounts.names[column]!, row)
        : carriedTexts(accounts.packed);
    addChoice(accounts, textsOf, table, account);
  }
}

/** The texts of cells that are unpacked when the first is asked for. */
function carriedTexts(packed: string): TextsOf {
  let unpacked: Promise<CellAccounts> | null = null;
  return async (column, row) => {
    unpacked ??= inflated(packed).then((bytes) => JSON.parse(new TextDecoder().decode(bytes)) as CellAccounts);
    const { cells, alike, terms, texts } = await unpacked;
    const cell = cells[column]![row]!;
    if (cell === null) return [];
    const [under, own] = cell;
    return [own, alike[under]!].flatMap(([list, ...said]) =>
      said.flatMap((text, at) => [terms[list]![at]!, typeof text === 'number' ? texts[text]! : text]),
    );
  };
}

function addChoice(
  { say, columns }: CellsAround,
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
    if (!account.open) return;
    latest += 1;
    const own = latest;
    const asked = textsOf(column.select.selectedIndex, row.select.selectedIndex);
    const texts = await asked.catch(() => [say.head, say.unable]);
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
