import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A cell as a page carries it: a text, a number, a number with its limits, or nothing. */
export type Cell = string | number | null | readonly (number | null)[];

/** A figure as a page carries it, unrounded. */
export interface Figure {
  readonly value: number;
  readonly interval?: { readonly low: number; readonly high: number };
  readonly numerator?: number;
  readonly denominator?: number;
}

/** What a page carries of its results. */
export interface CarriedPage {
  readonly headline: string;
  readonly files: readonly { file: string; read: number; kept: number; setAside: number }[];
  readonly figure: (name: string) => Figure;
  /** The rows of a sheet, each cell by the name of its column. */
  readonly sheet: (name: string) => readonly Readonly<Record<string, Cell>>[];
}

interface Written {
  readonly headline: string;
  readonly files: CarriedPage['files'];
  readonly figures: readonly (Figure & { readonly name: string })[];
  readonly sheets: readonly {
    readonly name: string;
    readonly count: number;
    readonly columns: readonly { readonly name: string }[];
    readonly rows?: readonly (readonly Cell[])[];
  }[];
}

/** Reads what a committed page says of itself, by plain text handling: the form is told in DEVELOPERS.md. */
export function carriedPage(name: string): CarriedPage {
  const html = readFileSync(fileURLToPath(new URL(`../../reports/${name}.html`, import.meta.url)), 'utf8');
  const json = /<script id="carried-results"[^>]*>([^<]*)/.exec(html)?.[1];
  if (json === undefined) throw new Error(`reports/${name}.html carries no results`);
  const { headline, files, figures, sheets } = JSON.parse(json) as Written;
  const named = <T extends { readonly name: string }>(entries: readonly T[], wanted: string): T => {
    const found = entries.find((entry) => entry.name === wanted);
    if (found === undefined) throw new Error(`reports/${name}.html carries no ${wanted}`);
    return found;
  };
  return {
    headline,
    files,
    figure: (wanted) => named(figures, wanted),
    sheet: (wanted) => {
      const { columns, rows, count } = named(sheets, wanted);
      if (rows?.length !== count)
        throw new Error(`reports/${name}.html carries ${rows?.length ?? 'no'} of ${count} rows of ${wanted}`);
      return rows.map((row) => Object.fromEntries(columns.map((column, at) => [column.name, row[at] ?? null])));
    },
  };
}
