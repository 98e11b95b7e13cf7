import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';

/** Where the tests' browser is. */
export const chromiumPath = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** Whether a browser is here; without one its tests are skipped aloud, unless REQUIRE_BROWSER=1 asks that they fail. */
export function browserHere(): boolean {
  if (existsSync(chromiumPath) || process.env.REQUIRE_BROWSER === '1') return true;
  console.warn(`\n  NO BROWSER at ${chromiumPath}: the pages are NOT checked in one. Set CHROMIUM to its path.\n`);
  return false;
}

/** A browser that asks nothing of the network by itself. */
export async function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: chromiumPath,
    args: ['--no-sandbox', '--disable-background-networking', '--disable-component-update', '--no-first-run'],
  });
}

/** An opened page, with everything it asked for and complained of. */
export interface OpenedPage {
  readonly page: Page;
  /** Addresses of all requests, the page's own included. */
  readonly requests: readonly string[];
  /** What the console said, thrown errors, and violations of the content security policy. */
  readonly complaints: readonly string[];
  readonly close: () => Promise<void>;
}

/** A file opened from its folder, as a reader opens it. */
export async function openPage(
  browser: Browser,
  file: string,
  options: BrowserContextOptions = {},
): Promise<OpenedPage> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const requests: string[] = [];
  const complaints: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('console', (message) => complaints.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.goto(pathToFileURL(file).href);
  return { page, requests, complaints, close: () => context.close() };
}
