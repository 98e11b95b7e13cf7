import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { livePageOf } from '../../src/command/live-page-of.js';
import { restrictedBook } from '../../src/finding/book/restricted-book.js';
import { watchedBook } from '../../src/finding/book/watched-book.js';
import { withChangedInputs } from '../../src/notebook/changed-inputs.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { Memory } from '../../src/notebook/memory.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { renderPage } from '../../src/report/page.js';
import { root } from '../command/run.js';
import { smallSeason } from '../coverage/small-season.js';
import { sampleContext } from '../report/sample-notebook.js';

const { book } = smallSeason(8, 0.1);

/** The page of a notebook that ships over a small season: for its reader to choose, or made for a choice by the command. */
export function pageOf(
  name: string,
  only: Readonly<Record<string, string>> = {},
  inputs: Readonly<Record<string, string>> = {},
): string {
  const read = readDocument(`${name}.md`, readFileSync(join(root, `notebooks/${name}.md`), 'utf8'));
  const document = withChangedInputs(read.document, new Map(Object.entries(inputs)));
  const memory = new Memory();
  const watched = watchedBook(restrictedBook(book, new Map(Object.entries(only))), () => memory.making ?? '');
  const workings = computeNotebook({ ...read, document }, watched.book, 'f'.repeat(64), memory);
  const live = livePageOf(workings, watched.asked);
  if (live === null) throw new Error(`${name} offers its reader nothing`);
  const layout = document.settings.layout === 'brief' ? { layout: 'brief' as const } : {};
  return renderPage(workings.notebook, { ...sampleContext, ...layout, live }).html;
}

/** Waits until the page has counted, and says that it shows a choice with these words in it. */
export async function counted(page: Page, words: string): Promise<void> {
  await page.waitForFunction(
    (wanted) =>
      document.getElementById('choice')?.getAttribute('aria-busy') === null &&
      document.getElementById('shown')!.textContent.includes(wanted),
    words,
  );
}
