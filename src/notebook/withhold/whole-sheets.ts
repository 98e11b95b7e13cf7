import type { NotebookDocument } from '../document.js';
import type { NotebookWorkings } from '../workings.js';
import { tellsApart } from './craft-records.js';

/** What is known of sheets before any of their numbers is looked at. */
export interface WholeSheets {
  /** Sheets whose finding does not say which records it counts: nothing that stands on them may be shown. */
  readonly unknown: ReadonlySet<string>;
  /** Sheets of which nothing may be shown: those, and sheets with a row for each craft, person or form. */
  readonly withheld: ReadonlySet<string>;
}

/** The sheets of a notebook that a page for the public does not show at all. */
export function wholeSheets({ document, notebook, sheets }: NotebookWorkings): WholeSheets {
  const unknown = new Set(
    madeByFindings(document).filter((name) => {
      const hasRows = (notebook.sheets.get(name)?.rows.length ?? 0) > 0;
      return hasRows && sheets.get(name)?.records?.() == null;
    }),
  );
  const apart = [...notebook.sheets.values()].filter(({ columns }) =>
    columns.some(({ role, name }) => role === 'key' && tellsApart(name)),
  );
  return { unknown, withheld: new Set([...unknown, ...apart.map(({ name }) => name)]) };
}

function madeByFindings({ parts }: NotebookDocument): readonly string[] {
  return parts.flatMap((part) =>
    part.kind === 'sheet' && part.sheet.maker.kind === 'finding' ? [part.sheet.name.text] : [],
  );
}
