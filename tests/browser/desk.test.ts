import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { DeskSeason } from '../../src/command/desk-season.js';
import { startDesk } from '../../src/command/start-desk.js';
import { newFolder, rampbook } from '../command/run.js';
import { type SmallSeason, writeSmallSeason } from '../command/small-season.js';
import { axeFindings } from './axe.js';
import { browserHere, launch } from './open-page.js';

const text = [
  '---',
  'for: whoever tests',
  '---',
  '',
  '# Small season',
  '',
  'Looked over: {inspected}, intercepted {interception}.',
  '',
  '## What is assumed',
  '',
  '| input  | value | unit | source |',
  '|--------|-------|------|--------|',
  '| factor | 2     |      | a test |',
  '',
  '| figure       | formula                                                | shown as  |',
  '|--------------|--------------------------------------------------------|-----------|',
  '| inspected    | count(inspections)                                     | whole     |',
  '| more         | inspected * factor                                     | whole     |',
  '| interception | rate(count(inspections where outcome is "intercepted"), inspected) | per 1,000 |',
  '',
  'Sheet by_type: each watercraft_type of inspections, highest inspected first.',
  '',
  '| column    | formula | shown as |',
  '|-----------|---------|----------|',
  '| inspected | count() | whole    |',
  '',
  '![Inspections, by watercraft type](bars?sheet=by_type&value=inspected)',
  '',
].join('\n');

/** A page that is slow under load is still right: every wait is for a state, and this is only when to give it up. */
const patience = { timeout: 20_000, interval: 50 };

describe.skipIf(!browserHere())('the desk', () => {
  const base = newFolder();
  const folder = join(base, 'notebooks');
  const path = join(folder, 'small.md');
  let small: SmallSeason;
  let season: DeskSeason;
  let browser: Browser;
  let desk: Awaited<ReturnType<typeof startDesk>>;

  beforeAll(async () => {
    small = writeSmallSeason();
    expect(rampbook(['import', small.crosswalk, '--from', small.exports, '--store', small.store]).exitCode).toBe(0);
    const opened = await DeskSeason.open(small.store);
    if ('problems' in opened) throw new Error('the store did not open');
    season = opened;
    mkdirSync(folder);
    browser = await launch();
  });

  beforeEach(async () => {
    await desk?.close();
    writeFileSync(path, text);
    desk = await startDesk(folder, season, 0);
  });

  afterAll(async () => {
    await browser?.close();
    await desk?.close();
    rmSync(base, { recursive: true, force: true });
  });

  interface Opened {
    readonly page: Page;
    readonly complaints: string[];
    readonly requests: string[];
  }

  async function opened(options: BrowserContextOptions = {}, what = 'small.md'): Promise<Opened> {
    const page = await (await browser.newContext(options)).newPage();
    page.setDefaultTimeout(patience.timeout);
    const complaints: string[] = [];
    const requests: string[] = [];
    page.on('console', (message) => complaints.push(`${message.type()}: ${message.text()}`));
    page.on('pageerror', (error) => complaints.push(String(error)));
    page.on('request', (request) => requests.push(request.url()));
    await page.goto(desk.address + what);
    if (what === 'small.md') await page.waitForFunction(() => document.querySelector('button[tabindex="-1"]') !== null);
    return { page, complaints, requests };
  }

  const line = (number: number): string => readFileSync(path, 'utf8').split('\n')[number - 1]!;
  const place = (page: Page, name: string, holds: string) =>
    page
      .locator('.row', { has: page.locator(`[data-holds=name][data-text=${name}]`) })
      .locator(`[data-holds="${holds}"]`)
      .first();
  const worth = (page: Page, name: string) =>
    page
      .locator('.row', { has: page.locator(`[data-holds=name][data-text=${name}]`) })
      .locator('.worth .shown')
      .first();

  it('lets an input and a formula be changed, and the report then gives the same values', async () => {
    const { page, complaints, requests } = await opened();
    await place(page, 'factor', 'value').locator('button').click();
    await page.keyboard.type('5');
    // 3 inspections × 5, while it is still being typed.
    await expect.poll(() => worth(page, 'more').textContent(), patience).toBe('15');
    expect(readFileSync(path, 'utf8')).toBe(text);
    await page.keyboard.press('Enter');
    await expect.poll(() => line(13), patience).toBe('| factor | 5     |      | a test |');
    await page.locator('#open-text').waitFor({ state: 'detached' });
    await place(page, 'more', 'formula').locator('button').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('inspected * factor * 10');
    await page.keyboard.press('Enter');
    await expect.poll(() => worth(page, 'more').textContent(), patience).toBe('150');
    await page.reload();
    await expect.poll(() => worth(page, 'more').textContent(), patience).toBe('150');
    const changed = readFileSync(path, 'utf8')
      .split('\n')
      .flatMap((now, at) => (now === text.split('\n')[at] ? [] : [at + 1]));
    expect(changed).toEqual([13, 18]);

    const pages = join(base, 'pages');
    expect(rampbook(['report', path, '--store', small.store, '--to', pages]).exitCode).toBe(0);
    const report = readFileSync(join(pages, 'small.html'), 'utf8');
    await page.goto(`${desk.address}small.md/report`);
    // But for what the pages' scripts add, and what they carry for that.
    const saidIn = (main: Element): string => {
      const added = 'script, button.copy, .account label, dl.cell, p.cell-head';
      for (const one of main.querySelectorAll(added)) one.remove();
      return (main.textContent ?? '').replace(/\s+/g, ' ');
    };
    const here = await page.locator('#parts').evaluate(saidIn);
    expect(complaints).toEqual([]);
    // Set into the desk's page the report's own style and script are refused by the policy, which is as it should be.
    await page.setContent(report);
    // All but the program's own fingerprint, which changes while somebody works at the program.
    const bare = (said: string): string => said.replace(/[0-9a-f]{64}|\s/g, '');
    expect(bare(await page.locator('main').evaluate(saidIn))).toBe(bare(here));
    expect(here).toContain('150');
    expect(requests.filter((address) => !address.startsWith(desk.address))).toEqual([]);
    await page.context().close();
  });

  it('says in words what is wrong where it is, and gives it up on Escape', async () => {
    const { page } = await opened();
    await place(page, 'more', 'formula').locator('button').click();
    await page.keyboard.type('inspected * facto');
    await expect
      .poll(() => page.locator('.wrong').allTextContents(), patience)
      .toEqual([expect.stringContaining('factor')]);
    expect(
      await page
        .locator('.row', { has: page.locator('[data-text=more]') })
        .locator('.wrong')
        .count(),
    ).toBe(1);
    const reference = await page.locator('.wrong a').getAttribute('href');
    const language = await page.request.get(desk.address + reference);
    expect([language.status(), (await language.text()).includes(`id="${reference!.split('#')[1]}"`)]).toEqual([
      200,
      true,
    ]);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.wrong').count(), patience).toBe(0);
    expect(await worth(page, 'more').textContent()).toBe('6');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('inspected * factor');
    expect(readFileSync(path, 'utf8')).toBe(text);
    await page.context().close();
  });

  it('lets a column of a sheet be changed above its table, whose rows follow', async () => {
    const { page } = await opened();
    const cells = () => page.locator('.part.sheet tbody td').allTextContents();
    expect(await cells()).toEqual(['2', '1']);
    await page.locator('.part.sheet .holds-formula button').focus();
    await page.keyboard.press('ArrowUp');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('name: Inspected');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.keyboard.type('count() * facto');
    await expect.poll(() => page.locator('.slip .wrong').textContent(), patience).toContain('factor');
    expect(await cells()).toEqual(['no value', 'no value']);
    await page.keyboard.type('r');
    await expect.poll(cells, patience).toEqual(['4', '2']);
    await page.locator('.slip button', { hasText: 'column after' }).click();
    // What was written is put in before the column is added.
    await expect.poll(() => page.locator('.part.sheet thead th').count(), patience).toBe(3);
    expect([line(25), line(26)]).toEqual([
      '| inspected | count() * factor | whole    |',
      '| new_column | 0                |          |',
    ]);
    await page.context().close();
  });

  for (const [what, part] of [
    ['the desk', 'small.md'],
    ['a watched report', 'small.md/report'],
  ] as const) {
    it(`gives the sheets of ${what} other orders and the accounts of their cells, which outlast a change`, async () => {
      if (what !== 'the desk') {
        await desk.close();
        desk = await startDesk(folder, season, 0, 'small.md');
      }
      const { page, complaints } = await opened({}, part);
      const sheet = page.locator('.sheet', { has: page.locator('table.sortable') });
      const order = sheet.locator('thead th').nth(1).locator(':scope > button');
      const cells = () => sheet.locator('tbody td').allTextContents();
      await expect.poll(cells, patience).toEqual(['2', '1']);
      await order.focus();
      await page.keyboard.press('Enter');
      expect(await cells()).toEqual(['1', '2']);
      expect(await page.locator('#said').textContent()).toContain('lowest first');
      await sheet.locator('tbody td').first().click();
      const account = sheet.locator('details.account').last();
      const said = () => account.locator('dd').allTextContents();
      // The lone paddlecraft stands on line 4 of the small exports.
      await expect.poll(said, patience).toContainEqual(expect.stringContaining('forms.csv: 1 rows, lines 4'));
      expect(await said()).toContain('count()');
      const chosen = await account.locator('select').first().inputValue();
      await order.focus();
      writeFileSync(path, text.replace('| inspected | count() |', '| inspected | count() * 3 |'));
      if (what === 'the desk') await page.locator('.elsewhere button').first().click();
      await expect.poll(cells, patience).toEqual(['3', '6']);
      await expect.poll(said, patience).toContain('count() * 3');
      expect(await account.locator('select').first().inputValue()).toBe(chosen);
      if (what !== 'the desk') expect(await order.evaluate((button) => button === document.activeElement)).toBe(true);
      expect(await axeFindings(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await page.context().close();
    });
  }

  it('completes names, with unit and meaning, and the codes of a field', async () => {
    const { page } = await opened();
    await place(page, 'more', 'formula').locator('button').click();
    await page.keyboard.type('count(inspec');
    const option = page.locator('.fits [role=option]', { hasText: /^inspections/ });
    await expect.poll(() => option.textContent(), patience).toContain('A row is one craft looked over once.');
    while ((await option.getAttribute('aria-selected')) !== 'true') await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.keyboard.type(' where outcome is "interc');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.keyboard.type(')');
    expect(await page.locator('#open-text').inputValue()).toBe('count(inspections where outcome is "intercepted")');
    await page.keyboard.press('Enter');
    await expect.poll(() => worth(page, 'more').textContent(), patience).toBe('1');
    await page.context().close();
  });

  it('is worked by keyboard all the way: rows, parts, prose, undo', async () => {
    const { page } = await opened();
    const parts = () =>
      page.locator('.part').evaluateAll((all) => all.map((part) => (part as HTMLElement).dataset.key));
    await place(page, 'inspected', 'name').locator('button').focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowRight');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('formula of more: inspected * factor');
    await page.keyboard.press('Alt+ArrowUp');
    await expect.poll(() => line(17), patience).toContain('| more');
    await page.keyboard.press('Alt+Enter');
    await expect.poll(() => line(18), patience).toContain('| new_figure');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent), patience).toContain('new figure');
    await page.keyboard.press('Alt+Delete');
    await expect.poll(() => line(18), patience).toContain('| inspected');
    for (let step = 0; step < 3; step++) await page.keyboard.press('Control+z');
    await expect.poll(() => readFileSync(path, 'utf8'), patience).toBe(text);
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(() => line(17), patience).toContain('| more');
    await page.keyboard.press('Control+z');
    await expect.poll(() => readFileSync(path, 'utf8'), patience).toBe(text);

    await page.locator('.holds-prose button.open').first().focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('New: ');
    await page.keyboard.press('Control+Enter');
    await expect.poll(() => line(7), patience).toBe('New: Looked over: {inspected}, intercepted {interception}.');
    await page.locator('.holds-heading button.open').nth(1).focus();
    await page.keyboard.press('Alt+ArrowUp');
    await expect.poll(() => line(7), patience).toBe('## What is assumed');
    const before = await parts();
    await page.locator('.atend button', { hasText: 'a sheet' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await parts()).length, patience).toBe(before.length + 1);
    expect(readFileSync(path, 'utf8')).toContain('Sheet new_sheet: each station of inspections.');
    await page.context().close();
  });

  it('shows what was changed elsewhere and takes it over when told to', async () => {
    const { page } = await opened();
    writeFileSync(path, text.replace('| factor | 2 ', '| factor | 4 '));
    const box = page.locator('.elsewhere');
    await box.waitFor();
    expect(await worth(page, 'more').textContent()).toBe('6');
    expect(await box.textContent()).toContain('| factor | 4     |');
    expect(await axeFindings(page)).toEqual([]);
    await box.locator('button').first().click();
    await expect.poll(() => worth(page, 'more').textContent(), patience).toBe('12');
    expect(await box.count()).toBe(0);
    await page.context().close();
  });

  it('shows a watched report as it is saved, without loading the page again', async () => {
    const { page, complaints } = await opened({}, 'small.md/report');
    await page.evaluate(() => document.body.setAttribute('data-was', 'here'));
    await page.locator('html[data-shown]').waitFor({ state: 'attached' });
    writeFileSync(path, text.replace('| factor | 2 ', '| factor | 7 '));
    await page.goto(`${desk.address}small.md`);
    await page.locator('.elsewhere button').first().click();
    await page.goBack();
    await expect.poll(() => page.locator('td', { hasText: /^21$/ }).count(), patience).toBe(1);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`has nothing for axe to find in ${colorScheme}, closed and open`, async () => {
      const { page } = await opened({ colorScheme });
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      expect(await axeFindings(page)).toEqual([]);
      await place(page, 'more', 'formula').locator('button').click();
      await page.keyboard.type('count(inspec');
      await page.locator('.fits [role=option]').first().waitFor();
      await page.keyboard.press('ArrowDown');
      await page.locator('.wrong').first().waitFor();
      expect(await axeFindings(page)).toEqual([]);
      await page.context().close();
    });
  }

  it('keeps every target at 24 pixels or more, focus in sight, and never scrolls sideways, narrow and wide', async () => {
    for (const width of [320, 1280]) {
      const { page } = await opened({ viewport: { width, height: 800 } });
      await place(page, 'factor', 'value').locator('button').click();
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      const small = await page.evaluate(() =>
        [...document.querySelectorAll('button, textarea, summary, .place a')]
          .map((target) => ({ said: target.textContent, box: target.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
          .map(({ said, box }) => `${said}: ${box.width} × ${box.height}`),
      );
      expect(small).toEqual([]);
      const outline = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineWidth);
      expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(2);
      await page.context().close();
    }
  });

  it('makes a new notebook by keyboard alone, says in words why it makes none, and opens the one it made', async () => {
    const { page, complaints } = await opened({}, '');
    const name = page.getByLabel('Name of a new notebook');
    await name.focus();
    await page.keyboard.type('small');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByRole('alert').textContent(), patience).toContain('of that name already');
    expect(await name.getAttribute('aria-invalid')).toBe('true');
    expect(await name.evaluate((input) => input === document.activeElement)).toBe(true);
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Control+a');
    await page.keyboard.type('Early ramps');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.waitForURL(/Early-ramps\.md$/);
    expect(await page.locator('h1').textContent()).toBe('Early ramps');
    expect(await page.locator('.wrong').count()).toBe(0);
    // 1 of the 3 inspections of the small season was intercepted.
    expect(await worth(page, 'intercepted').textContent()).toBe('1');
    expect(complaints).toEqual([]);
    rmSync(join(folder, 'Early-ramps.md'));
    await page.context().close();
  });

  it('can be read without its script', async () => {
    const page = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
    await page.goto(`${desk.address}small.md`);
    expect(await worth(page, 'more').textContent()).toBe('6');
    await page.context().close();
  });
});
