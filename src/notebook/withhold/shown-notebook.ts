import type { EvaluatedNotebook } from '../evaluated.js';
import type { NotebookWorkings } from '../workings.js';
import { type WithheldNotebook, withheldNotebook } from './withheld-notebook.js';

/** A computed notebook as its page shows it, and what is withheld of it; null where nothing is to be. */
export interface ShownNotebook {
  readonly notebook: EvaluatedNotebook;
  readonly withheld: WithheldNotebook | null;
}

/** A notebook as its page shows it: the only way for one that is for the public to reach a page. */
export function shownNotebook(workings: NotebookWorkings): ShownNotebook {
  const { settings, notebook } = workings;
  if (!settings.public) return { notebook, withheld: null };
  const withheld = withheldNotebook(workings, settings.withhold_under);
  return { notebook: withheld.notebook, withheld };
}
