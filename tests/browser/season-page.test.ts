import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../command/run.js';
import { axeFindings } from './axe.js';
import { browserHere, launch, openPage } from './open-page.js';

const pages = [
  'season',
  'season-public',
  'record-quality',
  'training-focus',
  'budget-request',
  'board-brief',
  'methods',
  'language',
];

describe.skipIf(!browserHere())('the demo’s pages in a browser', () => {
  let browser: Browser;

  beforeAll(async () => {
    browser = await launch();
  });

  afterAll(async () => {
    await browser.close();
  });

  test.each(pages)(
    '%s: no request leaves it, nothing is complained of, axe finds nothing, and it fits a narrow screen',
    async (name) => {
      const file = join(root, 'reports', `${name}.html`);
      const opened = await openPage(browser, file, { viewport: { width: 1280, height: 900 } });
      expect(opened.requests).toEqual([pathToFileURL(file).href]);
      expect(await axeFindings(opened.page)).toEqual([]);
      await opened.page.setViewportSize({ width: 320, height: 700 });
      expect(await opened.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
      expect(opened.complaints).toEqual([]);
      await opened.close();
    },
  );

  test('the season page is whole without its script', async () => {
    const opened = await openPage(browser, join(root, 'reports', 'season.html'), { javaScriptEnabled: false });
    expect(await opened.page.locator('svg[role=img]').count()).toBeGreaterThanOrEqual(8);
    expect(await opened.page.locator('table').count()).toBeGreaterThanOrEqual(12);
    await opened.close();
  });
});
