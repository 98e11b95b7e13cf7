import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings } from './axe.js';
import { browserHere, launch, openPage } from './open-page.js';
import { counted, pageOf } from './page-of.js';

/** What a page shows of its figures, sheets, charts and sentences; heat maps stay what they were, and say so. */
function shownOn(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('main p:not(.note, .downloads), main table, main svg')]
      .filter((part) => part.closest('#choice, #shown, section, [id*=heat], .account') === null)
      .map((part) => (part instanceof SVGElement ? part.outerHTML : (part.textContent ?? ''))),
  );
}

describe.skipIf(!browserHere())('a page that its reader may narrow', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rampbook-live-'));
  const season = join(folder, 'season.html');
  const pages = {
    season,
    'training-focus': join(folder, 'training.html'),
    'budget-request': join(folder, 'budget.html'),
    'board-brief': join(folder, 'brief.html'),
  };
  let browser: Browser;

  beforeAll(async () => {
    for (const [name, page] of Object.entries(pages)) writeFileSync(page, pageOf(name, {}, {}));
    browser = await launch();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it.each([
    [
      'season',
      { station: 'heron-point' },
      { release_target: '60' },
      'Heron Point; release target 60 instead of the notebook’s 90',
    ],
    ['season', { month: 'July', watercraft_type: 'open motorboat' }, {}, 'July; watercraft type open motorboat'],
    ['training-focus', { station: 'heron-point' }, {}, 'Heron Point'],
    ['budget-request', {}, { wage: '30', extra_hours: '800' }, 'wage 30 instead of the notebook’s 26.67'],
  ] as const)('%s of %j with %j is the page that the command makes for it', async (name, only, inputs, said) => {
    const made = join(folder, 'made.html');
    writeFileSync(made, pageOf(name, only, inputs));
    const byCommand = await openPage(browser, made, { javaScriptEnabled: false });
    const live = await openPage(browser, pages[name]);
    for (const [field, value] of Object.entries(only)) await live.page.selectOption(`[name="only.${field}"]`, value);
    for (const [input, value] of Object.entries(inputs)) await live.page.fill(`[name="with.${input}"]`, value);
    await counted(live.page, said);
    const [shown, wanted] = [await shownOn(live.page), await shownOn(byCommand.page)];
    expect(shown.length).toBe(wanted.length);
    expect(shown.length).toBeGreaterThan(50);
    for (const [at, text] of shown.entries()) expect(text).toBe(wanted[at]);
    expect(live.complaints).toEqual([]);
    expect(live.requests.length).toBe(1);
    await live.close();
    await byCommand.close();
  });

  it('is chosen by keyboard, kept by its address, restored from it, and taken back', async () => {
    const { page, close } = await openPage(browser, season);
    const before = await shownOn(page);
    await page.focus('[name="only.station"]');
    await page.keyboard.type('Heron');
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => location.hash === '#?station=heron-point');
    await counted(page, 'Heron Point');
    const chosen = await shownOn(page);
    expect(chosen).not.toEqual(before);
    expect(await page.textContent('#shown')).toContain('Shown: station Heron Point.');
    await page.click('.contents a[href="#section-washing-and-turnaround"]');
    await page.waitForFunction(() => location.hash === '#section-washing-and-turnaround?station=heron-point');
    await page.reload();
    await counted(page, 'Heron Point');
    expect(await shownOn(page)).toEqual(chosen);
    await page.focus('#choice button');
    await page.keyboard.press('Enter');
    await counted(page, 'Shown: all records');
    expect(await shownOn(page)).toEqual(before);
    expect(await page.evaluate(() => location.hash)).toBe('#section-washing-and-turnaround');
    await close();
  });

  it('keeps a table that its reader scrolled where it stood, however often it is counted again', async () => {
    const { page, close } = await openPage(browser, season, { viewport: { width: 360, height: 640 } });
    const region = '.scroll[aria-labelledby="table-by-station-caption"]';
    const leftOf = () => page.evaluate((within) => document.querySelector(within)!.scrollLeft, region);
    await page.evaluate((within) => {
      const scrolled = document.querySelector(within)!;
      scrolled.scrollIntoView();
      scrolled.scrollLeft = 40;
      return new Promise((scrolledAway) => requestAnimationFrame(() => requestAnimationFrame(scrolledAway)));
    }, region);
    for (const month of ['July', 'August']) {
      await page.selectOption('[name="only.month"]', month);
      await counted(page, month);
      expect(await leftOf()).toBe(40);
    }
    await close();
  });

  it('tells of a cell which records stand behind it in the choice shown, and follows while its account is open', async () => {
    const { page, complaints, close } = await openPage(browser, season);
    const account = page.locator('#account-turnaround');
    const cell = page.locator('#table-turnaround tbody tr').first().locator('td').first();
    const said = account.locator('dl.cell dd', { hasText: 'rows of decontaminations' });
    const records = async (): Promise<number> =>
      Number(/^[\d,]+/.exec((await said.first().textContent())!)![0].replace(',', ''));
    for (const month of ['July', 'August']) {
      await page.selectOption('[name="only.month"]', month);
      await counted(page, month);
      if (month === 'July') await cell.click();
      // The first number of the table: washes whose wait had begun, each a record.
      await expect.poll(records).toBe(Number((await cell.textContent())!.replace(',', '')));
    }
    expect(await said.count()).toBe(1);
    expect(complaints).toEqual([]);
    await close();
  });

  it('says on paper which choice it shows, and leaves the controls out', async () => {
    const { page, close } = await openPage(browser, season);
    await page.selectOption('[name="only.month"]', 'July');
    await counted(page, 'July');
    await page.emulateMedia({ media: 'print' });
    expect(await page.isVisible('#choice')).toBe(false);
    expect(await page.isVisible('#shown')).toBe(true);
    expect(await page.textContent('.note.still')).toContain('all records');
    await close();
  });

  it('a brief says on its one sheet that an input was changed, and nothing where none was', async () => {
    const { page, close } = await openPage(browser, pages['board-brief']);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.brief #shown').count()).toBe(1);
    expect(await page.isVisible('.brief #shown')).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    await page.fill('[name="with.extra_hours"]', '800');
    await counted(page, 'extra hours 800 instead of the notebook’s 500');
    expect(await page.textContent('.brief')).toContain('800 staff hours');
    await page.emulateMedia({ media: 'print' });
    expect(await page.isVisible('.brief #shown')).toBe(true);
    await close();
  });

  it('says where an input is wrong, in the place of what it was for, and goes on when it is mended', async () => {
    const { page, complaints, close } = await openPage(browser, season);
    await page.fill('[name="with.release_target"]', 'soon');
    await page.waitForSelector('#shown .problems');
    expect(await page.textContent('#shown .problems')).toContain('soon');
    await page.fill('[name="with.release_target"]', '90');
    await page.waitForFunction(() => document.querySelector('#shown .problems') === null);
    expect(complaints).toEqual([]);
    await close();
  });

  it('has nothing for axe to find with a choice made, and no layout moves when it opens', async () => {
    const { page, close } = await openPage(browser, season);
    await page.selectOption('[name="only.station"]', 'heron-point');
    await counted(page, 'Heron Point');
    expect(await axeFindings(page)).toEqual([]);
    await page.reload();
    const moved = await page.evaluate(
      () =>
        new Promise<number>((resolve) => {
          let sum = 0;
          new PerformanceObserver((list) => {
            for (const entry of list.getEntries()) sum += (entry as PerformanceEntry & { value: number }).value;
          }).observe({ type: 'layout-shift', buffered: true });
          setTimeout(() => resolve(sum), 100);
        }),
    );
    expect(moved).toBeLessThan(0.01);
    await close();
  });

  it('is complete without its script, and says that choosing needs it', async () => {
    const { page, close } = await openPage(browser, season, { javaScriptEnabled: false });
    expect(await page.isVisible('#choice noscript, #choice p:has-text("needs the page’s script")')).toBe(true);
    expect(await page.isDisabled('[name="only.station"]')).toBe(true);
    expect(await page.locator('svg[role=img]').count()).toBeGreaterThanOrEqual(8);
    await close();
  });
});
