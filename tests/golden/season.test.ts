import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateRawSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { writeExports } from '../../datasets/quillwater/generate.js';
import { newFolder, rampbook, root } from '../command/run.js';

/** Counted by the generator over its own objects: never through the program, never from the exports. */
const truth = JSON.parse(readFileSync(join(root, 'datasets/quillwater/truth/figures.json'), 'utf8'));
const dataset = join(root, 'datasets/quillwater');
const notebook = join(root, 'notebooks/season.md');

let store: string;
let account: {
  read: number;
  kept: number;
  set_aside: number;
  files: { file: string; read: number; kept: number; set_aside: number }[];
};
let season: Evaluated;

interface Value {
  readonly value: number | string;
  readonly numerator: number;
  readonly denominator: number;
}

interface Evaluated {
  readonly figures: Readonly<Record<string, Value>>;
  readonly sheets: Readonly<Record<string, { readonly rows: readonly Readonly<Record<string, Value>>[] }>>;
}

interface CountedSeason {
  readonly full: number;
  readonly intercepted: number;
}

/** A figure of the season notebook. */
function figure(name: string): Value {
  return season.figures[name]!;
}

beforeAll(async () => {
  const folder = newFolder();
  store = join(folder, 'store');
  await writeExports(join(folder, 'exports'));
  const crosswalks = ['lakes', 'roads', 'office'].map((name) => join(dataset, `${name}.crosswalk.yaml`));
  const imported = rampbook(['import', ...crosswalks, '--from', join(folder, 'exports'), '--store', store, '--json']);
  expect(imported.exitCode).toBe(0);
  account = JSON.parse(imported.out);
  const evaluated = rampbook(['evaluate', notebook, '--store', store, '--json']);
  expect(evaluated.err).toBe('');
  season = JSON.parse(evaluated.out);
});

const of2025 = truth.seasons['2025'];

/** A sheet's column by its first key. */
function byKey(sheet: string, key: string, column: string): Record<string, number> {
  return Object.fromEntries(season.sheets[sheet]!.rows.map((row) => [row[key]!.value, Number(row[column]!.value)]));
}

test('rows read are rows kept plus rows set aside, for every file', () => {
  expect(account.files.filter(({ read, kept, set_aside }) => read !== kept + set_aside)).toEqual([]);
  expect(account.read).toBe(account.kept + account.set_aside);
  expect(account.files.length).toBe(29);
});

describe('the season’s figures are those the generator counted by plain arithmetic', () => {
  test('inspections, paper checks and interceptions', () => {
    expect(figure('inspected').value).toBe(of2025.full);
    expect(figure('paper_checks').value).toBe(of2025.paperChecks);
    expect(figure('intercepted').value).toBe(of2025.intercepted);
    expect(figure('interception').value).toBeCloseTo(of2025.intercepted / of2025.full, 12);
    expect(figure('interception')).toMatchObject({ numerator: of2025.intercepted, denominator: of2025.full });
    const { leaving } = of2025.interceptedByDirection;
    expect(figure('leaving_rate')).toMatchObject({ numerator: leaving, denominator: of2025.fullByDirection.leaving });
  });

  test('the season before, and every season side by side', () => {
    const { full, intercepted } = truth.seasons['2024'];
    expect(figure('interception_before')).toMatchObject({ numerator: intercepted, denominator: full });
    const seasons = Object.entries<CountedSeason>(truth.seasons);
    const wanted = Object.fromEntries(seasons.map(([year, counted]) => [year, counted.intercepted]));
    expect(byKey('by_season', 'season', 'intercepted')).toEqual(wanted);
  });

  test('interceptions by station, with stations that had none', () => {
    const wanted = Object.fromEntries(
      Object.keys(of2025.byStation).map((station) => [station, of2025.interceptedByStation[station] ?? 0]),
    );
    expect(byKey('by_station', 'station', 'intercepted')).toEqual(wanted);
  });

  test('station days, and staff hours as recorded', () => {
    const days = of2025.stationDays;
    expect(figure('days_open').value).toBe(days.open);
    expect(figure('days_closed').value).toBe(days.closed);
    expect(figure('days_unrecorded').value).toBe(days.notRecorded);
    expect(figure('hours_recorded').value).toBeCloseTo(days.staffHours, 6);
  });

  test('washes', () => {
    expect(figure('washed').value).toBe(of2025.washes.count);
  });
});

test('a page is the committed one, whatever the machine’s time zone and language', () => {
  const written = ['season', 'season-public', 'record-quality', 'training-focus', 'budget-request', 'board-brief'];
  const pages = [...written, 'methods', 'language', 'index'];
  const notebooks = written.map((page) => join(root, `notebooks/${page}.md`));
  // The committed ones were rendered elsewhere, in UTC and English.
  const machine = { TZ: 'Pacific/Auckland', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' };
  const to = newFolder();
  expect(rampbook(['report', ...notebooks, '--store', store, '--to', to, '--quiet'], machine).err).toBe('');
  for (const page of pages) {
    const [committed, rendered] = [join(root, 'reports'), to].map((at) =>
      readFileSync(join(at, `${page}.html`), 'utf8'),
    );
    const carried = /<script id="carried-results"[^>]*>([^<]*)/.exec(rendered!)?.[1] ?? '';
    expect(carried.length, `what ${page}.html carries of itself stays small`).toBeLessThan(60_000);
    const isSame = bare(rendered!) === bare(committed!);
    expect(isSame, `reports/${page}.html is committed as rendered: npm run season, and read its diff`).toBe(true);
  }
});

/**
 * A page without what is the program itself, which changes with every change of the code: its fingerprint, and what counts
 * the page again, by its text and by its hash in the policy. The records and accounts that the page carries are compared as
 * they are unpacked, since releases of Node pack the same bytes otherwise.
 */
function bare(html: string): string {
  return html
    .replace(/(Program \(SHA-256\)<\/dt><dd>(?:<span>rampbook [\d.]+, )?<code>)[0-9a-f]+/g, '$1')
    .replace(/("program":\{"version":"[^"]*","fingerprint":")[0-9a-f]{64}/, '$1')
    .replace(/(script-src &#x27;sha256-[^&]*&#x27;) &#x27;sha256-[^&]*&#x27;/, '$1')
    .replace(/(<script id="carried-engine"[^>]*>)[^<]*/, '$1')
    .replace(/(<script id="carried-season"[^>]*>|"packed":")([^<"]*)/g, (_, tag: string, packed: string) => {
      const bytes = inflateRawSync(Buffer.from(packed, 'base64'));
      return tag + createHash('sha256').update(bytes).digest('hex');
    });
}
