import { expect, test } from 'vitest';
import { startProgress } from '../../src/command/progress.js';

/** What is written while 2,000,000 rows of two files are read, half a second a step. */
function written(isTTY: boolean, quiet = false): readonly string[] {
  const texts: string[] = [];
  let time = 0;
  const stream = { isTTY, columns: 120, write: (text: string) => texts.push(text) };
  const progress = startProgress(quiet, { stream, now: () => time });
  for (const file of ['a.csv', 'b.csv']) {
    for (let tenth = 0; tenth <= 10; tenth++) {
      progress.show(`reading ${file}`, (tenth + (file === 'b.csv' ? 10 : 0)) / 20, tenth * 100_000);
      time += 500;
    }
  }
  progress.end();
  return texts;
}

test('a terminal shows a bar with rows, rate and time left, and clears it', () => {
  const texts = written(true);
  expect(texts[0]).toBe(`\r\x1b[2K${'░'.repeat(24)} reading a.csv: 0 rows`);
  expect(texts[14]).toBe(
    `\r\x1b[2K${'█'.repeat(16)}${'░'.repeat(8)} reading b.csv: 1,300,000 rows, 186,000 a second, about 4 s left`,
  );
  expect(texts.at(-1)).toBe('\r\x1b[2K');
});

test('elsewhere plain lines say the step, and every five seconds how far it has come', () => {
  expect(written(false)).toEqual([
    'reading a.csv\n',
    'reading a.csv: 1,000,000 rows, 200,000 a second, about 5 s left\n',
    'reading b.csv\n',
    'reading b.csv: 2,000,000 rows, 190,000 a second\n',
  ]);
});

test('nothing is shown when quiet', () => {
  expect(written(true, true)).toEqual([]);
});
