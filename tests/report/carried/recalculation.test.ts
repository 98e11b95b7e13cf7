import { inflateRawSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { livePageOf } from '../../../src/command/live-page-of.js';
import { watchedBook } from '../../../src/finding/book/watched-book.js';
import { openBook } from '../../../src/finding/book.js';
import { computeNotebook } from '../../../src/notebook/compute-notebook.js';
import { Memory } from '../../../src/notebook/memory.js';
import { readDocument } from '../../../src/notebook/read-document.js';
import { readSeason } from '../../../src/report/carried/carried-season.js';
import { packSeason } from '../../../src/report/carried/pack-season.js';
import { Recalculation } from '../../../src/report/carried/recalculation.js';
import { renderPage } from '../../../src/report/page.js';
import { elkPoint, inspection, pineGate, smallRecords, smallSum } from '../../finding/small-records.js';
import { sampleContext } from '../sample-notebook.js';

const book = openBook(
  smallRecords({
    stations: [elkPoint, pineGate],
    inspections: [
      inspection('1', { craft: 'heron-hash', outcome: 'intercepted' }),
      inspection('2', { craft: 'heron-hash', station: 'pine' }),
      inspection('3', { craft: 'b', station: 'pine' }),
    ],
  }),
  smallSum('2025-11-30T18:00Z'),
);

const text = `---
filters: [station, craft, inspection]
---

# Small

| input | value | unit        |
|-------|-------|-------------|
| floor | 1     | inspections |

| figure     | formula                           |
|------------|-----------------------------------|
| inspected  | count(inspections)                |
| craft_seen | distinct(craft of inspections)    |
| each_seen  | inspected / craft_seen            |
| over       | max(inspected, floor)             |

Sheet visits: each station of inspections.

| column | formula         |
|--------|-----------------|
| craft  | distinct(craft) |
`;

function computed() {
  const memory = new Memory();
  const watched = watchedBook(book, () => memory.making ?? '');
  const workings = computeNotebook(readDocument('small.md', text), watched.book, 'f', memory);
  expect(workings.notebook.problems).toEqual([]);
  return { workings, watched };
}

function carried(): Recalculation {
  const { workings, watched } = computed();
  return new Recalculation(readSeason(packSeason(workings, watched.asked)!));
}

const value = (counting: Recalculation, name: string): unknown => {
  const result = counting.workings.notebook.figures.get(name)!.result;
  return result.kind === 'number' ? result.value : result;
};

test('what tells craft apart stays as it is over all records, with all that stands on it; the rest follows', () => {
  const counting = carried();
  expect([...counting.whole].sort()).toEqual(['craft_seen', 'each_seen', 'visits']);
  counting.choose({ only: new Map([['station', 'pine']]), inputs: new Map() });
  counting.compute(['inspected', 'craft_seen', 'each_seen', 'visits']);
  expect(value(counting, 'inspected')).toBe(2);
  expect(value(counting, 'craft_seen')).toBe(2);
  expect(value(counting, 'each_seen')).toBe(1.5);
  expect(counting.workings.notebook.sheets.get('visits')!.rows.length).toBe(2);
});

test('what tells craft or records apart is not offered, whatever the notebook asks', () => {
  const { workings, watched } = computed();
  const live = livePageOf(workings, watched.asked)!;
  expect(live.offers.map(({ field }) => field)).toEqual(['station']);
  const page = renderPage(workings.notebook, { ...sampleContext, live }).html;
  expect(page.replace(live.season, '')).not.toContain('heron-hash');
  expect(inflateRawSync(Buffer.from(live.season, 'base64')).includes('heron-hash')).toBe(false);
});

test('an input that cannot be read is a problem in the place of what it is for, and nowhere else', () => {
  const counting = carried();
  counting.choose({ only: new Map(), inputs: new Map([['floor', 'many']]) });
  counting.compute(['inspected', 'over']);
  expect(counting.problems.length).toBeGreaterThan(0);
  expect(counting.workings.notebook.figures.get('over')!.result.kind).not.toBe('number');
  expect(value(counting, 'inspected')).toBe(3);
  counting.choose({ only: new Map(), inputs: new Map([['floor', '7']]) });
  counting.compute(['over']);
  expect(value(counting, 'over')).toBe(7);
  expect(counting.problems).toEqual([]);
});
