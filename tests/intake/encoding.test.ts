import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { utf16 } from '../../src/intake/source/utf-16.js';
import { windows1252 } from '../../src/intake/source/windows-1252.js';
import { archiveOf } from './small-archive.js';
import { asideOf, importSmall, notesCrosswalk, valuesOf } from './small-import.js';

const declared = (encoding: string) =>
  notesCrosswalk.replace('    columns:', `    dialect: { encoding: ${encoding} }\n    columns:`);
const text = 'no,note,dollars\na,Größe 🛶,1\nb,€ “x”,2\nc,é,x\n';
const bigEnd = (some: string) => Buffer.from(some, 'utf16le').swap16();

describe('text in UTF-16', () => {
  test('is read with its places, in whatever pieces it comes', async () => {
    for (const [encoding, bytes] of [
      ['utf-16le', Buffer.from(text, 'utf16le')],
      ['utf-16be', bigEnd(text)],
      ['utf-16', Buffer.from(`\uFEFF${text}`, 'utf16le')],
      ['utf-16', bigEnd(`\uFEFF${text}`)],
    ] as const) {
      for (const chunk of [1, 7, 4096]) {
        const result = await importSmall(declared(encoding), { 'notes.csv': bytes }, { chunk });
        expect(valuesOf(result, 'spending', 'note')).toEqual(['Größe 🛶', '€ “x”']);
        expect(asideOf(result)).toEqual(['4 dollars not-a-number']);
        expect(result.setAsideRows[0]!.row).toBe('c,é,x');
      }
    }
  });

  test('is decoded as the platform decodes it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 12 }), fc.integer({ min: 1, max: 9 }), (some, step) => {
        for (const low of [true, false]) {
          const bytes = low ? Buffer.from(some, 'utf16le') : bigEnd(some);
          const reader = utf16(low);
          const pieces: Uint8Array[] = [];
          for (let at = 0; at < bytes.length; at += step) pieces.push(reader.convert(bytes.subarray(at, at + step)));
          pieces.push(reader.end());
          expect(Buffer.concat(pieces).toString('utf8')).toBe(
            new TextDecoder(low ? 'utf-16le' : 'utf-16be', { ignoreBOM: true }).decode(bytes),
          );
        }
      }),
    );
  });

  test('half a letter sets its row aside', async () => {
    const cut = Buffer.from('no,note,dollars\na,\ud83dx,1\nb,y,2\n', 'utf16le');
    expect(asideOf(await importSmall(declared('utf-16le'), { 'notes.csv': cut }))).toEqual(['2 note not-utf-16']);
  });
});

describe('text in windows-1252', () => {
  test('is read by its code page', async () => {
    // Bytes and letters as the index of the WHATWG Encoding Standard pairs them.
    const bytes = Buffer.concat([
      Buffer.from('no,note,dollars\na,'),
      Buffer.from([0x47, 0x72, 0xf6, 0xdf, 0x65, 0x20, 0x80, 0x93, 0x94, 0x9f]),
      Buffer.from(',1\n'),
    ]);
    const result = await importSmall(declared('windows-1252'), { 'notes.csv': bytes });
    expect(valuesOf(result, 'spending', 'note')).toEqual(['Größe €“”Ÿ']);
  });

  test('has no letter for five bytes, which set their rows aside', () => {
    const none = [0x81, 0x8d, 0x8f, 0x90, 0x9d];
    const all = Array.from({ length: 128 }, (_, byte) => byte + 128);
    const strange = all.filter((byte) => windows1252().convert(Uint8Array.of(byte))[0] === 0xff);
    expect(strange).toEqual(none);
  });

  test('that reads as UTF-8 throughout is in doubt and refused', async () => {
    const result = await importSmall(declared('windows-1252'), { 'notes.csv': 'no,note,dollars\na,Größe,1\n' });
    expect(result.problems.map(({ code }) => code)).toEqual(['encoding-in-doubt']);
  });
});

test('what the first bytes contradict is refused, not guessed', async () => {
  const codesOf = async (encoding: string, bytes: Uint8Array) =>
    (await importSmall(declared(encoding), { 'notes.csv': bytes })).problems.map(({ code }) => code);
  const utf8 = Buffer.from(text);
  const wide = Buffer.from(text, 'utf16le');
  expect(await codesOf('utf-8', wide)).toEqual(['encoding-in-doubt']);
  expect(await codesOf('utf-8', Buffer.from(`\uFEFF${text}`, 'utf16le'))).toEqual(['encoding-in-doubt']);
  expect(await codesOf('utf-16', wide)).toEqual(['encoding-in-doubt']);
  expect(await codesOf('utf-16be', Buffer.from(`\uFEFF${text}`, 'utf16le'))).toEqual(['encoding-in-doubt']);
  expect(await codesOf('windows-1252', Buffer.concat([Buffer.from('\uFEFF'), utf8]))).toEqual(['encoding-in-doubt']);
  expect(await codesOf('utf-8', archiveOf([['a', 'a']]))).toEqual(['not-text']);
  expect(await codesOf('utf-8', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1]))).toEqual(['not-text']);
});
