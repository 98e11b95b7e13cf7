import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { browserHere, launch, openPage } from './open-page.js';
import { counted, pageOf } from './page-of.js';

/** Without motion a page is scrolled at once, so that what is in sight can be told. */
const still = { viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' } as const;

/** What has the focus: how it may be found, whether it can be seen to have it, and whether it lies within the window. */
interface Focus {
  readonly name: string;
  readonly shown: boolean;
  readonly matches: boolean;
}

/** What has the focus now, and whether it is what a selector names. */
function focusOf(page: Page, selector: string): Promise<Focus> {
  return page.evaluate((wanted) => {
    const element = document.activeElement!;
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    const { top, bottom, right } = element.getBoundingClientRect();
    const inSight = bottom > 0 && top < innerHeight && right > 0;
    const name = `${element.tagName} ${element.id} ${element.textContent.trim().slice(0, 30)}`;
    // What a drawing holds is outlined by its own stroke.
    const outlined =
      element.closest('svg') !== null || (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2);
    return { name, shown: element !== document.body && outlined && inSight, matches: element.matches(wanted) };
  }, selector);
}

/** Presses a key until what a selector names has the focus; every stop on the way must be seen to have it. */
async function goTo(page: Page, selector: string, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  const way: string[] = [];
  for (let pressed = 0; pressed < 400; pressed++) {
    await page.keyboard.press(key);
    const focus = await focusOf(page, selector);
    way.push(focus.name);
    if (!focus.shown) throw new Error(`the focus is lost at ${way.slice(-3).join(' → ')}`);
    if (focus.matches) return;
  }
  throw new Error(`${selector} is not reached: ${way.slice(-5).join(' → ')}`);
}

describe.skipIf(!browserHere())('a page by keyboard alone', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rampbook-keyboard-'));
  const file = join(folder, 'season.html');
  let browser: Browser;

  beforeAll(async () => {
    writeFileSync(file, pageOf('season'));
    browser = await launch();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('is skipped into, read, chosen from, sorted, saved and taken back, the focus always in sight', async () => {
    const { page, complaints, close } = await openPage(browser, file, still);
    await goTo(page, '.skip');
    await page.keyboard.press('Enter');
    expect(new URL(page.url()).hash).toBe('#report');

    await goTo(page, '[name="only.station"]');
    await page.keyboard.type('Heron');
    await counted(page, 'Heron Point');
    expect((await focusOf(page, '[name="only.station"]')).matches).toBe(true);

    await goTo(page, '.contents a');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.url()).toMatch(/#section-the-season-in-figures\?station=heron-point$/);

    await goTo(page, '[name="with.release_target"]');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('60');
    // Goes on at once, while the page counts.
    await goTo(page, '.accounts > summary', 'Shift+Tab');
    await page.keyboard.press('Space');
    await counted(page, 'release target 60 instead of the notebook’s 90');
    expect((await focusOf(page, '.accounts > summary')).matches).toBe(true);
    await goTo(page, '.account > summary');
    await page.keyboard.press('Enter');
    expect(await page.locator('.account[open] > div').first().isVisible()).toBe(true);

    await goTo(page, '#table-by-month th:nth-child(2) button');
    await page.keyboard.press('Enter');
    const sorted = page.locator('#table-by-month th[aria-sort=ascending]');
    expect(await sorted.textContent()).toContain('Inspected');
    await goTo(page, '#sheet-by-month a.download');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    expect(download.suggestedFilename()).toBe('season-by_month.csv');

    await goTo(page, '#choice button', 'Shift+Tab');
    await page.keyboard.press('Enter');
    await counted(page, 'Shown: all records');
    expect(await focusOf(page, '#choice button')).toMatchObject({ matches: true, shown: true });
    expect(await page.locator('[name="with.release_target"]').inputValue()).toBe('90');
    expect(complaints).toEqual([]);
    await close();
  });

  it('keeps the focus where a part of it is counted again, and where it is taken back', async () => {
    const { page, close } = await openPage(browser, file);
    const heads = '#table-by-month th:nth-child(3) button';
    const cells = () => page.locator('#table-by-month tbody').textContent();
    await page.focus(heads);
    await page.keyboard.press('Enter');
    const before = await page.evaluateHandle(() => document.activeElement);
    const made = await cells();
    for (const [hash, words] of [
      ['#?station=heron-point', 'Heron Point'],
      ['#?', 'Shown: all records'],
    ] as const) {
      await page.evaluate((address) => {
        location.hash = address;
      }, hash);
      await counted(page, words);
      expect((await focusOf(page, heads)).matches, words).toBe(true);
      if (words === 'Heron Point') {
        expect(await cells()).not.toBe(made);
        expect(await before.evaluate((element) => element!.isConnected)).toBe(false);
      }
    }
    await close();
  });

  it('is no trap: from its first stop to its last and back', async () => {
    const { page, close } = await openPage(browser, file, still);
    await goTo(page, '.skip');
    await goTo(page, '#provenance, [aria-labelledby=methods] p:last-child a');
    await goTo(page, '.skip', 'Shift+Tab');
    await close();
  });
});
