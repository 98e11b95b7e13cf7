import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { rampbook, root } from '../command/run.js';

const walk = join(root, 'datasets/walkthrough');
const exports = join(walk, 'exports');
const page = readFileSync(join(walk, 'README.md'), 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'rampbook-walk-'));
const store = join(folder, 'store');
const importing = ['import', join(walk, 'walkthrough.crosswalk.yaml'), '--from', exports, '--store', store];
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The rows of a table of the page, below the head that begins with this word. */
function tableOf(head: string): readonly (readonly string[])[] {
  const lines = page.split('\n');
  const from = lines.findIndex((line) => line.startsWith(`| ${head} |`)) + 2;
  const to = lines.findIndex((line, at) => at >= from && !line.startsWith('|'));
  return lines.slice(from, to).map((line) =>
    line
      .slice(1, -1)
      .split('|')
      .map((cell) => cell.trim()),
  );
}

/** The sum that a JSON account of an import gives. */
function sumOf(out: string): readonly [read: number, kept: number, setAside: number] {
  const { read, kept, set_aside: setAside } = JSON.parse(out) as Record<'read' | 'kept' | 'set_aside', number>;
  return [read, kept, setAside];
}

test('a draft of the spoilt export asks the four questions of the walk, and refuses to import until then', () => {
  const draft = join(folder, 'my.crosswalk.yaml');
  expect(rampbook(['draft', exports, '--from', exports, '--to', draft]).exitCode).toBe(0);
  const asked = readFileSync(draft, 'utf8').match(/^ +- "[^"]*\?/gmu) ?? [];
  expect(asked.length).toBe(tableOf('question').length);
  const refused = rampbook(['import', draft, '--from', exports, '--store', join(folder, 'refused')]);
  expect([refused.exitCode, refused.err.match(/crosswalk-open-question/gu)?.length]).toEqual([1, asked.length]);
});

test('the walk sets aside what its page says, mends it, and gives the brief', () => {
  const first = rampbook([...importing, '--json']);
  expect(sumOf(first.out)).toEqual([517, 508, 9]);
  expect(page).toContain('reads 517 rows, keeps 508 and sets 9 aside');
  const aside = readFileSync(join(store, 'set-aside.csv'), 'utf8').trim().split('\n').slice(1);
  expect(aside.map((line) => line.split(',').slice(0, 5))).toEqual(tableOf('file'));

  const mended = rampbook([...importing, '--mended', join(walk, 'mended.csv'), '--json']);
  expect(sumOf(mended.out)).toEqual([517, 516, 1]);
  expect(JSON.parse(mended.out).files_read).toEqual(['days.csv', 'forms.csv', 'washes.csv']);
  expect(page).toContain('516 rows are kept and 1 is set aside');

  const words = ['--store', store, '--with', 'this_season=2026', '--with', 'unit_station=ferry-slip'];
  const brief = join(root, 'notebooks/board-brief.md');
  const rendered = rampbook(['report', brief, '--to', join(folder, 'pages'), ...words]);
  expect([rendered.exitCode, rendered.err]).toEqual([0, expect.not.stringContaining(' wanted ')]);
  // Counted from the export itself: each form once, looked over in full, mussels found.
  const forms = readFileSync(join(exports, 'forms.csv'), 'utf8').trim().split('\n').slice(1);
  const full = new Map(
    forms.map((line) => [line.split(',')[0], line.split(',')] as const).filter(([, cells]) => cells[5] === 'full'),
  );
  const found = [...full.values()].filter((cells) => cells[11] === 'found');
  expect(readFileSync(join(folder, 'pages/board-brief.html'), 'utf8').replace(/<[^>]+>/gu, '')).toContain(
    `Crews made ${full.size} full inspections and found mussels on ${found.length} craft`,
  );
  expect(page).toContain(`${full.size} full inspections and found mussels on ${found.length} craft`);
});
