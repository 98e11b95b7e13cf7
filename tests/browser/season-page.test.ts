import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../command/run.js';
import { axeFindings } from './axe.js';
import { browserHere, launch, openPage } from './open-page.js';
import { crowdedTargets, cutOff, layoutMoved, openAll, scrolledOnPaper, widerThanWindow } from './page-checks.js';

const pages = [
  'season',
  'season-public',
  'record-quality',
  'training-focus',
  'budget-request',
  'board-brief',
  'index',
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
    '%s: no request leaves it, nothing is complained of, nothing moves, and axe finds nothing in light and dark',
    async (name) => {
      const file = join(root, 'reports', `${name}.html`);
      const opened = await openPage(browser, file, { viewport: { width: 1280, height: 900 } });
      expect(await layoutMoved(opened.page)).toBe(0);
      expect(opened.requests).toEqual([pathToFileURL(file).href]);
      expect(await axeFindings(opened.page)).toEqual([]);
      await opened.page.emulateMedia({ colorScheme: 'dark' });
      expect(await axeFindings(opened.page, ['color-contrast'])).toEqual([]);
      expect(opened.complaints).toEqual([]);
      await opened.close();
    },
  );

  test.each(pages)(
    '%s: fits 320 pixels and text of twice the size with everything open, its targets can be hit, and paper loses nothing',
    async (name) => {
      const { page, close } = await openPage(browser, join(root, 'reports', `${name}.html`));
      await openAll(page);
      for (const width of [1280, 320]) {
        await page.setViewportSize({ width, height: 800 });
        expect([width, await widerThanWindow(page), await cutOff(page)]).toEqual([width, 0, []]);
        expect([width, await crowdedTargets(page)]).toEqual([width, []]);
      }
      await page.setViewportSize({ width: 1280, height: 800 });
      await page.evaluate(() => {
        document.documentElement.style.fontSize = `${2 * Number.parseFloat(getComputedStyle(document.documentElement).fontSize)}px`;
      });
      expect(['twice', await widerThanWindow(page), await cutOff(page)]).toEqual(['twice', 0, []]);
      await page.evaluate(() => document.documentElement.removeAttribute('style'));
      // What @page leaves of Letter, in CSS pixels.
      await page.setViewportSize({ width: 695, height: 912 });
      await page.emulateMedia({ media: 'print' });
      expect(await scrolledOnPaper(page)).toEqual([]);
      expect(await widerThanWindow(page)).toBe(0);
      await close();
    },
  );

  test.each(['season', 'training-focus', 'budget-request', 'board-brief'])(
    '%s: one drawing of each chart is in sight, and on a telephone none but a drawn craft is wider than the screen',
    async (name) => {
      const { page, close } = await openPage(browser, join(root, 'reports', `${name}.html`));
      await openAll(page);
      for (const width of [1280, 360]) {
        await page.setViewportSize({ width, height: 800 });
        const charts = await page.evaluate(() =>
          [...document.querySelectorAll<HTMLElement>('.chart')].map((chart) => ({
            inSight: [...chart.querySelectorAll('svg')].filter((drawing) => drawing.checkVisibility()).length,
            isWide: chart.scrollWidth > chart.clientWidth && chart.querySelector('.craft') === null,
          })),
        );
        expect(charts.length).toBeGreaterThan(0);
        expect(charts.filter(({ inSight, isWide }) => inSight !== 1 || isWide)).toEqual([]);
      }
      await close();
    },
  );

  test('colours forced by the reader keep every word of a drawing apart from what lies behind it', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const options = { forcedColors: 'active', colorScheme } as const;
      const { page, close } = await openPage(browser, join(root, 'reports', 'budget-request.html'), options);
      expect(await page.evaluate(() => matchMedia('(forced-colors: active)').matches)).toBe(true);
      for (const width of [1280, 360]) {
        await page.setViewportSize({ width, height: 800 });
        const texts = await wordsAndGrounds(page);
        expect(texts.length).toBeGreaterThan(100);
        expect(texts.filter(({ contrast }) => contrast < 4.5)).toEqual([]);
      }
      await close();
    }
  });

  test('nothing moves by itself for whoever asked for less motion', async () => {
    for (const [reducedMotion, behavior] of [
      ['reduce', 'auto'],
      ['no-preference', 'smooth'],
    ] as const) {
      const { page, close } = await openPage(browser, join(root, 'reports', 'season.html'), { reducedMotion });
      expect(await page.evaluate(() => getComputedStyle(document.documentElement).scrollBehavior)).toBe(behavior);
      expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
      await close();
    }
  });

  test('the season page is whole without its script', async () => {
    const opened = await openPage(browser, join(root, 'reports', 'season.html'), { javaScriptEnabled: false });
    expect(await opened.page.locator('svg[role=img]').count()).toBeGreaterThanOrEqual(8);
    expect(await opened.page.locator('table').count()).toBeGreaterThanOrEqual(12);
    await opened.close();
  });
});

/** The words of a page's drawings in sight, with the contrast (WCAG 2.2, 1.4.3) of each to the mark or paper that it stands on. */
function wordsAndGrounds(page: Page): Promise<readonly { readonly said: string; readonly contrast: number }[]> {
  return page.evaluate(() => {
    const light = (paint: string): number => {
      const [red, green, blue] = [...paint.matchAll(/[\d.]+/g)].map(([number]) => {
        const share = Number(number) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
    };
    const paper = getComputedStyle(document.documentElement).backgroundColor;
    const drawings = [...document.querySelectorAll('svg.drawing')].filter((drawing) => drawing.checkVisibility());
    return drawings.flatMap((drawing) => {
      const fields = [...drawing.querySelectorAll('path[fill*=ramp]')].map((field) => ({
        box: field.getBoundingClientRect(),
        fill: getComputedStyle(field).fill,
      }));
      return [...drawing.querySelectorAll('text')].map((text) => {
        const { x, y, width, height } = text.getBoundingClientRect();
        const [across, down] = [x + width / 2, y + height / 2];
        const ground = fields.find(({ box, fill }) => {
          const within = across > box.left && across < box.right && down > box.top && down < box.bottom;
          return within && fill.startsWith('rgb');
        });
        const [one, other] = [light(getComputedStyle(text).fill), light(ground?.fill ?? paper)];
        return { said: text.textContent, contrast: (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05) };
      });
    });
  });
}
