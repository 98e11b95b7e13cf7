import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { datedPdf } from '../../src/command/dated-pdf.js';
import { findBrowser } from '../../src/command/find-browser.js';
import { packedPdf } from '../../src/command/packed-pdf.js';
import { browserHere, chromiumPath } from '../browser/open-page.js';
import { type ReadPdf, readPdf } from './read-pdf.js';
import { newFolder, type Ran, rampbook } from './run.js';
import { type SmallSeason, writeSmallSeason } from './small-season.js';

/** A notebook whose inputs fill more than two sheets of paper. */
const long = [
  '# A season “in short” \\ on paper',
  '',
  'Intercepted {intercepted}.',
  '',
  '| input | value | unit | source |',
  '|---|---|---|---|',
  ...Array.from({ length: 90 }, (_, at) => `| item_${at + 1} | ${at + 1} | | row ${at + 1} of a test |`),
  '',
  '| figure | formula | shown as |',
  '|---|---|---|',
  '| intercepted | count(inspections where outcome is "intercepted") | whole |',
];

const brief = ['---', 'layout: brief', '---', ...long.slice(0, 4), '---', '', ...long.slice(4)];

describe.skipIf(!browserHere())('a page printed by the command', () => {
  let small: SmallSeason;
  let to: string;

  beforeAll(() => {
    small = writeSmallSeason();
    to = join(small.folder, 'pages');
    expect(rampbook(['import', small.crosswalk, '--from', small.exports, '--store', small.store]).exitCode).toBe(0);
    writeFileSync(join(small.folder, 'long.md'), long.join('\n'));
    writeFileSync(join(small.folder, 'brief.md'), brief.join('\n'));
  });

  function print(words: readonly string[], environment: Record<string, string> = {}): Ran {
    const chromium = { RAMPBOOK_CHROMIUM: chromiumPath, ...environment };
    return rampbook(['report', '--store', small.store, '--to', to, '--pdf', ...words], chromium);
  }

  const read = (name: string): ReadPdf => readPdf(readFileSync(join(to, name)));

  test('is tagged, in a language, with title, outline, running head, page numbers and repeated heads of tables', () => {
    const ran = print([join(small.folder, 'long.md'), join(small.folder, 'brief.md'), '--paper', 'a4']);
    expect([ran.exitCode, ran.out]).toEqual([0, expect.stringContaining('long.pdf')]);
    const { pages, objects } = read('long.pdf');
    const catalog = [...objects.values()].find((object) => object.includes('/Type /Catalog'))!;
    // ISO 32000-1, 14.8: a tagged file has a structure tree and says Marked; 14.9.2 its language; 12.3.3 its outline.
    expect(catalog).toMatch(/\/Lang \(en\)/);
    expect(catalog).toMatch(/\/StructTreeRoot \d+ 0 R/);
    expect(catalog).toMatch(/\/Outlines \d+ 0 R/);
    const all = [...objects.values()].join('\n');
    expect(all).toMatch(/\/Type \/MarkInfo\s*\/Marked true/);
    expect(all).toMatch(/\/S \/TH\b/);
    // A4 in points.
    expect(all).toMatch(/\/MediaBox \[0 0 59[45][.\d]* 84[12][.\d]*\]/);
    expect(pages.length).toBeGreaterThanOrEqual(3);
    pages.forEach((page, at) => {
      expect(page).toContain('Aseason“inshort”\\onpaper');
      expect(page).toContain(`${at + 1}of${pages.length}`);
    });
    const rows = pages.map((page) => page.match(/row\d+ofatest/g) ?? []);
    expect(rows.flat()).toEqual(Array.from({ length: 90 }, (_, at) => `row${at + 1}ofatest`));
    rows.forEach((own, at) => {
      if (own.length > 0) expect(pages[at]).toMatch(/InputValueUnitSource/);
    });
    expect(read('brief.pdf').pages).toHaveLength(1);
  });

  test('shows accounts where they are asked for, a brief’s on sheets of their own, leads to no file of this machine, and gives the same bytes again', () => {
    const closed = read('long.pdf').pages.join('\n');
    expect(closed).not.toContain('How“intercepted”wasmade');
    const once = readFileSync(join(to, 'brief.pdf'));
    const words = [join(small.folder, 'long.md'), join(small.folder, 'brief.md'), '--accounts'];
    expect(print(words, { SOURCE_DATE_EPOCH: '86400' }).exitCode).toBe(0);
    const open = read('long.pdf').pages.join('\n');
    expect(open).toContain('How“intercepted”wasmade');
    expect(open).toContain('1of3rowsofinspections');
    const [sheet, ...workings] = read('brief.pdf').pages;
    expect(sheet).not.toContain('How“intercepted”wasmade');
    expect(workings.join('\n')).toContain('How“intercepted”wasmade');
    const text = readFileSync(join(to, 'long.pdf'), 'latin1');
    expect(text).not.toMatch(/file:|\/URI/);
    expect(text).toMatch(/\/CreationDate \(D:19700102000000\+00'00'\)/);

    // The records tell up to 2025-11-30 18:00 in Denver, seven hours behind UTC.
    expect(once.toString('latin1')).toMatch(/\/CreationDate \(D:20251201010000\+00'00'\)/);
    expect(print([join(small.folder, 'brief.md'), '--paper', 'a4']).exitCode).toBe(0);
    expect(readFileSync(join(to, 'brief.pdf')).equals(once)).toBe(true);
  });

  test('is a problem with its remedy where no browser is found or it prints nothing; the page stands all the same', () => {
    const none = print([join(small.folder, 'long.md'), '--to', join(to, 'none')], {
      RAMPBOOK_CHROMIUM: '/nowhere/chromium',
    });
    expect([none.exitCode, none.err]).toEqual([1, expect.stringMatching(/\[no-browser\][\s\S]*RAMPBOOK_CHROMIUM/)]);
    expect(existsSync(join(to, 'none/long.html'))).toBe(true);
    const silent = print([join(small.folder, 'long.md'), '--to', join(to, 'none')], {
      RAMPBOOK_CHROMIUM: process.execPath,
    });
    expect([silent.exitCode, silent.err]).toEqual([1, expect.stringContaining('[not-printed]')]);
    expect(existsSync(join(to, 'none/long.pdf'))).toBe(false);
  });
});

test('the browser is the one that is named, else the first of the usual names on the path', () => {
  const folder = newFolder();
  const [one, other] = [join(folder, 'one'), join(folder, 'other')];
  for (const place of [one, other]) mkdirSync(place);
  const program = (path: string): string => {
    writeFileSync(path, '');
    chmodSync(path, 0o755);
    return path;
  };
  const chrome = program(join(one, 'google-chrome'));
  const chromium = program(join(other, 'chromium'));
  mkdirSync(join(one, 'chromium'));
  expect(findBrowser({ PATH: `${one}:${other}` }, [])).toEqual({ browser: chromium });
  expect(findBrowser({ PATH: one }, [])).toEqual({ browser: chrome });
  expect(findBrowser({ PATH: one, RAMPBOOK_CHROMIUM: chromium }, [])).toEqual({ browser: chromium });
  expect(findBrowser({ PATH: '' }, [])).toMatchObject({ problem: { code: 'no-browser' } });
  expect(findBrowser({ PATH: other, RAMPBOOK_CHROMIUM: join(folder, 'gone') }, [])).toMatchObject({
    problem: { code: 'no-browser', seen: join(folder, 'gone') },
  });
});

test('a date set anew keeps the length of the file and all else in it', () => {
  const before =
    "<</CreationDate (D:20261125141518+02'00')\n/ModDate (D:20261125141518+02'00')>> \xff (D:20261125141518)";
  const after = datedPdf(Buffer.from(before, 'latin1'), Date.UTC(2025, 0, 2, 3, 4, 5)).toString('latin1');
  expect(after).toBe(
    "<</CreationDate (D:20250102030405+00'00')\n/ModDate (D:20250102030405+00'00')>> \xff (D:20261125141518)",
  );
});

/** A PDF of three objects as Chromium writes one, of which the last is a stream. */
function smallPdf(): string {
  const objects = [
    '<</Title (small)>>',
    '<</Type /Catalog\n/Lang (en)>>',
    '<</Length 9>> stream\nno object\nendstream',
  ];
  let text = '%PDF-1.4\n%\xd3\xeb\xe9\xe1\n';
  const places = objects.map((object, at) => {
    const place = text.length;
    text += `${at + 1} 0 obj\n${object}\nendobj\n`;
    return `${String(place).padStart(10, '0')} 00000 n \n`;
  });
  const table = `xref\n0 4\n0000000000 65535 f \n${places.join('')}`;
  return `${text}${table}trailer\n<</Size 4\n/Root 2 0 R\n/Info 1 0 R>>\nstartxref\n${text.length}\n%%EOF\n`;
}

describe('a packed PDF', () => {
  test('has every object as it was: what describes the document and streams open, the others within a stream', () => {
    const [open, packed] = [Buffer.from(smallPdf(), 'latin1'), packedPdf(Buffer.from(smallPdf(), 'latin1'))];
    const [before, after] = [readPdf(open).objects, readPdf(packed).objects];
    for (const [number, object] of before) expect(after.get(number)!.trimEnd(), number).toBe(object.trimEnd());
    const text = packed.toString('latin1');
    expect(text).toContain('1 0 obj\n<</Title (small)>>');
    expect(text).not.toContain('/Catalog');
    expect(text).toMatch(/^%PDF-1\.5\n/);
  });

  // ISO 32000-1, 7.5.8: fields of 1, 4 and 2 bytes; kind 1 with its place, kind 2 with its stream and its number there.
  test('says of every object where it stands', () => {
    const packed = packedPdf(Buffer.from(smallPdf(), 'latin1'));
    const text = packed.toString('latin1');
    const start = Number(/startxref\n(\d+)/.exec(text)![1]);
    expect(text.slice(start)).toMatch(/^5 0 obj\n<<\/Type \/XRef \/Size 6 \/W \[1 4 2\] \/Root 2 0 R \/Info 1 0 R/);
    const from = text.indexOf('stream\n', start) + 'stream\n'.length;
    const rows = inflateSync(packed.subarray(from, text.indexOf('\nendstream', from)));
    const places = Array.from({ length: 6 }, (_, row) => [
      rows.readUInt8(row * 7),
      rows.readUInt32BE(row * 7 + 1),
      rows.readUInt16BE(row * 7 + 5),
    ]);
    expect(places[0]).toEqual([0, 0, 0]);
    expect(places[2]).toEqual([2, 4, 0]);
    for (const number of [1, 3, 4, 5]) {
      expect(places[number]![0]).toBe(1);
      expect(text.slice(places[number]![1])).toMatch(new RegExp(`^${number} 0 obj\n`));
    }
  });

  test('is the same as before where it is written in another way', () => {
    for (const other of [
      smallPdf().replace('0000000000 65535 f ', '0000000001 65535 x '),
      'no PDF',
      `${smallPdf()}more`,
    ]) {
      expect(packedPdf(Buffer.from(other, 'latin1')).toString('latin1')).toBe(other);
    }
  });
});
