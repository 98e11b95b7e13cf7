import { expect, test } from 'vitest';
import { readSources } from './sources.js';

/** Files that are themselves one place of words, though not called so, and why. */
const wordFiles: Readonly<Record<string, string>> = {
  'report/standing-notes.ts': 'the notes and cautions of every page',
  'report/handout/handout-cautions.ts': 'the cautions of every handout',
  'report/handout/where-to-look.ts': 'how each part is looked at, with its source',
  'report/terms/terms.ts': 'every term, with its source',
};

/** Texts of several words that no reader sees, by what they are. */
const notRead: Readonly<Record<string, readonly string[]>> = {
  'acts and marks of the desk': ['add row', 'move row', 'take row', 'add part', 'move part', 'take part', 'slip lines'],
  'heads of the notebook’s own tables': ['shown as'],
  'kinds of carried columns': ['of parent', 'of layout', 'made of'],
  'ways in which functions work': ['on the whole', 'sheet key'],
  'severities of problems': ['sets aside'],
  'settings of a page for browsers': ['width=device-width, initial-scale=1', 'light dark'],
  'places on a page, for scripts': [
    'a, button, summary, .scroll',
    '.shown, .part.sheet td',
    'note still',
    'details.account select',
    'make-how make-wrong',
  ],
  'forms of what pages carry': ['rampbook page 1', 'rampbook changes 1', 'rampbook folder 1'],
  'options of charts, told to whoever writes a notebook': [
    'The column with craft fouled per looks, said beside the value.',
    'The column with the sole-site share, said beside the value.',
    'At most so many parts are listed; without it, 8.',
  ],
  'marks of what pages carry': ['<script id="…" type="…">'],
  'words of addresses and of the command line': ['not recorded'],
};

/** What is said to whoever writes a notebook stands beside the rule that it explains; our own mistakes are for ourselves. */
const saidElsewhere = /\b(?:wanted|remedy)\b[^;]{0,120}$|new Error\([^;]*$|throw [^;]*$|leftOut\([^;]*$/s;

const words = /[A-Za-z]{2,}[,;:]? [A-Za-z]{2,}/;
const literal = /'((?:[^'\\\n]|\\.)*)'|`((?:[^`\\]|\\.)*)`/g;

/** Every text of several words in a source, but for its comments and imports. */
function textsOf(source: string): readonly { readonly text: string; readonly before: string }[] {
  const code = source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[^:'"`\\])\/\/[^\n]*/g, '$1');
  return [...code.matchAll(literal)].flatMap(({ 1: plain, 2: made, index }) => {
    const text = (plain ?? made!).replace(/\$\{[^}]*\}/g, '…');
    return words.test(text) ? [{ text, before: code.slice(Math.max(0, index - 300), index) }] : [];
  });
}

const readable = readSources().filter(
  ({ path, folder }) =>
    folder === 'report' && !/words[^/]*\.ts$|-script\.ts$|\/style/.test(path) && !(path in wordFiles),
);

test('what a reader sees of a page stands in files of words, ready for another language', () => {
  const known = new Set(Object.values(notRead).flat());
  const loose = readable.flatMap(({ path, text }) =>
    textsOf(text)
      .filter((found) => !known.has(found.text) && !saidElsewhere.test(found.before))
      .map((found) => `${path}: ${found.text}`),
  );
  expect(loose).toEqual([]);
});

test('a sentence that stands loose in a source is found', () => {
  const texts = textsOf(`/** A note 'in a comment'. */ h('p', ['Two words']); h('p', [\`\${n} more rows\`]);`);
  expect(texts.map(({ text }) => text)).toEqual(['Two words', '… more rows']);
});

test('no exception outlives what it was made for', () => {
  const all = new Set(readable.flatMap(({ text }) => textsOf(text).map((found) => found.text)));
  expect(
    Object.values(notRead)
      .flat()
      .filter((text) => !all.has(text)),
  ).toEqual([]);
  const paths = new Set(readSources().map(({ path }) => path));
  expect(Object.keys(wordFiles).filter((path) => !paths.has(path))).toEqual([]);
});
