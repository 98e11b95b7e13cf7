// Opens a store and computes notebooks over it, and draws nothing. Words: the folder of the built program, a store, notebooks.
import { pathToFileURL } from 'node:url';

const [built, store, ...notebooks] = process.argv.slice(2);
const load = (path) => import(pathToFileURL(`${built}/${path}`).href);
const { openSeason } = await load('command/open-season.js');
const { openNotebook } = await load('command/open-notebook.js');
const season = await openSeason(store, notebooks);
if ('problems' in season) throw new Error(JSON.stringify(season.problems));
for (const notebook of notebooks) {
  const opened = openNotebook(notebook, season.book);
  if ('problem' in opened || opened.notebook.problems.length > 0) throw new Error(`${notebook} has problems`);
}
