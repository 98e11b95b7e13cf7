import { type Trace, traceCellAt, traceFigure } from '../notebook/trace.js';
import type { NotebookWorkings } from '../notebook/workings.js';
import type { PageContext } from '../report/page-context.js';
import { programFingerprint, programVersion } from './program-version.js';

/** What a notebook's page says of where it comes from, and what each of its figures and cells stands on. */
export function pageContextOf(workings: NotebookWorkings): PageContext {
  const { notebook, settings, book } = workings;
  const about = {
    sum: book.sum,
    program: { version: programVersion(), fingerprint: programFingerprint() },
    date: book.sum.asOfWords ?? 'an unrecorded moment',
    ...(settings.for === '' ? {} : { audience: settings.for }),
    ...(settings.layout === 'brief' ? { layout: settings.layout } : {}),
  };
  // Accounts tell how many records were left out and on which lines: none of that is for the public.
  if (settings.public) return { ...about, fewest: settings.withhold_under };
  const traces = [...notebook.figures.keys()].flatMap((name): [string, Trace][] => {
    const trace = traceFigure(workings, name);
    return trace === null ? [] : [[name, trace]];
  });
  return { ...about, traces: new Map(traces), cell: (sheet, column, row) => traceCellAt(workings, sheet, column, row) };
}
