import type { Element } from 'hast';

/** A chart as its figure needs it: the drawing, how to read it, and the same numbers as a table for who does not see it. */
export interface Drawn {
  /** An `svg` element with role, title and description; its colours are the page's CSS variables. */
  readonly svg: Element;
  /** The same drawn for a telephone held upright, where that was asked for and can be; it has addresses of its own. */
  readonly narrow?: Element;
  /** Whether the drawing itself is the narrow one; no where absent. */
  readonly isNarrow?: true;
  readonly caption: string;
  /** What each mark means and what is not drawn, as sentences. */
  readonly reading: readonly string[];
  readonly dataTable: DataTable;
  /** The chart as Vega-Lite JSON, where it was drawn from that grammar; else null. */
  readonly specification: Readonly<Record<string, unknown>> | null;
}

/** What a chart shows, as text. Rows that could not be drawn stand in it with their reason. */
export interface DataTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** An address for each row, to which the drawing's own parts lead; without it, rows have none. */
  readonly rowIds?: readonly string[];
  /** Whether it stands beside the drawing, since the two are read together; without it, it is opened on request. */
  readonly open?: boolean;
}
