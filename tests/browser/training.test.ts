import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawings } from '../../src/chart/craft/drawings.js';
import { renderPage } from '../../src/report/page.js';
import { trainingNotebook, untoldDrawings, untoldNotebook } from '../report/handout/training-notebook.js';
import { sampleContext } from '../report/sample-notebook.js';
import { axeFindings } from './axe.js';
import { browserHere, launch, openPage } from './open-page.js';
import { acceptPicture, type Box, differenceFrom } from './pictures.js';

/** Lines are smoothed a little otherwise on other machines; a part that is gone or filled otherwise differs more. */
const tolerance = 0.0003;

/**
 * A picture of an element alone in the window's corner: where it stands in the page, at a fraction of a pixel, would else
 * show in how its lines are smoothed. It stays there until the next one.
 */
async function pictureOf(page: Page, element: string): Promise<Buffer> {
  await page.locator(element).evaluate((one) => {
    for (const other of document.querySelectorAll<HTMLElement>('.chart')) other.removeAttribute('style');
    Object.assign((one as HTMLElement).style, { position: 'fixed', inset: '0 auto auto 0', margin: '0', zIndex: '9' });
    Object.assign((one as HTMLElement).style, { width: '100vw', background: 'var(--paper)' });
  });
  return page.locator(element).screenshot();
}

/** Where words stand in an element, with room for a wider font. */
async function wordsIn(page: Page, element: string): Promise<Box[]> {
  return page.locator(element).evaluate((of) => {
    const frame = of.getBoundingClientRect();
    return [...of.querySelectorAll('text')].map((text) => {
      const box = text.getBoundingClientRect();
      const wider = box.width * 0.2 + 3;
      return {
        left: (box.left - wider - frame.left) / frame.width,
        right: (box.right + wider - frame.left) / frame.width,
        top: (box.top - 2 - frame.top) / frame.height,
        bottom: (box.bottom + 2 - frame.top) / frame.height,
      };
    });
  });
}

async function openAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) {
      details.removeAttribute('name');
      details.open = true;
    }
  });
}

describe.skipIf(!browserHere())('drawn craft and handouts in a page', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rampbook-training-'));
  const file = join(folder, 'training.html');
  /** The page of records that never say the drive. */
  const untold = join(folder, 'untold.html');
  let browser: Browser;

  beforeAll(async () => {
    for (const [notebook, to] of [
      [trainingNotebook, file],
      [untoldNotebook, untold],
    ] as const) {
      const { html, problems } = renderPage(notebook, sampleContext);
      expect(problems).toEqual([]);
      writeFileSync(to, html);
    }
    browser = await launch();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const looks = [
    { look: 'wide', width: 1280, colorScheme: 'light', media: 'screen' },
    { look: 'middle', width: 768, colorScheme: 'light', media: 'screen' },
    { look: 'narrow', width: 360, colorScheme: 'light', media: 'screen' },
    { look: 'dark', width: 1280, colorScheme: 'dark', media: 'screen' },
    { look: 'print', width: 680, colorScheme: 'light', media: 'print' },
  ] as const;
  const pictured = looks.flatMap((one) => [
    { ...one, of: 'craft', names: drawings.map(({ name }) => name), from: file, mark: '' },
    ...(/^(wide|narrow)$/.test(one.look)
      ? [
          {
            ...one,
            of: 'craft of any drive',
            names: untoldDrawings.map(({ name }) => name),
            from: untold,
            mark: '-any',
          },
        ]
      : []),
  ]);
  for (const { look, width, colorScheme, media, of, names, from, mark } of pictured) {
    it(`draws every ${of} as its golden picture, ${look}`, async () => {
      const viewport = { width, height: 900 };
      const { page, close } = await openPage(browser, from, {
        viewport,
        colorScheme,
        deviceScaleFactor: width < 400 ? 0.6 : mark === '' ? 0.36 : 0.34,
      });
      await page.emulateMedia({ media });
      await openAll(page);
      const blank = await page.context().newPage();
      for (const name of names) {
        const drawing = `#chart-craft-${name} .chart`;
        const picture = await pictureOf(page, drawing);
        const words = await wordsIn(page, drawing);
        acceptPicture(`${name}${mark}-${look}`, picture);
        expect(picture.length, `${name} ${look}`).toBeLessThan(60_000);
        const differs = await differenceFrom(`${name}${mark}-${look}`, picture, words, blank);
        expect(differs, `${name} ${look}`).toBeLessThan(tolerance);
      }
      await close();
    });
  }

  it('would tell a golden picture from one in which a part is not filled', async () => {
    const viewport = { width: 1280, height: 900 };
    const { page, close } = await openPage(browser, file, { viewport, deviceScaleFactor: 0.36 });
    const drawing = '#chart-craft-open-motorboat .chart';
    const blank = await page.context().newPage();
    for (const component of ['transom', 'trim tabs and rams', 'live well', 'bunks']) {
      const part = page.locator(`${drawing} a.part`, { hasText: component }).first();
      await part.evaluate((of) => of.setAttribute('visibility', 'hidden'));
      const picture = await pictureOf(page, drawing);
      const differs = await differenceFrom('open-motorboat-wide', picture, await wordsIn(page, drawing), blank);
      expect(differs, component).toBeGreaterThan(tolerance);
      await part.evaluate((of) => of.removeAttribute('visibility'));
    }
    await close();
  });

  it.each([
    ['of one drive', file],
    ['of any', untold],
  ])('has no label upon another and none cut off on craft %s', async (_, from) => {
    const { page, close } = await openPage(browser, from, { viewport: { width: 1280, height: 900 } });
    await openAll(page);
    const wrong = await page.evaluate(() =>
      [...document.querySelectorAll('svg.craft')].flatMap((svg) => {
        const frame = svg.getBoundingClientRect();
        const boxes = [...svg.querySelectorAll('text')].map((text) => ({
          said: text.textContent,
          box: text.getBoundingClientRect(),
        }));
        const cut = boxes.filter(({ box }) => box.left < frame.left - 1 || box.right > frame.right + 1);
        const meeting = boxes.filter(({ box }, at) =>
          boxes.some(
            ({ box: other }, place) =>
              place > at &&
              Math.min(box.right, other.right) - Math.max(box.left, other.left) > 1 &&
              Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top) > 4,
          ),
        );
        return [...cut, ...meeting].map(({ said }) => `${svg.querySelector('title')?.textContent}: ${said}`);
      }),
    );
    expect(wrong).toEqual([]);
    await close();
  });

  it('opens one craft at a time, without a script', async () => {
    const { page, close } = await openPage(browser, file, { javaScriptEnabled: false });
    const choices = page.locator('details.craft-choice');
    await choices.nth(2).locator('summary').first().click();
    await page.locator('#chart-craft-pontoon-boat svg').waitFor({ state: 'visible' });
    expect(await page.locator('#chart-craft-open-motorboat svg').isVisible()).toBe(false);
    await close();
  });

  it('leads by keyboard from a part of a drawing to its row in the table', async () => {
    const { page, complaints, close } = await openPage(browser, file);
    const part = page.locator('#chart-craft-open-motorboat a.part').first();
    await part.focus();
    await page.keyboard.press('Enter');
    const address = await part.getAttribute('href');
    expect(new URL(page.url()).hash).toBe(address);
    expect(await page.locator(address!).isVisible()).toBe(true);
    expect(complaints).toEqual([]);
    await close();
  });

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`has nothing for axe to find in ${colorScheme}, with everything open`, async () => {
      const { page, close } = await openPage(browser, file, { colorScheme });
      await openAll(page);
      expect(await axeFindings(page)).toEqual([]);
      await close();
    });
  }

  it('never scrolls sideways at 320 pixels', async () => {
    const { page, close } = await openPage(browser, file, { viewport: { width: 320, height: 800 } });
    await openAll(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await close();
  });

  it('prints a handout alone on one side of Letter and of A4, when its address was followed', async () => {
    const { page, close } = await openPage(browser, file);
    await page.goto(`file://${file}#handout-sterndrive-cruiser`);
    for (const format of ['Letter', 'A4']) {
      const printed = (await page.pdf({ format })).toString('latin1');
      expect(printed.match(/\/Type\s*\/Page\b/g), format).toHaveLength(1);
    }
    await close();
  });

  // What @page leaves of each sheet, in CSS pixels: 32 mm less in width and 38 mm less in height.
  const papers = [
    { paper: 'Letter', width: 695, height: 912 },
    { paper: 'A4', width: 672, height: 978 },
  ];
  for (const { paper, width, height } of papers) {
    it.each([
      ['one drive', file, drawings.length],
      ['any drive', untold, untoldDrawings.length],
    ] as const)(`keeps every handout of craft of %s within one side of ${paper}`, async (_, from, count) => {
      const { page, close } = await openPage(browser, from, { viewport: { width, height: 900 } });
      await page.emulateMedia({ media: 'print' });
      await openAll(page);
      const tall = await page.evaluate(() =>
        [...document.querySelectorAll('.handout')].map((one) => ({ id: one.id, height: one.scrollHeight })),
      );
      expect(tall).toHaveLength(count);
      for (const one of tall) expect(one.height, one.id).toBeLessThanOrEqual(height);
      await close();
    });
  }

  it('keeps handouts free of colour', async () => {
    const { page, close } = await openPage(browser, file, { viewport: { width: 1280, height: 900 } });
    await openAll(page);
    const coloured = await page.evaluate(() =>
      [...document.querySelectorAll('.handout, .handout *')].flatMap((element) => {
        const { color, backgroundColor, fill, stroke } = getComputedStyle(element);
        return [color, backgroundColor, fill, stroke].filter((paint) => {
          const [red, green, blue] = [...paint.matchAll(/[\d.]+/g)].map(([number]) => Number(number));
          return paint.startsWith('rgb') && (red !== green || green !== blue);
        });
      }),
    );
    expect([...new Set(coloured)]).toEqual([]);
    // What a handout shows of a drawing beside it can only be seen.
    const blank = await page.context().newPage();
    const colouredShare = async (drawing: string): Promise<number> => {
      const picture = await page.locator(drawing).screenshot();
      return blank.evaluate(
        async (address) => {
          const image = new Image();
          image.src = address;
          await image.decode();
          const context = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
          context.drawImage(image, 0, 0);
          const { data } = context.getImageData(0, 0, image.width, image.height);
          let found = 0;
          for (let at = 0; at < data.length; at += 4) {
            const rgb = [data[at]!, data[at + 1]!, data[at + 2]!];
            if (Math.max(...rgb) - Math.min(...rgb) > 20) found++;
          }
          return found / (data.length / 4);
        },
        `data:image/png;base64,${picture.toString('base64')}`,
      );
    };
    expect(await colouredShare('#handout-open-motorboat .drawing')).toBe(0);
    expect(await colouredShare('#chart-craft-open-motorboat .drawing')).toBeGreaterThan(0.01);
    await close();
  });
});
