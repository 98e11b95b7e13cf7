import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';

/** The names under which Chromium and the browsers made from it are installed, in the order in which they are looked for. */
const names = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
  'msedge',
];

/** Where they lie on systems that do not put programs on the path. */
const usualPlaces = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** What of the surroundings tells where a browser is. */
export interface Surroundings {
  readonly RAMPBOOK_CHROMIUM?: string | undefined;
  readonly PATH?: string | undefined;
}

/** The file of a browser that prints pages: the one that RAMPBOOK_CHROMIUM names, else the first of the usual names. */
export function findBrowser(
  { RAMPBOOK_CHROMIUM: named, PATH: path = '' }: Surroundings,
  places: readonly string[] = usualPlaces,
): { readonly browser: string } | { readonly problem: Problem } {
  if (named !== undefined && named !== '') {
    return runs(named) ? { browser: named } : { problem: noBrowser(named, 'a program at the place that it names') };
  }
  const endings = process.platform === 'win32' ? ['.exe'] : [''];
  const onPath = path
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => names.flatMap((name) => endings.map((ending) => join(folder, `${name}${ending}`))));
  const inOrder = names.flatMap((name) =>
    onPath.filter((file) => file.replace(/\.exe$/, '').endsWith(join('/', name))),
  );
  const browser = [...inOrder, ...places].find(runs);
  return browser === undefined
    ? { problem: noBrowser('none', 'Chromium, or a browser made from it, on this machine') }
    : { browser };
}

function runs(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

function noBrowser(seen: string, wanted: string): Problem {
  return {
    code: 'no-browser',
    severity: 'stops',
    place: wholeFile('RAMPBOOK_CHROMIUM'),
    seen,
    wanted,
    remedy:
      'Install Chromium or set RAMPBOOK_CHROMIUM to its file; or open the page in any browser and print it there. The pages themselves are written.',
  };
}
