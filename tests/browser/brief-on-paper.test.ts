import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../command/read-pdf.js';
import { root } from '../command/run.js';
import { browserHere, launch, openPage } from './open-page.js';

const brief = join(root, 'reports', 'board-brief.html');

describe.skipIf(!browserHere())('the board brief on paper', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => browser?.close());

  it.each(['Letter', 'A4'])('is one sheet of %s, printed from the open page', async (format) => {
    const { page, close } = await openPage(browser, brief);
    const { pages } = readPdf(await page.pdf({ format }));
    await close();
    expect(pages).toHaveLength(1);
    expect(pages[0]).toContain('1of1');
  });
});
