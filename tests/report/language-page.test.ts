import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { toHtml } from 'hast-util-to-html';
import { expect, test } from 'vitest';
import { exampleBook } from '../../src/finding/example/example-book.js';
import { formulaFunctions } from '../../src/formula/functions/functions.js';
import { languageSections, sectionFor } from '../../src/formula/language-sections.js';
import { missingRules } from '../../src/formula/missing.js';
import { isLanguageWord } from '../../src/formula/reader.js';
import { unitWords } from '../../src/formula/unit/word.js';
import { readSheetSentence } from '../../src/notebook/sheet-sentence.js';
import { inDocument, inTable, type Place, type Problem } from '../../src/problem/problem.js';
import { languagePage } from '../../src/report/language-page.js';
import { languagePageName } from '../../src/report/language-page-name.js';
import { problemBox } from '../../src/report/problem-box.js';

const html = languagePage();
const text = html
  .replace(/<style>.*?<\/style>|<script>.*?<\/script>/gs, '')
  .replace(/<[^>]*>/g, '')
  .replaceAll('&#x26;', '&')
  .replaceAll('&#x3C;', '<');
const formulaFolder = new URL('../../src/formula/', import.meta.url).pathname;

function problem(code: string, place: Place = inDocument('season.md', 3, 4)): Problem {
  return { code, severity: 'sets aside', place, seen: 'x', wanted: 'y', remedy: 'z' };
}

test('every function stands on the page with its meaning, what it gives and its example', () => {
  for (const { name, meaning, gives, example } of formulaFunctions) {
    expect(text).toContain(`${name}(`);
    for (const said of [meaning, gives, example]) expect(text).toContain(said.replaceAll('`', ''));
  }
});

test('every unit word, rule for missing values and word of the language stands on the page', () => {
  for (const { name } of unitWords) expect(text).toContain(name);
  for (const rule of missingRules) expect(text).toContain(rule.replaceAll('`', ''));
  const reader = readFileSync(join(formulaFolder, 'reader.ts'), 'utf8');
  const words = [...reader.matchAll(/'([a-z]+)'/g)].map(([, word]) => word!).filter(isLanguageWord);
  expect(new Set(words).size).toBeGreaterThan(12);
  for (const word of words) expect(text).toMatch(new RegExp(`\\b${word}\\b`));
});

test('every problem that formulas can have leads to a section', () => {
  const sources = readdirSync(formulaFolder, { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.ts'),
  );
  const codes = sources.flatMap((path) => {
    const source = readFileSync(join(formulaFolder, path), 'utf8');
    return [...source.matchAll(/\bcode: '([a-z-]+)'|const code = '([a-z-]+)'/g)].map(([, one, other]) => one ?? other!);
  });
  expect(codes.length).toBeGreaterThan(40);
  expect(codes.filter((code) => sectionFor(problem(code)) === null)).toEqual([]);
});

test('a problem’s link leads to a section that is there, and a problem of an exported table has none', () => {
  for (const { codes, id, title } of languageSections) {
    expect(html).toContain(`id="${id}"`);
    for (const code of codes) {
      const box = toHtml(problemBox([problem(code)]));
      expect(box).toContain(`href="${languagePageName}#${id}"`);
      expect(box).toContain(title);
    }
  }
  expect(toHtml(problemBox([problem('not-a-number', inTable('washes.csv', 2, 3, 'temp'))]))).not.toContain('href');
});

test('the page is the same each time, and leads nowhere but to itself', () => {
  expect(languagePage()).toBe(html);
  const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id!);
  expect(new Set(ids).size).toBe(ids.length);
  for (const [, to] of html.matchAll(/href="([^"]*)"/g)) expect(ids).toContain(to!.slice(1));
});

test('every table and field that formulas may ask stands on the page with its meaning', () => {
  const { tables } = exampleBook();
  expect(tables.size).toBeGreaterThan(8);
  for (const [name, { fields }] of tables) {
    expect(html).toContain(`id="table-${name.replaceAll('_', '-')}"`);
    for (const { name: field, meaning } of fields.values()) {
      expect(text).toContain(field);
      expect(text).toContain(meaning);
    }
  }
});

test('the sentences of sheets that the page shows can be read', () => {
  for (const [, sentence] of text.matchAll(/(Sheet \w+(?: "[^"]*")?: (?:each|fouling)[^.]*\.)/g)) {
    expect(readSheetSentence('x.md', { text: sentence!, line: 1, column: 1 })).not.toHaveProperty('problem');
  }
});
