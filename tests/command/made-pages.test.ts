import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { makePages, type PagesWanted } from '../../src/command/made-pages.js';
import type { NotebookPage } from '../../src/command/notebook-page.js';
import { openSeason } from '../../src/command/open-season.js';
import { readChoice } from '../../src/command/read-choice.js';
import { rampbook } from './run.js';
import { type SmallSeason, writeSmallSeason } from './small-season.js';

let small: SmallSeason;
let wanted: PagesWanted;

const sheet = [
  'Sheet by_type: each watercraft_type of inspections.',
  '',
  '| column | formula | shown as |',
  '|---|---|---|',
  '| inspected | count() | whole |',
  '| interception | rate(count(where outcome is "intercepted"), inspected) | per 1,000 |',
  '',
];

beforeAll(async () => {
  small = writeSmallSeason();
  expect(rampbook(['import', small.crosswalk, '--from', small.exports, '--store', small.store]).exitCode).toBe(0);
  const notebooks = ['first', 'second'].map((name) => join(small.folder, `${name}.md`));
  for (const file of notebooks) writeFileSync(file, `# Small\n\n${sheet.join('\n')}\n![bars of by_type](missing)\n`);
  const season = await openSeason(small.store);
  if ('problems' in season) throw new Error(JSON.stringify(season.problems));
  const choiceWords = { only: ['watercraft_type=open motorboat'] };
  const choice = readChoice(choiceWords, season.book);
  if ('problems' in choice) throw new Error(JSON.stringify(choice.problems));
  wanted = { notebooks: [...notebooks, join(small.folder, 'none.md')], season, choice, choiceWords, paper: null };
});

afterAll(() => rmSync(small.folder, { recursive: true, force: true }));

async function made(how: Partial<PagesWanted>): Promise<readonly NotebookPage[]> {
  const { pages, close } = makePages({ ...wanted, ...how });
  try {
    return await Promise.all(pages);
  } finally {
    await close();
  }
}

test('pages of other threads are the pages of this one, byte for byte, in the order of their notebooks', async () => {
  const alone = await made({ helpers: 0 });
  expect(alone.map(({ name }) => name)).toEqual(['first', 'second', '']);
  expect(alone[0]!.html).toContain('open motorboat');
  expect(alone[2]!.problems).toMatchObject([{ code: 'no-such-file' }]);
  expect(await made({ helpers: 2, leavesToOthers: true })).toEqual(alone);
});

test('a thread that fails makes the run fail, with what it failed of', async () => {
  const how = { helpers: 1, leavesToOthers: true, choiceWords: { only: ['no_such_field=1'] } };
  await expect(made(how)).rejects.toThrow('a choice was read in one thread and not in another');
});
