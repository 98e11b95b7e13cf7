import type { AskedColumns } from '../finding/book/watched-book.js';
import type { NotebookWorkings } from '../notebook/workings.js';
import { inputRows, writtenInputs } from '../notebook/written-inputs.js';
import { offeredFields } from '../report/carried/pack-book.js';
import { packSeason } from '../report/carried/pack-season.js';
import { choiceSaid } from '../report/choice/choice-said.js';
import { filterOffers, seasonsIn } from '../report/choice/filter-offers.js';
import { engineScript } from '../report/engine-script.js';
import type { LivePage } from '../report/page-context.js';
import { deflated } from './deflated.js';

/** The engine's text packed, once for all pages of a run. */
let engine: LivePage['engine'] | null = null;

/**
 * What a reader of a notebook's page may choose, with all that the page needs to count again. Null where the notebook offers
 * nothing or is for the public, has mistakes to be mended first, or stands on what no page may carry.
 */
export function livePageOf(workings: NotebookWorkings, asked: AskedColumns): LivePage | null {
  const { notebook, document, settings, book } = workings;
  if (settings.filters === null || settings.public || notebook.problems.length > 0) return null;
  const season = packSeason(workings, asked);
  if (season === null) return null;
  engine ??= { text: engineScript, packed: deflated(Buffer.from(engineScript)) };
  const inputs = inputRows(document);
  const written = writtenInputs(document);
  const offers = filterOffers(book, offeredFields(settings.filters));
  return {
    offers,
    years: inputs.flatMap(({ name, value, unit }) =>
      unit.text === 'year' ? [{ name: name.text, value: value.text }] : [],
    ),
    seasons: seasonsIn(book),
    inputs: written,
    said: choiceSaid({ only: new Map(), inputs: new Map() }, { offers, inputs: written, tables: [], whole: [] }),
    engine,
    season: deflated(season),
  };
}
