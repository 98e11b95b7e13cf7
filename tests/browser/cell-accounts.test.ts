import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateRawSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CellTrace } from '../../src/report/cell-accounts.js';
import { languagePage } from '../../src/report/language-page.js';
import { renderPage } from '../../src/report/page.js';
import { sampleContext, sampleNotebook } from '../report/sample-notebook.js';
import { axeFindings } from './axe.js';
import { browserHere, launch, openPage } from './open-page.js';

/** An account of every cell of one sheet, each naming its column and row. */
const trace: CellTrace = (sheet, column, row) => {
  if (sheet !== 'by_station') return null;
  const interception = sampleContext.traces!.get('interception')!;
  return { ...interception, name: `${sheet}.${column}[${row}]`, formula: `${column} in row ${row} </script>` };
};

const cell = { trace, pack: (text: string) => deflateRawSync(text).toString('base64') };

describe.skipIf(!browserHere())('the accounts of a sheet’s cells', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rampbook-cells-'));
  const file = join(folder, 'cells.html');
  const reference = join(folder, 'language.html');
  let browser: Browser;

  beforeAll(async () => {
    writeFileSync(file, renderPage(sampleNotebook, { ...sampleContext, cell }).html);
    writeFileSync(reference, languagePage());
    browser = await launch();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('open where a cell is clicked, in the table’s own order and in any other', async () => {
    const { page, complaints, close } = await openPage(browser, file);
    const said = page.locator('#account-by-station dl.cell dd');
    await page.locator('#table-by-station tbody tr').nth(2).locator('td').nth(1).click();
    expect(await said.first().textContent()).toBe('interception in row 2 </script>');
    await page.locator('#table-by-station th button').nth(1).click();
    await page.locator('#table-by-station tbody tr').first().locator('td').first().click();
    const name = await page.locator('#table-by-station tbody tr').first().locator('th').textContent();
    expect(await page.locator('#account-by-station select').first().inputValue()).toBe(name);
    await expect.poll(() => said.allTextContents()).toContain('full');
    expect(complaints).toEqual([]);
    await close();
  });

  it('open by keyboard alone, and axe finds nothing in them', async () => {
    const { page, close } = await openPage(browser, file);
    await page.locator('#sheet-by-station details.account summary').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowDown');
    const said = page.locator('#account-by-station dl.cell dd').first();
    await expect.poll(() => said.textContent()).toBe('interception in row 1 </script>');
    expect(await axeFindings(page)).toEqual([]);
    await close();
  });

  it('are in no page that nobody gave them to', async () => {
    expect(renderPage(sampleNotebook, sampleContext).html).not.toContain('class="cells"');
  });

  for (const width of [320, 1280]) {
    it(`and the reference of the language stands within ${width} pixels, with nothing for axe to find`, async () => {
      const { page, complaints, close } = await openPage(browser, reference, { viewport: { width, height: 800 } });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await axeFindings(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    });
  }
});
