import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { changesSummary } from '../../src/report/comparison/changes-summary.js';
import { comparePages } from '../../src/report/comparison/compare-pages.js';
import { comparisonPage } from '../../src/report/comparison/comparison-page.js';
import { folderPage } from '../../src/report/folder/folder-page.js';
import { earlier, withFigure } from '../report/comparison/results-to-compare.js';
import { axeFindings } from './axe.js';
import { browserHere, launch, openPage } from './open-page.js';

const later = withFigure(
  'rate',
  { value: 0.2, formula: 'rate(found, count(full where station is "alder"))' },
  { ...earlier, records: 'd'.repeat(64), sheets: [{ ...earlier.sheets[0]!, rows: [], count: 0, fingerprint: '0' }] },
);
const comparisons = [comparePages(earlier, later)];

describe.skipIf(!browserHere())('the page of a folder and the page of what changed', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rampbook-folder-'));
  const [index, changes] = [join(folder, 'index.html'), join(folder, 'changes.html')];
  let browser: Browser;

  beforeAll(async () => {
    const pages = [
      { file: 'season.html', results: later },
      { file: 'other.html', results: { ...earlier, name: 'other' } },
    ];
    writeFileSync(index, folderPage({ pages, changes: changesSummary(comparisons), beside: ['changes.html'] }));
    writeFileSync(changes, comparisonPage(comparisons));
    browser = await launch();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it.each([
    ['light', 1280],
    ['dark', 320],
  ] as const)(
    'have nothing for axe to find, fetch nothing and never scroll sideways, %s at %i pixels',
    async (scheme, width) => {
      for (const file of [index, changes]) {
        const options = { colorScheme: scheme, viewport: { width, height: 800 } };
        const { page, requests, complaints, close } = await openPage(browser, file, options);
        await page.evaluate(() => {
          for (const details of document.querySelectorAll('details')) details.open = true;
        });
        expect(await axeFindings(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        expect([requests, complaints]).toEqual([[`file://${file}`], []]);
        await close();
      }
    },
  );

  it('lead from one to the other, to the page’s own part', async () => {
    const { page, close } = await openPage(browser, index);
    await page.getByRole('link', { name: 'All that changed' }).click();
    expect(await page.evaluate(() => document.querySelector(':target')?.textContent)).toBe(later.title);
    await close();
  });
});
