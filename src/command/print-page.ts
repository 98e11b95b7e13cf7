import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Problem, wholeFile } from '../problem/problem.js';

/** Milliseconds after which a browser that prints is given up. */
const patience = 180_000;

/** What the browser is told: print a tagged file with an outline, and ask the network for nothing of its own. */
const orders = [
  '--headless',
  '--disable-gpu',
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-default-apps',
  '--disable-extensions',
  '--disable-sync',
  '--no-pdf-header-footer',
  '--export-tagged-pdf',
  '--generate-pdf-document-outline',
];

/**
 * A page, as HTML, printed by that browser: the bytes of a PDF, or the problem of the named file where it printed nothing.
 * The browser works in a folder of its own, which is gone afterwards.
 */
export async function printPage(
  html: string,
  browser: string,
  file: string,
): Promise<{ readonly pdf: Buffer } | { readonly problem: Problem }> {
  const folder = mkdtempSync(join(tmpdir(), 'rampbook-print-'));
  try {
    const [page, printed] = [join(folder, 'page.html'), join(folder, 'page.pdf')];
    writeFileSync(page, html);
    // Its sandbox cannot be set up by the superuser; the page asks for nothing and runs no code but its own.
    const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
    const profile = `--user-data-dir=${join(folder, 'profile')}`;
    const said = await run(browser, [
      ...orders,
      ...asRoot,
      profile,
      `--print-to-pdf=${printed}`,
      pathToFileURL(page).href,
    ]);
    const pdf = readIfThere(printed);
    return pdf === null ? { problem: notPrinted(file, said) } : { pdf };
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Runs the browser to its end; the last line that it said. */
function run(browser: string, words: readonly string[]): Promise<string> {
  return new Promise((resolve) => {
    const running = spawn(browser, words, {
      stdio: ['ignore', 'ignore', 'pipe'],
      timeout: patience,
      killSignal: 'SIGKILL',
    });
    let said = '';
    running.stderr.setEncoding('utf8').on('data', (text: string) => {
      said = (said + text).slice(-2000);
    });
    running.on('error', (mistake) => resolve(mistake.message));
    running.on('close', (code, signal) => {
      const last = said.trim().split('\n').at(-1) ?? '';
      resolve(signal === null ? `${last} (exit code ${code})` : `ended by ${signal}`);
    });
  });
}

function readIfThere(file: string): Buffer | null {
  try {
    return readFileSync(file);
  } catch {
    return null;
  }
}

function notPrinted(file: string, said: string): Problem {
  return {
    code: 'not-printed',
    severity: 'stops',
    place: wholeFile(file),
    seen: said,
    wanted: 'a printed page from the browser',
    remedy:
      'Try a newer Chromium by RAMPBOOK_CHROMIUM, or open the page in any browser and print it there. The page itself is written.',
  };
}
