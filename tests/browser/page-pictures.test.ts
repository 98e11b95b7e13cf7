import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from '../command/run.js';
import { browserHere, launch, openPage } from './open-page.js';
import { acceptPicture, differenceFrom } from './pictures.js';

/** Letters are smoothed a little otherwise from one browser to the next; a line of text that is gone differs by more. */
const tolerance = 0.002;

/** What each page is pictured as, beside wide and narrow. */
const pages: readonly { readonly name: string; readonly also?: 'dark' | 'print' }[] = [
  { name: 'season', also: 'dark' },
  { name: 'season-public' },
  { name: 'training-focus' },
  { name: 'budget-request' },
  { name: 'board-brief', also: 'print' },
  { name: 'record-quality' },
  { name: 'index' },
  { name: 'methods' },
  { name: 'language' },
];

const fontsFile = join(root, 'tests/golden/pictures/fonts.txt');

/** How wide the page's fonts set a sentence: other fonts break lines elsewhere, and no picture could then be compared. */
function fontsOf(page: Page): Promise<readonly number[]> {
  return page.evaluate(() => {
    const context = new OffscreenCanvas(10, 10).getContext('2d')!;
    return ['--serif', '--sans', '--code'].map((name) => {
      const family = getComputedStyle(document.documentElement).getPropertyValue(name);
      context.font = `100px ${family}`;
      return Math.round(context.measureText('Crews looked over 23,065 boats, WMQ').width);
    });
  });
}

describe.skipIf(!browserHere())('the first screen of every page', () => {
  let browser: Browser;

  beforeAll(async () => {
    browser = await launch();
  });

  afterAll(async () => {
    await browser?.close();
  });

  /** Whether this machine's fonts are those of the golden pictures; says so where they are not. */
  async function fontsAreGolden(page: Page): Promise<boolean> {
    const fonts = JSON.stringify(await fontsOf(page));
    if (process.env.ACCEPT_PICTURES === '1') writeFileSync(fontsFile, `${fonts}\n`);
    const golden = existsSync(fontsFile) ? readFileSync(fontsFile, 'utf8').trim() : '';
    if (fonts === golden) return true;
    console.warn(`\n  OTHER FONTS (${fonts}, not ${golden}): the pictures of pages are NOT compared.\n`);
    return false;
  }

  it.each(pages)('$name looks as its golden pictures', async ({ name, also }) => {
    const file = join(root, 'reports', `${name}.html`);
    const { page, close } = await openPage(browser, file, { deviceScaleFactor: 0.6, reducedMotion: 'reduce' });
    const blank = await page.context().newPage();
    const compare = async (look: string): Promise<void> => {
      const picture = await page.screenshot();
      acceptPicture(`page-${name}-${look}`, picture);
      expect(picture.length, look).toBeLessThan(120_000);
      expect(await differenceFrom(`page-${name}-${look}`, picture, [], blank), look).toBeLessThan(tolerance);
    };
    if (await fontsAreGolden(page)) {
      await page.setViewportSize({ width: 1280, height: 800 });
      await compare('wide');
      if (also === 'dark') {
        await page.emulateMedia({ colorScheme: 'dark' });
        await compare('dark');
        await page.emulateMedia({ colorScheme: 'light' });
      }
      await page.setViewportSize({ width: 360, height: 740 });
      await compare('narrow');
      if (also === 'print') {
        // What @page leaves of Letter, in CSS pixels.
        await page.setViewportSize({ width: 695, height: 912 });
        await page.emulateMedia({ media: 'print' });
        await compare('print');
      }
    }
    await close();
  });

  it('would be told from one in which a line of text, a rule or an accent is gone', async () => {
    const { page, close } = await openPage(browser, join(root, 'reports/board-brief.html'), {
      viewport: { width: 1280, height: 800 },
      deviceScaleFactor: 0.6,
    });
    const blank = await page.context().newPage();
    if (await fontsAreGolden(page)) {
      for (const gone of ['.brief > p', '.brief > .title', '.brief .drawing', '.brief > .scroll tr:nth-child(2)']) {
        const element = page.locator(gone).first();
        await element.evaluate((of) => {
          (of as HTMLElement).style.visibility = 'hidden';
        });
        const differs = await differenceFrom('page-board-brief-wide', await page.screenshot(), [], blank);
        expect(differs, gone).toBeGreaterThan(tolerance);
        await element.evaluate((of) => of.removeAttribute('style'));
      }
    }
    await close();
  });
});
