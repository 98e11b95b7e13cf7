import type { Random } from '../../src/statistic/random.js';
import { oneOf } from './trial.js';

/** Pieces that readers stumble over: marks, controls, halves of characters, formulas, markup, names that objects have. */
export const hostilePieces = [
  ...[
    '',
    ' ',
    '\u0000',
    '\ufeff',
    '\u00a0',
    '\u2028',
    '\u202e',
    '\u001b[31m',
    '\r',
    '\\',
    "'",
    '`',
    '%s',
    '$(1)',
    '{{1}}',
  ],
  ...[
    '=1+1',
    '@SUM(A1)',
    '-2+3',
    '+1',
    '＝1',
    '<script>alert(1)</script>',
    '"><img src=x onerror=alert(1)>',
    '&#0;',
    ']]>',
  ],
  ...['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'null', 'undefined', 'NaN', 'Infinity', 'true', '-0'],
  ...[
    '1e999',
    '1e-999',
    '0x10',
    '９',
    '1,5',
    '1.5.5',
    '-1',
    '9007199254740993',
    '00',
    '2025-02-30',
    '2025-13-01 25:61',
  ],
  ...['é', 'e\u0301', '😀', '\ud800', 'ß', 'İ', 'ﬀ', 'ا', '../../etc/passwd', 'C:\\con', '|', '#', '%', '~', '*', '?'],
];

/** Bytes changed, cut, doubled, swapped or put in, at a few places. */
export function spoilBytes(bytes: Uint8Array, random: Random, most = 4): Buffer {
  let spoilt = Buffer.from(bytes);
  for (let left = 1 + random.below(most); left > 0; left--) {
    const at = random.below(spoilt.length + 1);
    const to = Math.min(spoilt.length, at + random.below(1 + Math.min(64, spoilt.length)));
    const [before, piece, after] = [spoilt.subarray(0, at), spoilt.subarray(at, to), spoilt.subarray(to)];
    const noise = () => Buffer.from(Array.from({ length: 1 + random.below(8) }, () => random.below(256)));
    const ways = [
      () => {
        const changed = Buffer.from(spoilt);
        if (at < changed.length) changed[at] = random.below(256);
        return changed;
      },
      () => Buffer.concat([before, after]),
      () => before,
      () => Buffer.concat([before, piece, piece, after]),
      () => Buffer.concat([before, noise(), piece, after]),
      () => Buffer.concat([after, piece, before]),
    ];
    spoilt = oneOf(random, ways)();
  }
  return spoilt;
}

/** A document whose lines or words are taken out, doubled, swapped, or replaced by hostile or neighbouring ones. */
export function spoilText(text: string, random: Random, pieces: readonly string[], most = 4): string {
  const lines = text.split('\n');
  for (let left = 1 + random.below(most); left > 0; left--) {
    const at = random.below(lines.length);
    const other = random.below(lines.length);
    const line = lines[at]!;
    const words = line.split(/(\b)/);
    const word = random.below(words.length);
    const ways = [
      () => lines.splice(at, 1),
      () => lines.splice(at, 0, lines[other]!),
      () => {
        [lines[at], lines[other]] = [lines[other]!, line];
      },
      () => {
        lines[at] = words.with(word, oneOf(random, pieces)).join('');
      },
      () => {
        lines[at] = words.with(word, words[word]! + oneOf(random, pieces)).join('');
      },
      () => {
        lines[at] = line.slice(0, random.below(line.length + 1));
      },
      () => {
        lines[at] = ' '.repeat(random.below(5)) + line.trimStart();
      },
    ];
    oneOf(random, ways)();
    if (lines.length === 0) lines.push('');
  }
  return lines.join('\n');
}
