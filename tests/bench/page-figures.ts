import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { openPage } from '../browser/open-page.js';
import { median } from './measured-run.js';

/** What a reader does on a page: a control by its name, the values it is given in turn, and the part looked at meanwhile. */
export interface Change {
  readonly said: string;
  readonly name: string;
  readonly values: readonly string[];
  /** The share of the page's length that is scrolled past. */
  readonly scrolled: number;
}

/** Milliseconds until what a change leads to has been drawn: the first time, and the median of later ones. */
export interface ChangeFigures {
  readonly said: string;
  readonly first: Waited;
  readonly later: Waited;
}

interface Waited {
  readonly sight: number;
  readonly whole: number;
}

/** What one page takes; times in milliseconds, sizes in bytes. */
export interface PageFigures {
  readonly bytes: number;
  /** Without the rows that it carries to count again, and the results that it carries to be compared. */
  readonly bytesWithoutRows: number;
  /** From the beginning of its opening until it is drawn and its script has run. */
  readonly ready: number;
  /** Until it can count again. */
  readonly counts: number;
  readonly changes: readonly ChangeFigures[];
}

interface PageClock {
  readonly countsAt: number | null;
  readonly change: (name: string, value: string) => Promise<Waited>;
}

declare const pageClock: PageClock;

const clock = readFileSync(fileURLToPath(new URL('page-clock.mjs', import.meta.url)), 'utf8');
const openings = 5;

/** Opens a page from its folder several times, makes the changes on one of them, and measures both. */
export async function pageFigures(browser: Browser, file: string, changes: readonly Change[]): Promise<PageFigures> {
  const html = readFileSync(file, 'utf8');
  const carried = ['carried-season', 'carried-results'].map(
    (id) => new RegExp(`<script id="${id}"[^>]*>([^<]*)`).exec(html)?.[1] ?? '',
  );
  const ready: number[] = [];
  const counts: number[] = [];
  for (let opening = 0; opening < openings; opening++) {
    const { page, close } = await opened(browser, file);
    ready.push(await page.evaluate(readyAt));
    counts.push(await page.evaluate(() => pageClock.countsAt ?? 0));
    await close();
  }
  const measured: ChangeFigures[] = [];
  for (const change of changes) {
    const { page, close } = await opened(browser, file);
    measured.push({ said: change.said, ...(await changed(page, change)) });
    await close();
  }
  const bytes = Buffer.byteLength(html);
  const bytesWithoutRows = bytes - carried.reduce((sum, text) => sum + Buffer.byteLength(text), 0);
  return { bytes, bytesWithoutRows, ready: median(ready), counts: median(counts), changes: measured };
}

async function opened(browser: Browser, file: string) {
  const blank = await openPage(browser, file, { viewport: { width: 1280, height: 800 } });
  await blank.page.addInitScript(clock);
  await blank.page.reload();
  await blank.page.waitForFunction(() => pageClock.countsAt !== null);
  return blank;
}

/** When the first picture of the page had been drawn and its script had run, whichever was later. */
function readyAt(): number {
  const [paint] = performance.getEntriesByName('first-contentful-paint');
  const [navigation] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
  return Math.max(paint?.startTime ?? 0, navigation!.loadEventEnd);
}

async function changed(page: Page, { name, values, scrolled }: Change) {
  await page.evaluate((share) => scrollTo(0, share * document.documentElement.scrollHeight), scrolled);
  const waits: Waited[] = [];
  for (const value of values) {
    waits.push(await page.evaluate(([to, what]) => pageClock.change(to, what), [name, value] as const));
  }
  const [first, ...later] = waits;
  const middle = (of: (waited: Waited) => number): number => median(later.map(of));
  return { first: first!, later: { sight: middle(({ sight }) => sight), whole: middle(({ whole }) => whole) } };
}
