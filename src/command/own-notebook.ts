import { demoInputs, demoWords } from './demo-words.js';

/** The season that the notebooks that ship ask about. */
const shippedSeason = 2025;

/** A row of a table with other cells; cells keep their width where they can. */
function rowWith(cells: readonly string[], texts: ReadonlyMap<number, string>): string {
  return cells
    .map((cell, place) => {
      const text = texts.get(place);
      return text === undefined ? cell : ` ${text} `.padEnd(cell.length);
    })
    .join('|');
}

/** A row of inputs without the demo's values: blank where somebody must decide, so that the page asks for it. */
function ownRow(line: string, season: number): string {
  const cells = line.split('|');
  const name = cells[1]?.trim() ?? '';
  const asks = demoInputs[name];
  if (asks !== undefined) {
    const texts = new Map(cells.slice(2, -3).map((_, index) => [index + 2, '']));
    return rowWith(cells, texts.set(cells.length - 2, asks));
  }
  const year = Number(cells[2]);
  const isSeason = ['this_season', 'last_season', 'first_season'].includes(name) && Number.isInteger(year);
  return isSeason ? rowWith(cells, new Map([[2, String(year - shippedSeason + season)]])) : line;
}

/**
 * A notebook that ships as somebody's own: what it says of the demo alone taken out, its seasons counted from theirs, and the
 * values that were decided for the demo left blank, each a problem at its own cell until it is filled in.
 */
export function ownNotebook(name: string, text: string, season: number): string {
  let own = text;
  for (const { said, own: instead } of demoWords[name] ?? []) {
    if (!own.includes(said)) throw new Error(`${name} no longer says "${said}": look at demo-words.ts`);
    own = own.replaceAll(said, () => instead);
  }
  return own
    .split('\n')
    .map((line) => {
      if (line.startsWith('|')) return ownRow(line, season);
      if (!line.startsWith('# ')) return line;
      return line.replace(/\b20\d\d\b/u, (year) => String(Number(year) - shippedSeason + season));
    })
    .join('\n');
}
