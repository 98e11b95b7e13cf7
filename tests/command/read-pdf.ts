import { inflateSync } from 'node:zlib';

/** What the tests ask of a PDF as Chromium writes it, or as it is packed then, objects in streams of them. */
export interface ReadPdf {
  /** The letters of each page in the order in which they were written, without spaces, which may be left to places alone. */
  readonly pages: readonly string[];
  /** The objects of the file, by number, without their streams. */
  readonly objects: ReadonlyMap<string, string>;
}

/** Reads the objects and the words of a PDF (ISO 32000-1, 7.3 and 9.10), as far as Chromium's need it. */
export function readPdf(bytes: Buffer): ReadPdf {
  const text = bytes.toString('latin1');
  const objects = new Map<string, string>();
  const streams = new Map<string, string>();
  for (const { 1: number, index, 0: head } of text.matchAll(/(?<=\n)(\d+) 0 obj\s/g)) {
    const start = index + head.length;
    const end = text.indexOf('endobj', start);
    const stream = text.slice(start, end).search(/>>\s*stream\r?\n/);
    objects.set(number!, text.slice(start, stream < 0 ? end : start + stream + 2));
    const length = /\/Length (\d+)/.exec(objects.get(number!)!)?.[1];
    if (stream < 0 || length === undefined || !objects.get(number!)!.includes('/FlateDecode')) continue;
    const from =
      text.indexOf('stream', start) + 'stream'.length + (text[text.indexOf('stream', start) + 6] === '\r' ? 2 : 1);
    streams.set(number!, inflateSync(bytes.subarray(from, from + Number(length))).toString('latin1'));
  }
  // ISO 32000-1, 7.5.7: pairs of an object's number and where it begins behind the first, then the objects.
  for (const [stream, described] of [...objects]) {
    const [, first] = /\/Type \/ObjStm\b.*\/First (\d+)/.exec(described) ?? [];
    if (first === undefined) continue;
    const held = streams.get(stream)!;
    const head = held.slice(0, Number(first)).trim().split(/\s+/).map(Number);
    for (let at = 0; at < head.length; at += 2) {
      const [from, to] = [head[at + 1]!, head[at + 3] ?? held.length];
      objects.set(String(head[at]), `${held.slice(Number(first) + from, Number(first) + to).trimEnd()}\n`);
    }
  }
  const pages = [...objects.values()].filter((object) => /\/Type \/Page\b/.test(object));
  return { objects, pages: pages.map((page) => wordsOf(page, objects, streams)) };
}

function wordsOf(page: string, objects: ReadonlyMap<string, string>, streams: ReadonlyMap<string, string>): string {
  const fonts = new Map(
    [...page.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name, number]) => {
      const map = /\/ToUnicode (\d+) 0 R/.exec(objects.get(number!)!)?.[1];
      return [name!, lettersOf(streams.get(map!) ?? '')];
    }),
  );
  const contents = /\/Contents (\d+) 0 R/.exec(page)?.[1];
  let letters: ReadonlyMap<number, string> = new Map();
  let words = '';
  for (const [, font, begin, glyphs] of streams
    .get(contents!)!
    .matchAll(/\/(F\d+) [\d.]+ Tf|(\bBT\b)|<([0-9A-F]+)> Tj/g)) {
    if (font !== undefined) letters = fonts.get(font)!;
    else if (begin !== undefined) words += '\n';
    else for (const glyph of glyphs!.match(/.{4}/g)!) words += letters.get(Number.parseInt(glyph, 16)) ?? '';
  }
  return words.replace(/\s/g, '');
}

/** What each glyph of a font stands for, from its map to Unicode. */
function lettersOf(map: string): ReadonlyMap<number, string> {
  const letters = new Map<number, string>();
  const number = (hex: string): number => Number.parseInt(hex, 16);
  const text = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, block] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, glyph, said] of block!.matchAll(/<(\w+)> <(\w+)>/g)) letters.set(number(glyph!), text(said!));
  }
  for (const [, block] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, low, high, said] of block!.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g)) {
      for (let glyph = number(low!); glyph <= number(high!); glyph++)
        letters.set(glyph, String.fromCodePoint(text(said!).codePointAt(0)! + glyph - number(low!)));
    }
  }
  return letters;
}
