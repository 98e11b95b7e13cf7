import { type Cell, cells } from './public-notebook.js';

/** A sum of cells that stands on the page, and how it stands there. */
export interface Read {
  readonly name: string;
  readonly of: readonly number[];
  /** The number; null where it is withheld. */
  readonly sum: number | null;
}

type Heads = Partial<Cell>;

function placesOf(heads: Heads, outcome: string | null): readonly number[] {
  return cells.flatMap((cell, at) => {
    const belongs = Object.entries(heads).every(([key, value]) => cell[key as keyof Cell] === value);
    return belongs && (outcome === null || cell.outcome === outcome) ? [at] : [];
  });
}

function readOf(heads: Heads, outcome: string | null, shown: string): Read {
  const name = [...Object.values(heads), outcome ?? 'all'].join(' ');
  const number = /^[\d,]+/.exec(shown)?.[0];
  if (number === undefined && !shown.startsWith('withheld')) throw new Error(`${name} reads "${shown}"`);
  return { name, of: placesOf(heads, outcome), sum: number === undefined ? null : Number(number.replaceAll(',', '')) };
}

/** A share tells of its cases and of all, wherever `3 of 40` stands. */
function sharesIn(heads: Heads, shown: string): readonly Read[] {
  return [...shown.matchAll(/([\d,]+) of ([\d,]+)/g)].flatMap(([, cases, trials]) => [
    readOf(heads, 'intercepted', cases!),
    readOf(heads, null, trials!),
  ]);
}

const keysOf: Readonly<Record<string, readonly (keyof Cell)[]>> = {
  'by-station': ['station'],
  'by-month': ['month'],
  'by-setting': ['setting'],
  'by-both': ['station', 'month'],
  'by-type': ['type'],
};

const textsOf = (row: Element, of: string): string[] =>
  [...row.querySelectorAll(of)].map((cell) => cell.textContent!.trim());

/** Every number of the page that counts craft: its figures, its sheets, their files, and the numbers of its charts. */
export function readPage(page: Document): readonly Read[] {
  const reads: Read[] = [];
  for (const [id, keys] of Object.entries(keysOf)) {
    const headsOf = (names: readonly string[]): Heads => Object.fromEntries(keys.map((key, at) => [key, names[at]!]));
    for (const row of page.querySelectorAll(`#table-${id} tbody tr`)) {
      const heads = headsOf(textsOf(row, 'th'));
      const [inspected, intercepted, rate = ''] = textsOf(row, 'td');
      reads.push(readOf(heads, null, inspected!), readOf(heads, 'intercepted', intercepted!));
      reads.push(...sharesIn(heads, rate));
    }
    const [head, ...lines] = csvOf(page, id);
    for (const line of lines) {
      const heads = headsOf(line);
      const cell = (column: string): string => line[head!.indexOf(column)] ?? '';
      reads.push(readOf(heads, null, cell('inspected')), readOf(heads, 'intercepted', cell('intercepted')));
      if (cell('rate_numerator') !== '') reads.push(readOf(heads, 'intercepted', cell('rate_numerator')));
      if (cell('rate_denominator') !== '') reads.push(readOf(heads, null, cell('rate_denominator')));
    }
  }
  for (const row of page.querySelectorAll('[id^=numbers-bars] tbody tr')) {
    const [station, intercepted] = textsOf(row, 'th, td');
    reads.push(readOf({ station: station! }, 'intercepted', intercepted!));
  }
  for (const row of page.querySelectorAll('[id^=numbers-heat] tbody tr')) {
    const [station, month, inspected] = textsOf(row, 'th, td');
    reads.push(readOf({ station: station!, month: month! }, null, inspected!));
  }
  const figures = [...page.querySelectorAll('table[id^=figures] tbody tr')].map((row) => textsOf(row, 'td'));
  reads.push(readOf({}, null, figures[0]![0]!), readOf({}, 'intercepted', figures[1]![0]!));
  reads.push(...sharesIn({}, figures[2]!.join(' ')));
  const selection = textsOf(page.querySelector('table[id^=selections] tbody tr')!, 'td').at(-1)!;
  reads.push(readOf({ setting: 'launch' }, null, selection));
  return reads;
}

function csvOf(page: Document, id: string): readonly string[][] {
  const link = page.querySelector<HTMLAnchorElement>(`#sheet-${id} .download, #sheet-${id} .downloads a`)!;
  const text = decodeURIComponent(link.href.replace(/^[^,]*,/, ''));
  const cellsOf = (line: string): string[] =>
    [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, cell]) => cell!.replaceAll('"', ''));
  return text.trim().split('\r\n').map(cellsOf);
}
