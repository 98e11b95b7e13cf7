import { needsOf } from '../notebook/needs-of.js';
import { type Trace, traceCellAt, traceFigure } from '../notebook/trace.js';
import type { NotebookWorkings } from '../notebook/workings.js';
import type { PageContext } from '../report/page-context.js';
import { deflated } from './deflated.js';
import { programFingerprint, programVersion } from './program-version.js';

/** What a notebook's page says of where it comes from, and what each of its figures and cells stands on. */
export function pageContextOf(workings: NotebookWorkings): PageContext {
  const { notebook, settings, book } = workings;
  const traces = [...notebook.figures.keys()].flatMap((name): [string, Trace][] => {
    const trace = traceFigure(workings, name);
    return trace === null ? [] : [[name, trace]];
  });
  const about = {
    sum: book.sum,
    program: { version: programVersion(), fingerprint: programFingerprint() },
    date: book.sum.asOfWords ?? 'an unrecorded moment',
    needs: needsOf(workings),
    counted: new Map(traces.map(([name, { counts }]) => [name, [...new Set(counts.map(({ table }) => table))]])),
    resampling: { seed: settings.seed, resamples: settings.resamples },
    ...(settings.for === '' ? {} : { audience: settings.for }),
    ...(settings.layout === 'brief' ? { layout: settings.layout } : {}),
  };
  // Accounts tell how many records were left out and on which lines: none of that is for the public.
  if (settings.public) return { ...about, fewest: settings.withhold_under };
  return {
    ...about,
    traces: new Map(traces),
    cell: {
      trace: (sheet, column, row) => traceCellAt(workings, sheet, column, row),
      pack: (text) => deflated(Buffer.from(text)),
    },
  };
}
