import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, inflateRawSync, inflateSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Ran, rampbook, root } from '../command/run.js';
import { mark, plantExports } from './planted-exports.js';

const folder = mkdtempSync(join(tmpdir(), 'privacy-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const crosswalks = ['lakes', 'roads', 'office'].map((name) => join(root, `datasets/quillwater/${name}.crosswalk.yaml`));
const at = (name: string) => join(folder, name);
const notebook = (name: string) => join(root, `notebooks/${name}.md`);
const importWords = (...more: string[]) => [
  'import',
  ...crosswalks,
  '--from',
  at('exports'),
  '--store',
  at('store'),
  ...more,
];

let planted: ReadonlyMap<string, number>;
const ran: Ran[] = [];
beforeAll(async () => {
  planted = await plantExports(at('exports'), crosswalks);
  writeFileSync(at('for-all.md'), readFileSync(notebook('season'), 'utf8').replace(/^filters:.*/m, 'public: yes'));
  writeFileSync(at('key'), `${mark} is the key too`);
  ran.push(
    rampbook(importWords('--key', at('key'))),
    rampbook(importWords('--key', at('key'), '--json')),
    rampbook([
      ...['report', notebook('season'), notebook('record-quality'), at('for-all.md')],
      ...['--store', at('store'), '--to', at('pages')],
    ]),
    rampbook(['evaluate', notebook('record-quality'), '--store', at('store'), '--json']),
    rampbook(['trace', notebook('season'), 'intercepted', '--store', at('store')]),
    rampbook([
      'report',
      at('for-all.md'),
      '--store',
      at('store'),
      '--to',
      at('chosen'),
      '--only',
      'station=heron-point',
    ]),
  );
});

/** Whether bytes hold a mark in any case, as they are or behind base64 and deflation. */
function holdsMark(bytes: Buffer): boolean {
  const text = bytes.toString('latin1');
  if (text.toLowerCase().includes(mark.toLowerCase())) return true;
  return [...text.matchAll(/[A-Za-z0-9+/]{40,}={0,2}/g)].some(([packed]) => {
    const inner = Buffer.from(packed, 'base64');
    if (inner.toString('latin1').toLowerCase().includes(mark.toLowerCase())) return true;
    return [inflateRawSync, inflateSync, gunzipSync].some((unpack) => {
      try {
        return unpack(inner).toString('latin1').toLowerCase().includes(mark.toLowerCase());
      } catch {
        return false;
      }
    });
  });
}

const filesBelow = (path: string) =>
  readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));

const said = ({ out, err }: Ran) => Buffer.from(`${out}${err}`);

test('the search finds a mark wherever it is hidden', async () => {
  const { deflateRawSync } = await import('node:zlib');
  const packed = deflateRawSync(Buffer.from(`many words and ${mark} among them, again and again`)).toString('base64');
  expect(holdsMark(Buffer.from(`<script>"${packed}"</script>`))).toBe(true);
  expect(holdsMark(Buffer.from(mark.toUpperCase()))).toBe(true);
  expect(holdsMark(readFileSync(at('exports/lakes/inspections-2025.csv')))).toBe(true);
});

test('every private column of the demo is planted, in rows of every fate', () => {
  const columns = new Set([...planted.keys()].map((name) => name.split(' ')[1]));
  const declared = [
    'hull_no',
    'registration',
    'owner_name',
    'phone',
    'staff',
    'second_staff',
    'hin',
    'plate',
    'driver',
  ];
  for (const name of declared) expect(columns).toContain(name);
  expect([...planted.values()].every((count) => count > 5)).toBe(true);
  const rows = readFileSync(at('store/set-aside-rows.csv'), 'utf8').split('\n');
  const aside = rows.filter((row) => /inspections-|forms-/.test(row));
  // Ragged and broken rows are withheld whole, others in their private cells.
  expect(aside.filter((row) => row.endsWith(',withheld')).length).toBeGreaterThan(0);
  expect(aside.filter((row) => row.includes(',withheld,')).length).toBeGreaterThan(5);
});

test('no byte of the store holds what a private column held, nor the key', () => {
  const files = filesBelow(at('store'));
  expect(files.length).toBeGreaterThan(15);
  expect(files.filter((path) => holdsMark(readFileSync(path)))).toEqual([]);
});

test('no byte of a page holds it, unpacked or not', () => {
  const pages = filesBelow(at('pages'));
  expect(pages.map((path) => path.split('/').at(-1)).sort()).toEqual([
    'for-all.html',
    'index.html',
    'language.html',
    'methods.html',
    'record-quality.html',
    'season.html',
  ]);
  expect(pages.filter((path) => holdsMark(readFileSync(path)))).toEqual([]);
});

test('no command says it, and each did its work', () => {
  expect(ran.map(({ exitCode }) => exitCode)).toEqual([0, 0, 0, 0, 0, 1]);
  expect(ran.filter((one) => holdsMark(said(one)))).toEqual([]);
});

test('a page for the public carries no records, says how much it withholds, and is refused for a choice of records', () => {
  const holds = (page: string) =>
    ['id="carried-season"', 'id="carried-engine"', '<form', 'inspections-2025'].filter((text) =>
      readFileSync(at(`pages/${page}.html`), 'utf8').includes(text),
    );
  expect(holds('for-all')).toEqual([]);
  expect(holds('season').length).toBe(4);
  expect(ran[2]!.out).toMatch(
    /for-all\.html, for the public: \d+ of \d+ numbers withheld, and with them all of funnel, /,
  );
  // Two pages of different choices would tell by their difference what each withholds.
  expect(ran[5]!.err).toContain('public-choice');
  expect(readdirSync(at('chosen'))).not.toContain('for-all.html');
});

test('nor do the messages of an import that is stopped: a header taken from the rows, a wrong delimiter, a hurt file', () => {
  const lakes = readFileSync(crosswalks[0]!, 'utf8');
  const changes: readonly (readonly [string, (text: string) => string])[] = [
    ['header', (text) => text.replaceAll('header_line: 1', 'header_line: 3')],
    ['delimiter', (text) => text.replaceAll('delimiter: comma', 'delimiter: semicolon')],
    ['encoding', (text) => text.replaceAll('encoding: utf-8', 'encoding: utf-16le')],
  ];
  for (const [name, change] of changes) {
    writeFileSync(at(`${name}.yaml`), change(lakes));
    const stopped = rampbook(['import', at(`${name}.yaml`), '--from', at('exports'), '--store', at(`store-${name}`)]);
    expect([name, stopped.exitCode]).toEqual([name, 1]);
    expect([name, holdsMark(said(stopped))]).toEqual([name, false]);
  }
  // The place it leaves is empty: no lock, no half-written store.
  expect(readdirSync(folder).sort()).toEqual([
    ...['chosen', 'delimiter.yaml', 'encoding.yaml', 'exports', 'for-all.md', 'header.yaml', 'key', 'pages', 'store'],
  ]);
});
