import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderPage } from '../../src/report/page.js';
import { sampleContext, sampleNotebook } from '../report/sample-notebook.js';
import { axeFindings } from './axe.js';
import { browserHere, launch, openPage } from './open-page.js';

describe.skipIf(!browserHere())('a page opened from a folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rampbook-page-'));
  const file = join(folder, 'sample.html');
  let browser: Browser;

  beforeAll(async () => {
    writeFileSync(file, renderPage(sampleNotebook, sampleContext).html);
    browser = await launch();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('asks for nothing but itself and has nothing to complain of', async () => {
    const { page, requests, complaints, close } = await openPage(browser, file);
    await page.waitForLoadState('networkidle');
    expect(requests).toEqual([`file://${file}`]);
    expect(complaints).toEqual([]);
    await close();
  });

  it('does run its script and its style under its policy', async () => {
    const { page, close } = await openPage(browser, file);
    expect(await page.locator('th button').count()).toBeGreaterThan(0);
    // Without its style a browser leaves two pixels between cells.
    expect(await page.evaluate(() => getComputedStyle(document.querySelector('table')!).borderSpacing)).toMatch(/^0px/);
    await close();
  });

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`has nothing for axe to find in ${colorScheme}, with every account open`, async () => {
      const { page, close } = await openPage(browser, file, { colorScheme });
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      expect(await axeFindings(page)).toEqual([]);
      await close();
    });
  }

  for (const width of [320, 1280]) {
    it(`never scrolls sideways at ${width} pixels, with every account open`, async () => {
      const { page, close } = await openPage(browser, file, { viewport: { width, height: 800 } });
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await close();
    });
  }

  it('keeps every word of its drawings within them', async () => {
    const { page, close } = await openPage(browser, file, { viewport: { width: 1280, height: 800 } });
    const cut = await page.evaluate(() =>
      [...document.querySelectorAll('svg.drawing')].flatMap((svg) => {
        const frame = svg.getBoundingClientRect();
        return [...svg.querySelectorAll('text')]
          .filter((text) => {
            const box = text.getBoundingClientRect();
            return (
              box.left < frame.left - 1 ||
              box.right > frame.right + 1 ||
              box.top < frame.top - 1 ||
              box.bottom > frame.bottom + 1
            );
          })
          .map((text) => text.textContent);
      }),
    );
    expect(cut).toEqual([]);
    await close();
  });

  it('opens the account that a value in prose leads to', async () => {
    const { page, close } = await openPage(browser, file);
    await page.locator('p .value a').nth(1).click();
    await page.locator('#account-interception').waitFor({ state: 'visible' });
    await close();
  });

  it('opens it without a script too', async () => {
    const { page, close } = await openPage(browser, file, { javaScriptEnabled: false });
    await page.locator('p .value a').nth(1).click();
    await page.locator('#account-interception').waitFor({ state: 'visible' });
    await close();
  });

  it('shows a long table within a region of its own, its head in sight', async () => {
    const { page, close } = await openPage(browser, file, { viewport: { width: 1280, height: 800 } });
    await page.locator('#chart-heat-by-weekday-and-hour-hour-weekday-interception-30 summary').click();
    const region = page.locator('.long');
    await region.focus();
    await page.keyboard.press('End');
    const headBelowTop = () =>
      region.evaluate((element) => {
        const head = element.querySelector('thead th')!.getBoundingClientRect();
        return {
          atEnd: element.scrollTop + element.clientHeight > element.scrollHeight - 2,
          below: head.top - element.getBoundingClientRect().top,
        };
      });
    await expect.poll(async () => (await headBelowTop()).atEnd).toBe(true);
    expect((await headBelowTop()).below).toBeCloseTo(0, 0);
    await close();
  });

  it('sorts a table by keyboard, missing values last either way, and says so', async () => {
    const { page, close } = await openPage(browser, file);
    const names = () => page.locator('#table-by-station tbody th').allTextContents();
    const written = await names();
    const button = page.locator('#table-by-station thead button').nth(2);
    await button.focus();
    await page.keyboard.press('Enter');
    expect((await names()).at(0)).toBe('Little Bittern');
    expect((await names()).at(-1)).toBe('Old Weir');
    expect(await page.locator('#table-by-station th[aria-sort]').count()).toBe(1);
    expect(await page.locator('[role=status]').textContent()).toContain('Interception');
    await page.keyboard.press('Enter');
    expect((await names()).at(0)).toBe('Heron Landing');
    expect((await names()).at(-1)).toBe('Old Weir');
    await page.keyboard.press('Enter');
    expect(await names()).toEqual(written);
    await close();
  });

  it('saves a sheet as the CSV that the page holds', async () => {
    const { page, close } = await openPage(browser, file);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('#sheet-by-hour .download').click(),
    ]);
    expect(download.suggestedFilename()).toBe('sample-by_hour.csv');
    await close();
  });

  it('prints the accounts that are open, and folded tables always', async () => {
    for (const javaScriptEnabled of [true, false]) {
      const { page, close } = await openPage(browser, file, { javaScriptEnabled });
      await page.locator('p .value a').nth(1).click();
      await page.locator('#account-interception').waitFor({ state: 'visible' });
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('#account-interception').isVisible()).toBe(true);
      expect(await page.locator('#account-cost-each').isVisible()).toBe(false);
      expect(await page.locator('.scroll.long').first().isVisible()).toBe(true);
      await close();
    }
  });
});
